import { type Issue, ok, type Result } from "#core";
import type { JobState } from "#records";
import type { Store } from "#store";
import type { JobCard } from "../desk.ts";
import { type JobLog, readJobLog } from "./job-log.ts";
import { officeJobs } from "./office-jobs.ts";

/** Lines of the list of jobs; one that has not grown is not read again. */
export class JobCards {
  readonly #store: Store;
  readonly #known = new Map<string, JobCard>();

  constructor(store: Store) {
    this.#store = store;
  }

  /** @param office address whose jobs are listed too. */
  async read(office: string): Promise<Result<readonly JobCard[], Issue>> {
    const [here, there] = await Promise.all([this.#store.jobs(), officeJobs(office)]);
    if (!here.ok) return here;
    const cards: JobCard[] = [];
    for (const job of here.value) {
      const card = await this.#card(job);
      if (!card.ok) return card;
      cards.push(card.value);
    }
    const elsewhere = there
      .filter(({ id }) => !here.value.includes(id))
      .map((job) => ({ ...job, isHere: false }));
    return ok([...cards, ...elsewhere]);
  }

  async #card(job: string): Promise<Result<JobCard, Issue>> {
    const size = await this.#store.size(job);
    if (!size.ok) return size;
    const known = this.#known.get(job);
    if (known !== undefined && known.entries === size.value) return ok(known);
    const log = await readJobLog(this.#store, job);
    if (!log.ok) return log;
    const card = cardOf(job, log.value);
    this.#known.set(job, card);
    return ok(card);
  }
}

function cardOf(id: string, { entries, state }: JobLog): JobCard {
  const name = state.things["job"]?.fields["name"]?.at(-1)?.value;
  return {
    id,
    name: typeof name === "string" ? name : id,
    elements: countThings(state, "element/"),
    runs: countThings(state, "run/"),
    entries: entries.length,
    isHere: true,
    lastWall: entries.at(-1)?.clock.wall,
  };
}

const countThings = (state: JobState, prefix: string): number =>
  Object.keys(state.things).filter(
    (key) => key.startsWith(prefix) && state.things[key]?.fields["withdrawn"]?.at(-1)?.value !== true,
  ).length;
