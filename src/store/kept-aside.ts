import { type Quarantined, sha256Hex, utf8 } from "#records";
import { attempt } from "./attempt.ts";
import type { KeptAside } from "./store.ts";

const TOO_DEEP = JSON.stringify("(nested too deeply to be written down)");

/** What was refused, as it is kept: the same thing refused for the same reason has the same key. */
export async function keptAsideOf({ raw, issue }: Quarantined, at: string): Promise<KeptAside> {
  const written = await attempt(async () => textOf(raw));
  const text = written.ok ? written.value : TOO_DEEP;
  return { key: await sha256Hex(utf8(`${issue.code}\n${text}`)), issue, text, at };
}

/** JSON text of anything. Half characters and U+0000 are written as escapes, so that every database can hold them. */
function textOf(raw: unknown): string {
  const text = JSON.stringify(raw, (_key, value: unknown) => (isSayable(value) ? value : String(value)));
  return text ?? String(raw);
}

function isSayable(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return value === null || ["boolean", "string", "object"].includes(typeof value);
}
