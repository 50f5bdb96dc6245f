import { type Issue, ok, type Result } from "#core";
import { appendStatements } from "#exchange";
import { type Entry, FIRST_KIND, type JobState, positionIn, type Statement, thingKey } from "#records";
import { MAX_BLOB_PART_BYTES, type Store } from "#store";
import type { Author, NewStatement } from "../desk.ts";
import type { Device } from "../device/device.ts";
import { wallTime } from "../device/device.ts";
import type { JobLog } from "../jobs/job-log.ts";

/** Where the writer writes and who it is. */
export interface WriterPlace {
  readonly store: Store;
  readonly device: Device;
  readonly author: Author;
}

/**
 * Signs statements with the key of this device and appends them. What is answered is on the disk.
 *
 * A device that has written nothing into the job yet announces itself first, and so does a person.
 *
 * @param log of the job, as fresh as it is to be written on.
 * @returns ids of the entries of the statements, in their order.
 */
export async function writeStatements(
  { store, device, author }: WriterPlace,
  job: string,
  log: JobLog,
  statements: readonly NewStatement[],
  progress: (done: number) => void = () => {},
): Promise<Result<readonly string[], readonly Issue[]>> {
  const signer = await device.signer();
  if (!signer.ok) return { ok: false, error: [signer.error] };
  const position = positionIn(log.chains, job, signer.value.publicKey);
  const announcements = [
    ...(position.last === undefined ? [announcement(signer.value.publicKey)] : []),
    ...(isKnown(log.state, author)
      ? []
      : [{ kind: "person", body: { person: author.id, name: author.name } }]),
  ];
  const all: readonly Statement[] = [...announcements, ...statements].map((statement) => ({
    ...statement,
    author: author.id,
  }));
  const ids: string[] = [];
  const append = async (entries: readonly Entry[]): Promise<Result<unknown, readonly Issue[]>> => {
    const kept = await store.append(job, entries, wallTime(new Date()));
    if (!kept.ok) return { ok: false, error: [kept.error] };
    if (kept.value.refused.length > 0)
      return { ok: false, error: kept.value.refused.map(({ issue }) => issue) };
    ids.push(...entries.map(({ id }) => id));
    progress(ids.length);
    return ok(true);
  };
  const pen = { position, signer: signer.value, clock: device.clock };
  const written = await appendStatements(all, pen, append);
  return written.ok ? ok(ids.slice(announcements.length)) : written;
}

const announcement = (publicKey: string): NewStatement => ({
  kind: FIRST_KIND,
  body: { public_key: publicKey, name: deviceName(), program: "toeline" },
});

/** What the browser says of the machine, as far as it says it: for people who look through the log. */
function deviceName(): string {
  const { userAgent } = navigator;
  const browser = /(Firefox|Edg|Chrome|Safari)\//.exec(userAgent)?.[1]?.replace("Edg", "Edge") ?? "Browser";
  const system = /(Windows|Android|iPhone|iPad|Mac OS X|Linux)/.exec(userAgent)?.[1];
  return system === undefined ? browser : `${browser}, ${system}`;
}

const isKnown = (state: JobState, { id, name }: Author): boolean =>
  state.things[thingKey("person", id)]?.fields["name"]?.some((each) => each.value === name) ?? false;

/** Keeps files that entries will name. They must be there before the entries are. */
export async function keepBlobs(
  store: Store,
  blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>,
): Promise<Result<true, readonly Issue[]>> {
  for (const [hash, bytes] of blobs)
    for (let offset = 0; offset < bytes.length; offset += MAX_BLOB_PART_BYTES) {
      const part = bytes.slice(offset, offset + MAX_BLOB_PART_BYTES);
      const kept = await store.putBlobPart({ hash, size: bytes.length, offset, bytes: part });
      if (!kept.ok) return { ok: false, error: [kept.error] };
    }
  return ok(true);
}
