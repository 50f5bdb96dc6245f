import {
  answerPull,
  answerPush,
  canonicalJson,
  createEntry,
  type Entry,
  type EntryClock,
  foldChains,
  heldEnds,
  isSameSet,
  type JsonObject,
  nextBatch,
  notSent,
  type OfficeView,
  positionIn,
  readMessage,
  receiveBatch,
  type Signer,
  type SyncMessage,
  setDigest,
  startAnew,
  UNKNOWN_OFFICE,
  viewAfterPull,
  viewAfterPush,
  walkChains,
  writeMessage,
} from "#records";
import { createRandom, type RandomSource } from "#simulator";
import { JOB, signerOf, unwrap, verifier } from "./records.ts";

const PAGE = 5;

/** What can go wrong on the way, each with its chance for one message. */
const FAULTS = { drop: 0.15, twice: 0.15, late: 0.25, cut: 0.08, garbled: 0.08 } as const;

type Deliver = (text: string) => Promise<void>;

interface Waiting {
  readonly text: string;
  readonly deliver: Deliver;
}

/** A network that drops, repeats, delays, cuts and garbles, and that can be parted altogether. */
class Network {
  readonly #random: RandomSource;
  #waiting: Waiting[] = [];
  isParted = false;
  isFaulty = true;

  constructor(random: RandomSource) {
    this.#random = random;
  }

  async send(text: string, deliver: Deliver): Promise<void> {
    if (!this.isFaulty) return deliver(text);
    if (this.isParted || this.#happens(FAULTS.drop)) return;
    const times = this.#happens(FAULTS.twice) ? 2 : 1;
    for (let i = 0; i < times; i++) {
      const damaged = this.#damaged(text);
      if (this.#happens(FAULTS.late)) this.#waiting.push({ text: damaged, deliver });
      else await deliver(damaged);
    }
  }

  /** One of the messages on the way arrives, not necessarily the oldest. */
  async arrive(): Promise<void> {
    if (this.#waiting.length === 0) return;
    const [next] = this.#waiting.splice(Math.floor(this.#random.uniform() * this.#waiting.length), 1);
    await next!.deliver(next!.text);
  }

  async arriveAll(): Promise<void> {
    while (this.#waiting.length > 0) await this.arrive();
  }

  #happens(chance: number): boolean {
    return this.#random.uniform() < chance;
  }

  #damaged(text: string): string {
    const at = Math.floor(this.#random.uniform() * text.length);
    if (this.#happens(FAULTS.cut)) return text.slice(0, at);
    if (!this.#happens(FAULTS.garbled)) return text;
    const digit = "0123456789abcdef"[Math.floor(this.#random.uniform() * 16)]!;
    const garbled = text.slice(0, at) + digit + text.slice(at + 1);
    // the number of the era is taken on trust: a connection has its own checksums
    return eraOf(garbled) === eraOf(text) ? garbled : text;
  }
}

const eraOf = (text: string): string | undefined => /"era":(\d+),"/.exec(text)?.[1];

/** The office: entries in their order of arrival. */
class Office {
  log: Entry[] = [];
  era = 1;
  hasLost = false;
  quarantined = 0;

  async push(text: string): Promise<string | undefined> {
    const message = readMessage(text, "toeline-push/1");
    if (!message.ok) return undefined;
    const received = await receiveBatch(message.value.job, message.value.entries, verifier);
    const held = new Set(this.log.map((entry) => entry.id));
    this.log.push(...received.sound.filter((entry) => !held.has(entry.id)));
    this.quarantined += received.quarantined.length;
    return textOf(answerPush({ job: JOB, era: this.era }, received, heldEnds(walkChains(this.log))));
  }

  async pull(text: string): Promise<string | undefined> {
    const message = readMessage(text, "toeline-pull/1");
    if (!message.ok) return undefined;
    const { after } = message.value;
    const entries = this.log.slice(after, after + PAGE);
    const page = { from: after, entries, more: after + entries.length < this.log.length };
    const digest = await setDigest(this.log.map((entry) => entry.id));
    return textOf(answerPull({ job: JOB, era: this.era }, page, digest));
  }

  /** Everything after the back-up is gone. */
  restore(backup: readonly Entry[]): void {
    this.log = [...backup];
    this.era++;
  }

  /** An entry is gone, and nobody at the office knows. */
  loseOne(at: number): void {
    this.log = this.log.toSpliced(at, 1);
    this.hasLost = true;
  }
}

/** A device: its log and what it knows of the office. Nothing else. */
class Device {
  readonly signer: Signer;
  readonly log: Map<string, Entry> = new Map();
  office: OfficeView = UNKNOWN_OFFICE;
  /** what the last page said: whether the office holds what this device believes */
  isSame = false;

  constructor(signer: Signer) {
    this.signer = signer;
  }

  async write(kind: string, body: JsonObject, clock: EntryClock): Promise<void> {
    const position = positionIn(walkChains(this.log.values()), JOB, this.signer.publicKey);
    const entry = unwrap(await createEntry(position, { author: "anna", kind, body }, clock, this.signer));
    this.log.set(entry.id, entry);
  }

  get unsent(): readonly Entry[] {
    return notSent([...this.log.values()], this.office.acknowledged);
  }

  async push(network: Network, office: Office): Promise<void> {
    const batch = nextBatch(JOB, this.unsent, this.office.refused);
    if (batch === undefined) return;
    const sent = batch.entries as readonly Entry[];
    await network.send(textOf(batch), async (text) => {
      const answer = await office.push(text);
      if (answer !== undefined) await network.send(answer, async (back) => this.#pushed(back, sent));
    });
  }

  async pull(network: Network, office: Office): Promise<void> {
    const request = { format: "toeline-pull/1", job: JOB, after: this.office.cursor } as const;
    await network.send(textOf(request), async (text) => {
      const answer = await office.pull(text);
      if (answer !== undefined) await network.send(answer, (back) => this.#pulled(back));
    });
  }

  #pushed(text: string, sent: readonly Entry[]): void {
    const answer = readMessage(text, "toeline-push-answer/1");
    if (answer.ok) this.office = viewAfterPush(this.office, answer.value, sent);
  }

  async #pulled(text: string): Promise<void> {
    const answer = readMessage(text, "toeline-pull-answer/1");
    if (!answer.ok) return;
    const received = await receiveBatch(JOB, answer.value.entries, verifier);
    for (const entry of received.sound) this.log.set(entry.id, entry);
    this.office = viewAfterPull(this.office, answer.value, received);
    this.isSame = await isSameSet(this.office, answer.value);
  }
}

const textOf = (message: SyncMessage): string => unwrap(writeMessage(message));

export interface HistoryOutcome {
  /** how many entries were written in all */
  readonly written: number;
  /** canonical state of every device and of the office */
  readonly states: readonly string[];
  /** ids of every device and of the office, in order */
  readonly sets: readonly string[];
  /** entries written that are not at the office */
  readonly lost: number;
  /** entries that a device took for sent and the office does not hold, at any moment, unless the office has lost entries since */
  readonly falselyAcknowledged: number;
  readonly isComplete: boolean;
  readonly quarantined: number;
}

/**
 * One history: devices write, send and fetch over a bad network, clocks jump, the network parts, the office is restored from a
 * back-up or loses an entry without knowing; then the network heals and everybody goes on until nothing is left to do.
 */
export async function runHistory(seed: number | string): Promise<HistoryOutcome> {
  const random = createRandom(seed);
  const draw = (below: number) => Math.floor(random.uniform() * below);
  const network = new Network(random.fork("network"));
  const office = new Office();
  const devices = await Promise.all(
    Array.from({ length: 2 + draw(2) }, async (_, i) => new Device(await signerOf(i + 1))),
  );
  const written = new Set<string>();
  let backup: readonly Entry[] = [];
  let falselyAcknowledged = 0;
  const clocks = devices.map(() => ({ wall: 0, monotonic: 0, session: 1 }));
  const write = async (at: number, kind: string, body: JsonObject) => {
    const clock = clocks[at]!;
    const passed = draw(60_000);
    clock.monotonic += passed;
    clock.wall += passed + (draw(8) === 0 ? draw(7_200_000) - 3_600_000 : 0);
    const wall = new Date(Date.UTC(2026, 2, 2, 8) + clock.wall).toISOString();
    await devices[at]!.write(kind, body, { wall, monotonic_ms: clock.monotonic, session: clock.session });
    for (const id of devices[at]!.log.keys()) written.add(id);
  };
  for (const [at, { signer }] of devices.entries())
    await write(at, "device", { public_key: signer.publicKey, name: `Tablet ${at + 1}` });

  for (let step = 0; step < 30; step++) {
    const at = draw(devices.length);
    const device = devices[at]!;
    const act = draw(12);
    if (act < 3) await write(at, "element", { element: `P${draw(2)}`, set: { group: `g${draw(3)}` } });
    else if (act < 4) await write(at, "note", { about: "job", text: `note ${step}` });
    else if (act < 7) await device.push(network, office);
    else if (act < 9) await device.pull(network, office);
    else if (act < 10) await network.arrive();
    else if (act < 11) network.isParted = draw(3) === 0;
    else if (draw(3) === 0) backup = [...office.log];
    else if (draw(4) === 0) office.restore(backup);
    else if (draw(12) === 0 && office.log.length > 0) office.loseOne(draw(office.log.length));
    const ids = new Set(office.log.map((entry) => entry.id));
    for (const { office: view } of devices)
      if (view.era === office.era && !office.hasLost)
        falselyAcknowledged += [...view.acknowledged].filter((id) => !ids.has(id)).length;
  }

  await network.arriveAll();
  await settle(network, office, devices);
  const logs = [...devices.map(({ log }) => [...log.values()]), office.log];
  const states = logs.map((log) => foldChains(walkChains(log)));
  const held = new Set(office.log.map((entry) => entry.id));
  return {
    written: written.size,
    states: states.map((state) => unwrap(canonicalJson(state))),
    sets: logs.map((log) =>
      log
        .map((entry) => entry.id)
        .sort()
        .join(),
    ),
    lost: [...written].filter((id) => !held.has(id)).length,
    falselyAcknowledged,
    isComplete: states.every((state) => state.isComplete),
    quarantined: office.quarantined,
  };
}

/** The network is well again: each sends and fetches until all hold the same. */
async function settle(network: Network, office: Office, devices: readonly Device[]): Promise<void> {
  network.isFaulty = false;
  network.isParted = false;
  for (let round = 0; round < 100; round++) {
    for (const device of devices) {
      await device.push(network, office);
      await device.pull(network, office);
    }
    const isDone = devices.every(
      (device) => device.isSame && device.log.size === office.log.length && device.unsent.length === 0,
    );
    if (isDone) return;
    for (const device of devices)
      if (!device.isSame && device.office.cursor >= office.log.length)
        device.office = startAnew(device.office);
  }
}
