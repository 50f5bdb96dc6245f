import { describe, expect, test } from "vitest";
import { type EvidenceReport, verifyEvidenceBag, writeEvidenceBag } from "#evidence";
import { canonicalEntry, canonicalJson, type Entry, type Signer, sha256Hex, utf8 } from "#records";
import { createRandom } from "#simulator";
import { evidenceOfJob, filesOf, packed } from "./support/evidence.ts";
import { Pen, signerOf, unwrap } from "./support/records.ts";

/** Changes of each kind, each to a bag whose manifests, lists of keys and seals and archive the attacker makes anew. About 120 s in all on two busy cores. */
const CASES = 1_000;
/** Bags checked at once: the platform checks signatures on several threads. */
const AT_ONCE = 8;

const input = await evidenceOfJob();
const original = unwrap(await writeEvidenceBag(input));
const originalFiles = filesOf(original);
const { entries } = input;
const otherJob = await Pen.start(2, "job-2");
for (let i = 0; i < 10; i++) await otherJob.write("note", { about: "job", text: `elsewhere ${i}` });

type Draw = (below: number) => number;

interface Tampered {
  readonly entries: readonly unknown[];
  /** place of the first entry that is not the one that was signed for, from 1 */
  readonly place: number;
  /** further, where the test knows it: the missing entry, or the one that stands there */
  readonly id?: string;
}

type Tamper = (draw: Draw) => Promise<Tampered> | Tampered;

/** The entry with other content: the id goes with it, the signature if there is a signer. */
async function remade(entry: Entry, change: object, signer?: Signer): Promise<Entry> {
  const changed = { ...entry, ...change, ...(signer ? { device: signer.publicKey } : {}) };
  const bytes = utf8(unwrap(canonicalEntry(changed)));
  const id = await sha256Hex(bytes);
  return { ...changed, id, signature: signer ? await signer.sign(bytes) : entry.signature };
}

/** A value somewhere in the entry is another: a number, a text, a flag. */
function altered(entry: Entry, draw: Draw): Entry {
  const copy = JSON.parse(JSON.stringify(entry)) as Entry;
  const leaves: (readonly [object, string])[] = [];
  const visit = (value: object) => {
    for (const [key, inner] of Object.entries(value))
      if (typeof inner === "object" && inner !== null) visit(inner as object);
      else leaves.push([value, key]);
  };
  visit(copy);
  const [holder, key] = leaves[draw(leaves.length)]!;
  const place = holder as Record<string, unknown>;
  const value = place[key];
  if (typeof value === "number") place[key] = value + 1 + draw(9);
  else if (typeof value === "string" && value !== "") {
    const at = draw(value.length);
    const sign = value[at] === "7" ? "8" : "7";
    place[key] = value.slice(0, at) + sign + value.slice(at + 1);
  } else place[key] = "something";
  return copy;
}

/** All entries of a device made anew with another key: numbers, links, ids and signatures all fit each other. */
async function chainRemade(device: string, signer: Signer): Promise<readonly Entry[]> {
  const made = new Map<string, Entry>();
  let previous: string | null = null;
  for (const entry of entries) {
    if (entry.device !== device) continue;
    const body = entry.sequence === 1 ? { ...entry.body, public_key: signer.publicKey } : entry.body;
    const one: Entry = await remade(entry, { previous, body }, signer);
    previous = one.id;
    made.set(entry.id, one);
  }
  return entries.map((entry) => made.get(entry.id) ?? entry);
}

const devices = [...new Set(entries.map((entry) => entry.device))];
const strangers = await Promise.all([901, 902, 903].map(signerOf));

const tampers: readonly (readonly [string, Tamper])[] = [
  [
    "change",
    async (draw) => {
      const at = draw(entries.length);
      const changed = altered(entries[at]!, draw);
      // every other attacker makes the id anew
      const isIdMade =
        draw(2) === 1 && unwrap(canonicalEntry(changed)) !== unwrap(canonicalEntry(entries[at]!));
      return { entries: entries.with(at, isIdMade ? await remade(changed, {}) : changed), place: at + 1 };
    },
  ],
  [
    "delete",
    (draw) => {
      const at = draw(entries.length - 1);
      return { entries: entries.toSpliced(at, 1), place: at + 1, id: entries[at]!.id };
    },
  ],
  [
    "insert",
    async (draw) => {
      const at = draw(entries.length);
      const [source, signer] = [entries[draw(entries.length)]!, strangers[draw(3)]!];
      // an entry of a device unheard of, one that belongs to nobody, or a true one a second time
      const inserted = [
        async () => remade(source, { author: "somebody else" }, signer),
        async () => remade(source, { sequence: source.sequence + 1, previous: source.id, kind: "note" }),
        // not in front of itself: a twin right before the entry cannot be told from the entry
        async () => entries[(at + draw(entries.length - 1) + 1) % entries.length]!,
      ];
      const entry = await inserted[draw(3)]!();
      return { entries: entries.toSpliced(at, 0, entry), place: at + 1, id: entry.id };
    },
  ],
  [
    "swap",
    (draw) => {
      const one = draw(entries.length);
      const other = (one + 1 + draw(entries.length - 1)) % entries.length;
      const swapped = entries.with(one, entries[other]!).with(other, entries[one]!);
      const first = Math.min(one, other);
      return { entries: swapped, place: first + 1, id: swapped[first]!.id };
    },
  ],
  [
    "cut tail",
    (draw) => {
      const length = 1 + draw(entries.length - 1);
      return { entries: entries.slice(0, length), place: length + 1, id: entries[length]!.id };
    },
  ],
  [
    "graft",
    async (draw) => {
      const at = draw(entries.length);
      const entry = entries[at]!;
      const kinds = [
        // an entry of another job by the same device, as it is or renamed to this job
        async () => otherJob.entries[draw(otherJob.entries.length)]!,
        async () => remade(otherJob.entries[draw(otherJob.entries.length)]!, { job: input.job }),
        // an entry of this job into another device's chain
        async () => remade(entry, { device: devices.find((device) => device !== entry.device)! }),
      ];
      const grafted = await kinds[draw(3)]!();
      return { entries: entries.with(at, grafted), place: at + 1, id: grafted.id };
    },
  ],
  [
    "re-sign",
    async (draw) => {
      const [at, signer] = [draw(entries.length), strangers[draw(3)]!];
      if (draw(2) === 0) {
        const one = await remade(entries[at]!, draw(2) === 0 ? {} : { author: "somebody else" }, signer);
        return { entries: entries.with(at, one), place: at + 1, id: one.id };
      }
      const { device } = entries[at]!;
      const first = entries.findIndex((entry) => entry.device === device);
      return { entries: await chainRemade(device, signer), place: first + 1 };
    },
  ],
];

const lines = (values: readonly unknown[]) =>
  utf8(values.map((value) => `${unwrap(canonicalJson(value))}\n`).join(""));

/** A bag with these entries. @param isListMade whether the attacker makes the list of ids anew too, and so wipes out its trace. */
function bagOf(changed: readonly unknown[], isListMade: boolean): Promise<Uint8Array> {
  const files = new Map(originalFiles);
  files.set("data/entries.jsonl", lines(changed));
  const ids = changed.map((entry) => `${(entry as Entry).id}\n`).join("");
  if (isListMade) files.set("data/ids.txt", utf8(ids));
  return packed(files);
}

async function checked(
  name: string,
  tamper: Tamper,
  isListMade: boolean,
  cases: number,
  look: (report: EvidenceReport, tampered: Tampered, seed: string) => void,
): Promise<void> {
  const one = async (number: number) => {
    const seed = `${name}/${number}`;
    const random = createRandom(seed);
    const tampered = await tamper((below) => Math.floor(random.uniform() * below));
    look(await verifyEvidenceBag(await bagOf(tampered.entries, isListMade)), tampered, seed);
  };
  for (let start = 1; start <= cases; start += AT_ONCE)
    await Promise.all(Array.from({ length: Math.min(AT_ONCE, cases - start + 1) }, (_, i) => one(start + i)));
}

describe(`${CASES} changes of each kind, manifests and archive made anew: each is told, with the first bad entry`, () => {
  test.each(tampers)("%s", async (name, tamper) => {
    let told = 0;
    await checked(name, tamper, false, CASES, (report, { place, id }, seed) => {
      expect(report.verdict, seed).toBe("changed");
      expect(report.firstBad, seed).toMatchObject({
        place,
        upTo: place,
        ...(id === undefined ? {} : { id }),
      });
      expect(report.answer, seed).toMatchObject({ code: "evidence.answer-changed-at", values: { place } });
      told++;
    });
    expect(told).toBe(CASES);
  });
});

describe("where the list of ids is made anew too, each is told, and where it must lie", () => {
  test.each(tampers)("%s", async (name, tamper) => {
    await checked(`${name}, list`, tamper, true, 100, (report, { place }, seed) => {
      expect(report.verdict, seed).toBe("changed");
      expect(report.firstBad?.place, seed).toBeLessThanOrEqual(place);
      expect(report.firstBad?.upTo, seed).toBeGreaterThanOrEqual(place);
    });
  });
});
