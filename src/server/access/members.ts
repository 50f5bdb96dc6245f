import { type Book, nowOf } from "./book.ts";
import type { Person, Right, Role } from "./person.ts";
import { gives, type JobRole, jobRole, needsSecondFactor } from "./rights.ts";

/** Role of a person in a job. Asked anew each time: what was taken away is gone with the next request. */
export async function roleIn(book: Book, person: Person, job: string): Promise<Role | undefined> {
  if (person.by === "local" || person.isAdmin) return "admin";
  const row = await book.db
    .selectFrom("job_members")
    .innerJoin("accounts", "accounts.id", "job_members.account")
    .select("role")
    .where("job", "=", job)
    .where("account", "=", person.id)
    .where("disabled", "=", 0)
    .executeTakeFirst();
  return jobRole(row?.role ?? null);
}

/** What keeps a person with a role from doing something; undefined: nothing. */
export type Hindrance = "not-allowed" | "second-factor-needed";

export function hindrance(person: Person, role: Role | undefined, right: Right): Hindrance | undefined {
  if (role === undefined || !gives(role, right)) return "not-allowed";
  if (person.scopes !== undefined && !person.scopes.includes(right)) return "not-allowed";
  if (person.by !== "local" && needsSecondFactor(right) && !person.hasSecondFactor)
    return "second-factor-needed";
  return undefined;
}

/** The best that a person may do anywhere, for what is not about one job. */
export async function hindranceAnywhere(
  book: Book,
  person: Person,
  right: Right,
): Promise<Hindrance | undefined> {
  const roles: readonly Role[] =
    person.by === "local" || person.isAdmin ? ["admin"] : [...(await rolesOf(book, person.id)).values()];
  const found = roles.map((role) => hindrance(person, role, right));
  if (found.includes(undefined)) return undefined;
  return found.includes("second-factor-needed") ? "second-factor-needed" : "not-allowed";
}

/** Roles of an account, by job. */
export async function rolesOf(book: Book, account: string): Promise<ReadonlyMap<string, JobRole>> {
  const rows = await book.db
    .selectFrom("job_members")
    .select(["job", "role"])
    .where("account", "=", account)
    .orderBy("job")
    .execute();
  return new Map(
    rows.flatMap(({ job, role }) => {
      const known = jobRole(role);
      return known === undefined ? [] : [[job, known] as const];
    }),
  );
}

export interface Member {
  readonly account: string;
  readonly name: string;
  readonly role: JobRole;
}

export async function membersOf(book: Book, job: string): Promise<readonly Member[]> {
  const rows = await book.db
    .selectFrom("job_members")
    .innerJoin("accounts", "accounts.id", "job_members.account")
    .select(["account", "name", "role"])
    .where("job", "=", job)
    .where("disabled", "=", 0)
    .orderBy("name")
    .execute();
  return rows.flatMap(({ account, name, role }) => {
    const known = jobRole(role);
    return known === undefined ? [] : [{ account, name, role: known }];
  });
}

/** Gives a role in a job, in place of the one before. */
export async function giveRole(book: Book, job: string, account: string, role: JobRole): Promise<void> {
  await book.db
    .insertInto("job_members")
    .values({ job, account, role, since: nowOf(book) })
    .onConflict((conflict) => conflict.columns(["job", "account"]).doUpdateSet({ role }))
    .execute();
}

/** @returns whether there was one. */
export async function takeRole(book: Book, job: string, account: string): Promise<boolean> {
  const taken = await book.db
    .deleteFrom("job_members")
    .where("job", "=", job)
    .where("account", "=", account)
    .returning("job")
    .executeTakeFirst();
  return taken !== undefined;
}

/** Makes somebody the manager of a job that has nobody yet. @returns whether that is so now. */
export async function beginJob(book: Book, job: string, account: string): Promise<boolean> {
  const begun = await book.db
    .insertInto("job_members")
    .columns(["job", "account", "role", "since"])
    .expression(({ selectFrom, val, lit, not, exists }) =>
      selectFrom("accounts")
        .select([val(job).as("job"), "accounts.id", val("manager").as("role"), lit(nowOf(book)).as("since")])
        .where("accounts.id", "=", account)
        .where(not(exists(selectFrom("job_members").select("account").where("job", "=", job)))),
    )
    .onConflict((conflict) => conflict.columns(["job", "account"]).doNothing())
    .returning("account")
    .executeTakeFirst();
  return begun !== undefined;
}
