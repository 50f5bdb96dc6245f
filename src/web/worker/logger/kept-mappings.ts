import { checkTemplate, type LoggerTemplate } from "#formats";
import type { JobState } from "#records";
import { openKeptThings } from "../device/kept-things.ts";

const NAME = "logger-mappings";
/** Question of the decision that says how a run's file was read. */
export const MAPPING_QUESTION = "column-mapping";

/** Mappings of this device, oldest first. What the browser does not keep is no loss: the job holds them too. */
export async function mappingsOfDevice(): Promise<readonly LoggerTemplate[]> {
  const things = await openKeptThings();
  const kept = things.ok ? await things.value.get(NAME) : things;
  return kept.ok && Array.isArray(kept.value) ? kept.value.flatMap(sound) : [];
}

/** Keeps a mapping; one of the same layout gives way to it. */
export async function keepMapping(template: LoggerTemplate): Promise<void> {
  const things = await openKeptThings();
  if (!things.ok) return;
  const others = (await mappingsOfDevice()).filter(({ fingerprint }) => fingerprint !== template.fingerprint);
  await things.value.put(NAME, [...others, template]);
}

/** Mappings with which runs of the job were read. */
export const mappingsOfJob = (state: JobState): readonly LoggerTemplate[] =>
  Object.values(state.things).flatMap(({ fields }) => {
    const said = fields[`decision/${MAPPING_QUESTION}`]?.at(-1)?.value;
    const answer = (said as { readonly answer?: { readonly mapping?: unknown } } | undefined)?.answer;
    return answer?.mapping === undefined ? [] : sound(answer.mapping);
  });

function sound(value: unknown): readonly LoggerTemplate[] {
  const read = checkTemplate(value, NAME);
  return read.ok ? [read.value] : [];
}
