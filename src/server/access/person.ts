/** What somebody may be in a job. An administrator is one for all jobs. */
export const ROLES = ["technician", "engineer", "reviewer", "manager", "admin"] as const;
export type Role = (typeof ROLES)[number];

/** What a request needs. Which role gives which right is written in one table, `rights.ts`. */
export const RIGHTS = [
  /** see the job */
  "read",
  /** runs, readings, notes, photos */
  "record",
  /** schedule, allowances, instruments, calibrations */
  "set-up",
  /** set readings aside, decide, judge */
  "judge",
  /** seal runs and reports, issue reports */
  "sign",
  /** people of the job, its share of the trend */
  "manage",
  /** all jobs, all accounts, back-up */
  "administer",
] as const;
export type Right = (typeof RIGHTS)[number];

/** Who asks. Worked out once for each request; never taken from its body. */
export interface Person {
  readonly id: string;
  readonly name: string;
  /** local: the one user of a server on this machine; session: signed in; token: a program with a token of this person */
  readonly by: "local" | "session" | "token";
  readonly isAdmin: boolean;
  /** whether a second factor was shown in this session: needed to sign and to administer in shared mode */
  readonly hasSecondFactor: boolean;
  /** what a token was made for; undefined: all that the person may */
  readonly scopes?: readonly Right[];
}
