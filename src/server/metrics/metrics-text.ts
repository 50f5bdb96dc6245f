/** One measured number, with what it is about. */
export interface Sample {
  /** added to the family's name, as in `_sum` */
  readonly suffix?: string;
  readonly labels?: Readonly<Record<string, string>>;
  readonly value: number;
}

export interface MetricFamily {
  readonly name: string;
  readonly help: string;
  readonly type: "counter" | "gauge" | "histogram";
  readonly samples: readonly Sample[];
}

export const METRICS_TYPE = "text/plain; version=0.0.4; charset=utf-8";

/**
 * Writes measured numbers for a Prometheus server.
 *
 * Source: Prometheus documentation, "Exposition formats", text-based format 0.0.4 (from memory).
 */
export function metricsText(families: readonly MetricFamily[]): string {
  const lines = families.flatMap(({ name, help, type, samples }) => [
    `# HELP ${name} ${help.replaceAll("\\", "\\\\").replaceAll("\n", "\\n")}`,
    `# TYPE ${name} ${type}`,
    ...samples.map(
      ({ suffix = "", labels = {}, value }) => `${name}${suffix}${labelsText(labels)} ${numberText(value)}`,
    ),
  ]);
  return `${lines.join("\n")}\n`;
}

function labelsText(labels: Readonly<Record<string, string>>): string {
  const pairs = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value)}"`);
  return pairs.length === 0 ? "" : `{${pairs.join(",")}}`;
}

const escaped = (value: string): string =>
  value.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replaceAll("\n", "\\n");

const numberText = (value: number): string => {
  if (Number.isNaN(value)) return "NaN";
  if (!Number.isFinite(value)) return value > 0 ? "+Inf" : "-Inf";
  return String(value);
};
