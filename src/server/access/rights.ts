import type { Right, Role } from "./person.ts";

/** Which role gives which right in a job: the only place where this is written. docs/security.md shows the same table. */
const RIGHTS_OF: Readonly<Record<Role, readonly Right[]>> = {
  technician: ["read", "record"],
  engineer: ["read", "record", "set-up", "judge", "sign"],
  reviewer: ["read", "judge", "sign"],
  manager: ["read", "record", "set-up", "judge", "sign", "manage"],
  admin: ["read", "record", "set-up", "judge", "sign", "manage", "administer"],
};

/** Rights for which a second factor must have been shown, where there are accounts at all. */
const NEED_SECOND_FACTOR: readonly Right[] = ["sign", "administer"];

/** Roles that somebody may be given in one job; "admin" is for all jobs and belongs to the account. */
export const JOB_ROLES = ["technician", "engineer", "reviewer", "manager"] as const satisfies readonly Role[];
export type JobRole = (typeof JOB_ROLES)[number];

export const rightsOf = (role: Role): readonly Right[] => RIGHTS_OF[role];
export const gives = (role: Role, right: Right): boolean => RIGHTS_OF[role].includes(right);
export const needsSecondFactor = (right: Right): boolean => NEED_SECOND_FACTOR.includes(right);

/** Reads a role as it stands in the database; undefined for a word of another version of the program. */
export const jobRole = (found: string | null): JobRole | undefined =>
  JOB_ROLES.find((role) => role === found);
