import { readFileSync } from "node:fs";
import { isIP } from "node:net";
import { resolve } from "node:path";
import { fail, type Issue, ok, type Result } from "#core";
import { attemptNow } from "./attempt.ts";
import { error } from "./issue.ts";
import type { ServerSettings } from "./settings.ts";

/** What the command line says; everything is optional. */
export interface ServerFlags {
  readonly data?: string;
  readonly listen?: string;
  readonly port?: string;
  readonly database?: string;
  readonly publicAddress?: string;
  readonly trustProxy?: string;
  readonly workers?: string;
  readonly logLevel?: string;
  readonly app?: string;
}

export type Environment = Readonly<Record<string, string | undefined>>;

export const USUAL_PORT = 7410;
export const USUAL_DATA = "toeline-data";
const LEVELS = ["silent", "error", "warn", "info", "debug"] as const;
const MAX_WORKERS = 64;
/** A token that is shorter may be found by trying. */
const SHORTEST_TOKEN = 24;

/**
 * Settings of a server from the command line and, where it says nothing, from the environment (TOELINE_DATA, TOELINE_LISTEN, …).
 * Secrets are never taken from the command line, which everybody on the machine may read: they come from the environment or from
 * a file that it names (TOELINE_DATABASE_FILE, TOELINE_METRICS_TOKEN_FILE).
 *
 * Errors: server.setting, server.setting-secret, server.setting-file, each naming the setting.
 */
export function readSettings(
  flags: ServerFlags,
  environment: Environment,
): Result<ServerSettings, readonly Issue[]> {
  const found: Issue[] = [];
  const given = (flag: string | undefined, name: string) => flag ?? (environment[name] || undefined);
  const wrong = (setting: string, value: string, expected: string) =>
    void found.push(error("server.setting", { setting, found: value, expected }));

  const listen = given(flags.listen, "TOELINE_LISTEN");
  const place = readListen(listen, given(flags.port, "TOELINE_PORT"), wrong);
  const database = flags.database ?? secretOf("TOELINE_DATABASE", environment, found);
  if (flags.database !== undefined && hasPassword(flags.database))
    found.push(error("server.setting-secret", { setting: "--database", expected: "TOELINE_DATABASE" }));
  if (database !== undefined && !isDatabase(database))
    wrong("database", withoutPassword(database), "postgres://user@host:5432/name");
  const publicAddress = given(flags.publicAddress, "TOELINE_PUBLIC_ADDRESS");
  if (publicAddress !== undefined && !isPublicAddress(publicAddress))
    wrong("public-address", publicAddress, "https://toeline.example.org, without a path");
  const trustedProxies = readList(given(flags.trustProxy, "TOELINE_TRUST_PROXY"));
  for (const proxy of trustedProxies)
    if (!isNetwork(proxy))
      wrong("trust-proxy", proxy, "addresses such as 127.0.0.1 or 10.0.0.0/8, with commas");
  const workers = readWhole(given(flags.workers, "TOELINE_WORKERS") ?? "1", MAX_WORKERS);
  if (workers === undefined) wrong("workers", flags.workers ?? "", `a whole number from 0 to ${MAX_WORKERS}`);
  const level = given(flags.logLevel, "TOELINE_LOG_LEVEL") ?? (listen === undefined ? "warn" : "info");
  const logLevel = LEVELS.find((one) => one === level);
  if (logLevel === undefined) wrong("log-level", level, LEVELS.join(", "));
  const metricsToken = secretOf("TOELINE_METRICS_TOKEN", environment, found);
  if (metricsToken !== undefined && metricsToken.length < SHORTEST_TOKEN)
    found.push(error("server.setting-short", { setting: "TOELINE_METRICS_TOKEN", expected: SHORTEST_TOKEN }));
  if (listen === undefined && database !== undefined)
    wrong(
      "database",
      "without --listen",
      "--listen ADDRESS:PORT with it: a local server keeps its data on this machine",
    );

  if (found.length > 0) return fail(found);
  return ok({
    mode: listen === undefined ? "local" : "shared",
    ...place,
    dataFolder: resolve(given(flags.data, "TOELINE_DATA") ?? USUAL_DATA),
    database,
    publicAddress: publicAddress === undefined ? undefined : new URL(publicAddress).origin,
    trustedProxies,
    appFolder: flags.app,
    workers: workers ?? 1,
    ...(metricsToken !== undefined && { metricsToken }),
    logLevel: logLevel ?? "info",
  });
}

type Wrong = (setting: string, value: string, expected: string) => void;
type Place = Pick<ServerSettings, "host" | "port">;

/** A local server listens on this machine only, whatever else is said. */
function readListen(listen: string | undefined, port: string | undefined, wrong: Wrong): Place {
  if (listen === undefined) {
    const number = readWhole(port ?? String(USUAL_PORT), 65_535);
    if (number === undefined) wrong("port", port ?? "", "a whole number from 0 to 65535");
    return { host: "127.0.0.1", port: number ?? 0 };
  }
  const [, address = "", number = ""] = /^(.*):(\d{1,5})$/.exec(listen) ?? [];
  const host = address.replace(/^\[(.*)\]$/, "$1");
  const value = readWhole(number, 65_535);
  if (value === undefined || (isIP(host) === 0 && host !== "localhost"))
    wrong("listen", listen, "an address and a port, such as 0.0.0.0:7410 or [::]:7410");
  return { host, port: value ?? 0 };
}

/** The value of a variable, or the content of the file that it names with _FILE at its end. */
function secretOf(name: string, environment: Environment, found: Issue[]): string | undefined {
  const direct = environment[name];
  if (direct) return direct;
  const file = environment[`${name}_FILE`];
  if (!file) return undefined;
  const read = attemptNow(() => readFileSync(file, "utf8").trim());
  if (read.ok && read.value !== "") return read.value;
  found.push(
    error("server.setting-file", {
      setting: `${name}_FILE`,
      file,
      found: read.ok ? "it is empty" : read.error,
    }),
  );
  return undefined;
}

const readWhole = (text: string, max: number): number | undefined =>
  /^\d{1,6}$/.test(text) && Number(text) <= max ? Number(text) : undefined;

const readList = (text = ""): readonly string[] =>
  text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");

const isDatabase = (address: string): boolean =>
  URL.canParse(address) && /^postgres(?:ql)?:$/.test(new URL(address).protocol);
const hasPassword = (address: string): boolean => URL.canParse(address) && new URL(address).password !== "";
function withoutPassword(address: string): string {
  if (!URL.canParse(address)) return "no address";
  const url = new URL(address);
  url.password = "";
  return url.href;
}

function isPublicAddress(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, pathname, search, hash, username } = new URL(address);
  return /^https?:$/.test(protocol) && pathname === "/" && search + hash + username === "";
}

function isNetwork(text: string): boolean {
  const [address = "", bits] = text.split("/");
  const version = isIP(address);
  if (version === 0) return false;
  return bits === undefined || readWhole(bits, version === 4 ? 32 : 128) !== undefined;
}
