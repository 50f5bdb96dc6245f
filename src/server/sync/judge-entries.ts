import type { Issue } from "#core";
import type { Entry } from "#records";
import type { Person, Right } from "../access/person.ts";
import { error } from "../issue.ts";
import type { Access } from "../office.ts";
import { rightOf } from "./right-of-kind.ts";

/** Says of an entry that is sound by itself whether it may be taken; the finding is the reason why not. */
export type Judge = (entry: Entry) => Promise<Issue | undefined>;

type Rights = Pick<Access, "mayIn" | "personOfDevice">;

/**
 * Whether somebody may send an entry into the log of a job.
 *
 * An entry is taken if its sender has the right that its kind asks for: whoever sends answers for what is sent. It is also taken if
 * it was written by the person whose device signed it and that person has the right, whoever happens to be signed in there when the
 * line comes back; and readings, notes and photos are taken from the device of every member of the job. What is not taken is kept
 * aside, and can be taken later by somebody with the right.
 *
 * Errors: sync.kind-not-known, sync.kind-not-allowed.
 */
export function judgeFor(access: Rights, sender: Person, job: string): Judge {
  const may = remembered((person: Person, right: Right) => access.mayIn(person, job, right));
  const owners = new Map<string, Promise<string | undefined>>();
  const ownerOf = (device: string) => {
    const known = owners.get(device) ?? access.personOfDevice(device);
    owners.set(device, known);
    return known;
  };
  return async (entry) => {
    const right = rightOf(entry);
    if (right === undefined) return error("sync.kind-not-known", { kind: entry.kind });
    if (await may(sender, right)) return undefined;
    const owner = await ownerOf(entry.device);
    if (owner !== undefined) {
      const person = notHere(owner);
      const isTaken =
        right === "record" ? await may(person, "read") : owner === entry.author && (await may(person, right));
      if (isTaken) return undefined;
    }
    return error("sync.kind-not-allowed", { kind: entry.kind, right });
  };
}

/** Somebody who is not signed in now: what needs a second factor is not done in that person's name. */
const notHere = (id: string): Person => ({
  id,
  name: id,
  by: "session",
  isAdmin: false,
  hasSecondFactor: false,
});

function remembered(
  ask: (person: Person, right: Right) => Promise<boolean>,
): (person: Person, right: Right) => Promise<boolean> {
  const answers = new Map<string, Promise<boolean>>();
  return (person, right) => {
    const key = `${right} ${person.hasSecondFactor} ${person.id}`;
    const known = answers.get(key) ?? ask(person, right);
    answers.set(key, known);
    return known;
  };
}
