import { createHash, timingSafeEqual } from "node:crypto";
import type { FastifyRequest } from "fastify";
import type { AppInstance } from "../app-instance.ts";
import { answerNotFound } from "../frame/static-app.ts";
import type { Office } from "../office.ts";
import type { ServerSettings } from "../settings.ts";
import { METRICS_TYPE, type MetricFamily, metricsText } from "./metrics-text.ts";

/**
 * Numbers for those who watch over the server. In shared mode only for who shows the token of the settings; without one the route
 * is as if it were not there. Nothing is told from an address alone: behind a proxy every request comes from nearby.
 */
export async function metricsRoutes(
  app: AppInstance,
  office: Office,
  requests: () => readonly MetricFamily[],
): Promise<void> {
  const schema = { summary: "Numbers about the running server, Prometheus text format", tags: ["health"] };
  app.get("/api/1/metrics", { schema, config: { rateLimit: false } }, async (request, reply) => {
    if (!mayRead(request, office.settings)) return answerNotFound(request, reply);
    const families = [
      ...requests(),
      entriesFamily(office),
      ...(await workFamilies(office)),
      ...processFamilies(),
    ];
    return reply.type(METRICS_TYPE).send(metricsText(families));
  });
}

function mayRead({ headers }: FastifyRequest, { mode, metricsToken }: ServerSettings): boolean {
  if (mode === "local") return true;
  if (metricsToken === undefined) return false;
  return isSame(headers.authorization ?? "", `Bearer ${metricsToken}`);
}

/** Compares hashes, so that the time it takes tells nothing about the token. */
const isSame = (a: string, b: string): boolean => timingSafeEqual(sha256(a), sha256(b));
const sha256 = (text: string): Buffer => createHash("sha256").update(text).digest();

const entriesFamily = (office: Office): MetricFamily => ({
  name: "toeline_entries_appended_total",
  help: "Entries that this process has added to the log.",
  type: "counter",
  samples: [{ value: office.entriesAppended() }],
});

async function workFamilies({ work }: Office): Promise<readonly MetricFamily[]> {
  const counts = await work.counts();
  if (!counts.ok) return [];
  return [
    {
      name: "toeline_work",
      help: "Pieces of heavy work, by how far they have come.",
      type: "gauge",
      samples: Object.entries(counts.value).map(([state, value]) => ({ labels: { state }, value })),
    },
  ];
}

function processFamilies(): readonly MetricFamily[] {
  const { rss, heapUsed } = process.memoryUsage();
  const { user, system } = process.cpuUsage();
  const gauge = (name: string, help: string, value: number): MetricFamily => ({
    name,
    help,
    type: "gauge",
    samples: [{ value }],
  });
  return [
    gauge("process_resident_memory_bytes", "Memory of the process.", rss),
    gauge("nodejs_heap_size_used_bytes", "Memory of the program's own things.", heapUsed),
    gauge("process_uptime_seconds", "Since the process began.", process.uptime()),
    {
      name: "process_cpu_seconds_total",
      help: "Processor time.",
      type: "counter",
      samples: [{ value: (user + system) / 1e6 }],
    },
  ];
}
