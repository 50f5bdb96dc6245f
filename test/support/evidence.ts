import { unzipSync, zipSync } from "fflate";
import type { EvidenceInput } from "#evidence";
import {
  type Entry,
  makeSeal,
  rootOfIds,
  type Signer,
  sha256Hex,
  signHead,
  type TreeHead,
  utf8,
  walkChains,
} from "#records";
import { JOB, Pen, signerOf, unwrap } from "./records.ts";

/** Everything invented: three devices, a person with a key, a photo, a report, two seals. */
export const OFFICE = await signerOf(77);
export const ANNA = await signerOf(55);
export const PROGRAM = "toeline 0.1.0";

export async function headOf(ids: readonly string[], at: string, signer = OFFICE): Promise<TreeHead> {
  return unwrap(await signHead({ job: JOB, size: ids.length, root: await rootOfIds(ids), at }, signer));
}

/** Who signs: three devices by number, and the office. */
interface Keys {
  readonly devices: readonly [number, number, number];
  readonly office: Signer;
}

/** A job of 27 entries in their order of arrival; two heads, of which the second covers all. */
export async function evidenceOfJob(
  { devices, office }: Keys = { devices: [1, 2, 3], office: OFFICE },
): Promise<EvidenceInput> {
  const [photo, report] = [utf8("a picture, invented"), utf8("a report, invented")];
  const blobs = new Map([
    [await sha256Hex(photo), photo],
    [await sha256Hex(report), report],
  ]);
  const [photoHash, reportHash] = [...blobs.keys()] as [string, string];
  const log = new Map<string, Entry>();
  const arrive = (pen: Pen) => {
    for (const entry of pen.entries) log.set(entry.id, entry);
  };
  const [a, b, c] = [await Pen.start(devices[0]), await Pen.start(devices[1]), await Pen.start(devices[2])];
  await a.write("person", { person: "anna", name: "Anna Muster", public_key: ANNA.publicKey });
  for (const pen of [a, b, c]) arrive(pen);
  for (let i = 0; i < 6; i++) {
    await a.write("readings", {
      run: "P1-1",
      columns: { depth_m: [i, i + 0.5], tilt_x_deg: [0.1 * i, -0.2] },
    });
    arrive(a);
    await b.write("note", { about: "run/P1-1", text: `note ${i}` });
    arrive(b);
    if (i % 3 === 1) c.receive([...log.values()]);
    await c.set(`P${i}`, "diameter_m", 1 + i / 10);
    arrive(c);
    if (i === 4) a.receive([...log.values()]);
  }
  await b.write("photo", { about: "run/P1-1", blob: photoHash, bytes: photo.length, type: "image/jpeg" });
  arrive(b);
  const early = await headOf([...log.keys()].slice(0, 12), "2026-03-02T09:00:00Z", office);
  await seal(a, "run/P1-1", "taken by", [...log.values()]);
  arrive(a);
  await c.write("report-issued", {
    report: "R-1",
    title: "As-built survey",
    files: [{ name: "R-1.pdf", type: "application/pdf", blob: reportHash }],
    elements: ["P1"],
    head: { size: early.size, root: early.root },
  });
  arrive(c);
  await seal(b, "report/R-1", "approved by", [...log.values()]);
  arrive(b);
  const entries = [...log.values()];
  const closing = await headOf([...log.keys()], "2026-03-02T18:00:00Z", office);
  return { job: JOB, entries, heads: [early, closing], blobs, program: PROGRAM };
}

async function seal(pen: Pen, about: string, meaning: string, entries: readonly Entry[]): Promise<void> {
  const at = "2026-03-02T10:40:00+01:00";
  const request = { job: JOB, about, meaning, person: "anna", name: "Anna Muster", at };
  const made = unwrap(await makeSeal(request, walkChains(entries), ANNA));
  await pen.write("sign-off", { seal: JSON.parse(JSON.stringify(made)) });
}

export type Files = Map<string, Uint8Array<ArrayBuffer>>;

/** The files of a bag by name inside its folder; unpacked by a library and not by the reader under test. */
export function filesOf(bag: Uint8Array): Files {
  const files = Object.entries(unzipSync(bag)).map(
    ([name, bytes]) => [name.slice(name.indexOf("/") + 1), Uint8Array.from(bytes)] as const,
  );
  return new Map(files);
}

/** What an attacker does at the end: new manifests over whatever the files are now. */
export async function packed(files: Files): Promise<Uint8Array<ArrayBuffer>> {
  for (const [manifest, isListed] of [
    ["manifest-sha256.txt", (name: string) => name.startsWith("data/")],
    ["tagmanifest-sha256.txt", (name: string) => !name.startsWith("data/") && !name.startsWith("tagm")],
  ] as const) {
    const names = [...files.keys()].filter(isListed).sort();
    const lines = await Promise.all(
      names.map(async (name) => `${await sha256Hex(files.get(name)!)}  ${name}\n`),
    );
    files.set(manifest, utf8(lines.join("")));
  }
  const inFolder = [...files].map(([name, bytes]) => [`bag/${name}`, bytes] as const);
  return zipSync(Object.fromEntries(inFolder), { level: 0 });
}
