import { fail, type Issue, type Result } from "#core";
import { createVerifier, type JsonObject, makeSeal, thingKey, verifyLog } from "#records";
import type { Author, NewStatement, ReadingPlace } from "../desk.ts";
import type { DeskReview, LogCheck } from "../desk-review.ts";
import { wallTime } from "../device/device.ts";
import { error } from "../issue.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementsInConflict } from "../view/job-view.ts";
import { readingsTable } from "../view/run-view.ts";
import { decisionOn, PATH, READINGS, VERDICT } from "./acceptance.ts";
import { inboxView } from "./inbox-view.ts";
import { pathView } from "./path-view.ts";
import { keyAnnouncement, personSigner } from "./person-key.ts";
import { restsOn } from "./rests-on.ts";
import { runReview } from "./run-review.ts";
import { togetherView } from "./together-view.ts";
import { tryOut } from "./trial.ts";
import { verdictAnswer, verdictView } from "./verdict-view.ts";

type Written = Result<readonly string[], readonly Issue[]>;

/** What the review needs of the desk. */
export interface ReviewPlace {
  readonly now: (job: string) => Promise<JobNow | undefined>;
  readonly author: () => Author | undefined;
  readonly write: (job: string, statements: readonly NewStatement[]) => Promise<Written>;
  readonly setRows: (
    kind: "set-aside" | "put-back",
    job: string,
    run: string,
    places: readonly ReadingPlace[],
    reason: string,
  ) => Promise<Written>;
}

/** The worker's part of the review screens. */
export function reviewDesk({ now, author, write, setRows }: ReviewPlace): DeskReview {
  const ask = async <T>(job: string, answer: (known: JobNow) => T | Promise<T>): Promise<T | undefined> => {
    const known = await now(job);
    return known === undefined ? undefined : answer(known);
  };
  const decide = (job: string, about: string, question: string, answer: JsonObject, reason: string) =>
    write(job, [{ kind: "decision", body: { about, question, answer, reason } }]);
  return {
    inbox: (job) => ask(job, inboxView),
    run: (job, run) => ask(job, (known) => runReview(known, run)),
    path: (job, element) => ask(job, (known) => pathView(known, element)),
    trial: (job, element, choices) => ask(job, (known) => tryOut(known, element, choices)),
    together: (job, element) => ask(job, (known) => togetherView(known, element)),
    verdict: (job, element, language) => ask(job, (known) => verdictView(known, element, language)),
    checkLog: (job) => ask(job, (known) => checkedLog(job, known)),
    leaveOut: async (job, run, isOut, reason) => {
      const table = readingsTable((await now(job))?.log.state.things[thingKey("run", run)]);
      const places = table.rows
        .filter(({ aside }) => (aside === undefined) === isOut)
        .map(({ place }) => place);
      return setRows(isOut ? "set-aside" : "put-back", job, run, places, reason);
    },
    acceptReadings: async (job, run, reason) => {
      const { rows } = readingsTable((await now(job))?.log.state.things[thingKey("run", run)]);
      const aside = rows.filter((row) => row.aside !== undefined).length;
      const answer = { accepted: true, readings: rows.length, set_aside: aside };
      return decide(job, thingKey("run", run), READINGS, answer, reason);
    },
    acceptPath: async (job, element, reason) => {
      const known = await now(job);
      if (known === undefined) return fail([error("desk.job-not-open", { job })]);
      const answer = { accepted: true, rests_on: await restsOn(known, element) };
      return decide(job, thingKey("element", element), PATH, answer, reason);
    },
    recordVerdict: async (job, element, reason) => {
      const known = await now(job);
      const answer = known && (await verdictAnswer(known, element));
      if (answer === undefined) return fail([error("desk.not-worked-out", { element })]);
      return decide(job, thingKey("element", element), VERDICT, answer, reason);
    },
    sign: (job, element, meaning) => sign({ now, author, write, setRows }, job, element, meaning),
  };
}

async function sign(
  { now, author, write }: ReviewPlace,
  job: string,
  element: string,
  meaning: string,
): Promise<Written> {
  const person = author();
  const known = await now(job);
  if (known === undefined) return fail([error("desk.job-not-open", { job })]);
  if (person === undefined) return fail([error("desk.nobody-signed-in")]);
  const about = thingKey("element", element);
  if (elementsInConflict(known).has(element)) return fail([error("desk.conflict-open", { element })]);
  if (decisionOn(known.log.state.things[about], VERDICT) === undefined)
    return fail([error("desk.nothing-recorded", { element })]);
  const signer = await personSigner(person.id);
  if (!signer.ok) return fail([signer.error]);
  const announcement = keyAnnouncement(known.log.state, person, signer.value);
  if (announcement.length > 0) {
    const announced = await write(job, announcement);
    if (!announced.ok) return announced;
  }
  const fresh = (await now(job)) ?? known;
  const request = { job, about, meaning, person: person.id, name: person.name, at: wallTime(new Date()) };
  const seal = await makeSeal(request, fresh.log.chains, signer.value);
  if (!seal.ok) return fail([seal.error]);
  return write(job, [{ kind: "sign-off", body: { seal: seal.value as unknown as JsonObject } }]);
}

async function checkedLog(job: string, { log }: JobNow): Promise<LogCheck> {
  const { sound, chains, firstBad } = await verifyLog(log.entries, job, createVerifier());
  return { entries: sound.length, devices: chains.size, firstBad };
}
