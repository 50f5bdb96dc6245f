import { type Issue, ok, type Result } from "#core";
import {
  checkEntry,
  checkHead,
  createVerifier,
  type Entry,
  leafHash,
  parseJson,
  verifyInclusion,
} from "#records";
import type { EntryProof, OfficeProof } from "../desk-record.ts";
import { error } from "../issue.ts";
import type { JobLog } from "../jobs/job-log.ts";
import { entriesById } from "../review/log-lookup.ts";
import { askOffice } from "./office-answers.ts";

/** Shows of one entry what can be shown: that its device signed it, and that it is in the tree that the office signed. */
export async function entryProof(log: JobLog, job: string, id: string): Promise<EntryProof | undefined> {
  const entry = entriesById(log).get(id);
  if (entry === undefined) return undefined;
  const checked = await checkEntry(entry, createVerifier());
  const office = await officeProof(job, entry);
  return {
    isSigned: checked.ok,
    trouble: checked.ok ? (office.ok ? undefined : office.error) : checked.error,
    office: office.ok ? office.value : undefined,
  };
}

async function officeProof(job: string, { id }: Entry): Promise<Result<OfficeProof, Issue>> {
  const path = `/api/1/jobs/${encodeURIComponent(job)}/proof/inclusion?entry=${id}`;
  const answer = await askOffice(path);
  if (!answer.ok) return answer;
  return ok(await checkedProof(job, id, new TextDecoder().decode(answer.value)));
}

/** Checks what the office answered; nothing in it is believed. */
export async function checkedProof(job: string, id: string, text: string): Promise<OfficeProof> {
  const parsed = parseJson(text);
  const said = (parsed.ok ? parsed.value : {}) as {
    readonly head?: unknown;
    readonly index?: unknown;
    readonly proof?: unknown;
  };
  const path = Array.isArray(said.proof) ? said.proof.map(String) : [];
  const index = typeof said.index === "number" ? said.index : -1;
  const head = await checkHead(said.head, createVerifier());
  const none = { place: index + 1, steps: path.length, size: 0, root: "", key: "", at: "" };
  if (!head.ok) return { ...none, isProven: false, trouble: head.error };
  const { size, root, key, at } = head.value;
  const found = { ...none, size, root, key, at };
  if (head.value.job !== job)
    return {
      ...found,
      isProven: false,
      trouble: error("evidence.head-other-job", { found: head.value.job }),
    };
  const isIn = await verifyInclusion(await leafHash(id), index, size, path, root);
  return { ...found, isProven: isIn, trouble: isIn ? undefined : error("desk.proof-does-not-fit") };
}
