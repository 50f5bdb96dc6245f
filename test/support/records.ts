import {
  type ChainPosition,
  createEntry,
  createVerifier,
  type Entry,
  type EntryClock,
  type JsonObject,
  positionAfter,
  positionIn,
  type Signer,
  signerFromSeed,
  walkChains,
} from "#records";

export const JOB = "job-1";
export const verifier = createVerifier();

/** The value of a result that must be one. */
export function unwrap<T>(result: { ok: true; value: T } | { ok: false; error: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** The signer of a private key made of one number. */
export async function signerOf(number: number): Promise<Signer> {
  return unwrap(await signerFromSeed(number.toString(16).padStart(64, "0")));
}

export const clockAt = (seconds: number, session = 1): EntryClock => ({
  wall: new Date(Date.UTC(2026, 2, 2, 8) + 1000 * seconds).toISOString(),
  monotonic_ms: 1000 * seconds,
  session,
});

/** A device in a test: writes entries and holds those it was given. */
export class Pen {
  readonly signer: Signer;
  readonly held: Map<string, Entry> = new Map();
  #position: ChainPosition;
  #seconds = 0;

  constructor(signer: Signer, job: string = JOB) {
    this.signer = signer;
    this.#position = { job, device: signer.publicKey, last: undefined, declared: {}, held: {} };
  }

  /** A device that has already announced itself. */
  static async start(number: number, job: string = JOB): Promise<Pen> {
    const pen = new Pen(await signerOf(number), job);
    await pen.write("device", { public_key: pen.signer.publicKey, name: `Tablet ${number}` });
    return pen;
  }

  get device(): string {
    return this.signer.publicKey;
  }

  get entries(): readonly Entry[] {
    return [...this.held.values()];
  }

  async write(kind: string, body: JsonObject, clock: EntryClock = clockAt(this.#seconds)): Promise<Entry> {
    this.#seconds += 10;
    const statement = { author: "anna", kind, body };
    const entry = unwrap(await createEntry(this.#position, statement, clock, this.signer));
    this.held.set(entry.id, entry);
    this.#position = positionAfter(this.#position, entry);
    return entry;
  }

  /** Gives a field of an element a value. */
  set(element: string, field: string, value: JsonObject[string]): Promise<Entry> {
    return this.write("element", { element, set: { [field]: value } });
  }

  /** Takes in entries of others, as after a pull. */
  receive(entries: readonly Entry[]): void {
    for (const entry of entries) this.held.set(entry.id, entry);
    this.#position = positionIn(walkChains(this.held.values()), this.#position.job, this.device);
  }
}

/** The items in an order drawn by a source of numbers in [0, 1). */
export function shuffled<T>(items: readonly T[], uniform: () => number): T[] {
  const mixed = [...items];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
  }
  return mixed;
}
