import { attemptLater } from "../../attempt.ts";

const OFFICE_SILENT_MS = 4_000;

/** A job at the office that this device may know of. */
export interface OfficeJob {
  readonly id: string;
  readonly name: string;
  readonly elements: number;
  readonly runs: number;
  readonly entries: number;
  /** what the device of the latest entry showed */
  readonly lastWall: string | undefined;
}

/** The jobs that the office would open for whoever is signed in; none while it does not answer. */
export async function officeJobs(address: string): Promise<readonly OfficeJob[]> {
  const answer = await attemptLater(async () => {
    const response = await fetch(`${address}/api/1/jobs`, { signal: AbortSignal.timeout(OFFICE_SILENT_MS) });
    return response.ok ? ((await response.json()) as unknown) : undefined;
  });
  const listed = answer.ok ? (answer.value as { readonly jobs?: unknown } | undefined)?.jobs : undefined;
  return Array.isArray(listed) ? listed.flatMap(officeJob) : [];
}

/** An answer is shaped before it is used: the office may be of another version. */
function officeJob(value: unknown): readonly OfficeJob[] {
  const { id, name, elements, runs, entries, last } = (value ?? {}) as Readonly<Record<string, unknown>>;
  if (typeof id !== "string") return [];
  const count = (each: unknown) => (typeof each === "number" ? each : 0);
  const at = (last as { readonly at?: unknown } | undefined)?.at;
  return [
    {
      id,
      name: typeof name === "string" ? name : id,
      elements: count(elements),
      runs: count(runs),
      entries: count(entries),
      lastWall: typeof at === "string" ? at : undefined,
    },
  ];
}
