import type { AppInstance } from "../app-instance.ts";
import type { MetricFamily, Sample } from "./metrics-text.ts";

/** Upper ends of the classes of duration, seconds. */
const BUCKETS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] as const;

interface Durations {
  readonly method: string;
  readonly route: string;
  count: number;
  sumS: number;
  /** how many took no longer than the class of the same place */
  readonly upTo: number[];
  /** how many were answered with a status */
  readonly byStatus: Map<number, number>;
}

/** Counts requests by route, never by address, so that nobody can fill the memory with made-up ones. */
export function countRequests(app: AppInstance): () => readonly MetricFamily[] {
  const routes = new Map<string, Durations>();
  let running = 0;
  app.addHook("onRequest", async () => {
    running += 1;
  });
  app.addHook("onResponse", async (request, reply) => {
    running -= 1;
    const route = request.routeOptions.url ?? "none";
    const key = `${request.method} ${route}`;
    const known = routes.get(key) ?? newDurations(request.method, route);
    routes.set(key, known);
    note(known, reply.elapsedTime / 1000, reply.statusCode);
  });
  return () => families([...routes.values()], running);
}

const newDurations = (method: string, route: string): Durations => ({
  method,
  route,
  count: 0,
  sumS: 0,
  upTo: BUCKETS_S.map(() => 0),
  byStatus: new Map(),
});

function note(durations: Durations, seconds: number, status: number): void {
  durations.count += 1;
  durations.sumS += seconds;
  for (const [i, end] of BUCKETS_S.entries()) if (seconds <= end) durations.upTo[i]! += 1;
  durations.byStatus.set(status, (durations.byStatus.get(status) ?? 0) + 1);
}

const families = (all: readonly Durations[], running: number): readonly MetricFamily[] => [
  {
    name: "toeline_http_requests_running",
    help: "Requests that came and are not answered yet, this one too.",
    type: "gauge",
    samples: [{ value: running }],
  },
  {
    name: "toeline_http_requests_total",
    help: "Requests answered, by route and status.",
    type: "counter",
    samples: all.flatMap(({ method, route, byStatus }) =>
      [...byStatus].map(([status, value]) => ({ labels: { method, route, status: String(status) }, value })),
    ),
  },
  {
    name: "toeline_http_request_duration_seconds",
    help: "From the first byte of a request to the last byte of its answer.",
    type: "histogram",
    samples: all.flatMap(histogram),
  },
];

const histogram = ({ method, route, count, sumS, upTo }: Durations): readonly Sample[] => [
  ...BUCKETS_S.map((end, i) => ({
    suffix: "_bucket",
    labels: { method, route, le: String(end) },
    value: upTo[i]!,
  })),
  { suffix: "_bucket", labels: { method, route, le: "+Inf" }, value: count },
  { suffix: "_sum", labels: { method, route }, value: sumS },
  { suffix: "_count", labels: { method, route }, value: count },
];
