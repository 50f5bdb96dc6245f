import { z } from "zod";
import { RIGHTS, ROLES } from "../person.ts";
import { JOB_ROLES } from "../rights.ts";
import { MAX_PASSWORD } from "../secrets/password-rules.ts";

const MAX_LINE = 200;
/** Control characters, and those that turn the direction of the text around them. */
const LINE = /^[^\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+$/u;

/** A line that people read. */
export const line = z.string().trim().min(1).max(MAX_LINE).regex(LINE);
export const login = line.describe("login name or e-mail address; capitals do not matter");
/** A password as typed; whether a new one will do is answered with a reason, not as a wrong field. */
export const password = z
  .string()
  .min(1)
  .max(MAX_PASSWORD * 4);
/** Name of a record, as the server made it. */
export const id = z
  .string()
  .min(1)
  .max(400)
  .regex(/^[\w-]+$/);
export const secret = z.string().min(1).max(100).describe("what stands behind the # of the link");
export const code = z
  .string()
  .min(1)
  .max(60)
  .describe("six digits of an authenticator program, or a recovery code");
export const time = z.string().describe("RFC 3339, UTC");
export const right = z.enum(RIGHTS);
export const role = z.enum(ROLES);
export const roleInJob = z.enum(JOB_ROLES);
export const device = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe("public key of the device");

export const nothing = z.null().describe("nothing more to say");

/** What an authenticator answers; checked in full by the library that reads it. */
const base64url = z
  .string()
  .max(20_000)
  .regex(/^[\w-]*={0,2}$/);
const credential = {
  id: base64url,
  rawId: base64url,
  type: z.literal("public-key"),
  clientExtensionResults: z.looseObject({}),
  authenticatorAttachment: z.enum(["platform", "cross-platform"]).optional(),
};
export const newPasskey = z.object({
  ...credential,
  response: z.object({
    clientDataJSON: base64url,
    attestationObject: base64url,
    transports: z.array(z.string().max(40)).max(10).optional(),
  }),
});
export const shownPasskey = z.object({
  ...credential,
  response: z.object({
    clientDataJSON: base64url,
    authenticatorData: base64url,
    signature: base64url,
    userHandle: base64url.optional(),
  }),
});
/** A question to an authenticator, as browsers take it. */
export const question = z.object({
  challenge: id.describe("comes back with the answer"),
  options: z.looseObject({}).describe("for navigator.credentials, as JSON"),
});

export const person = z.object({
  id: z.string(),
  name: z.string(),
  by: z.enum(["local", "session", "token"]),
  isAdmin: z.boolean(),
  hasSecondFactor: z.boolean(),
});

/** Who is signed in, and what is still missing. */
export const sessionAnswer = z.object({
  mode: z.enum(["local", "shared"]),
  person: person.nullable(),
  secondFactor: z
    .object({ timeCodes: z.boolean(), passkeys: z.boolean() })
    .nullable()
    .describe("not null: the password was right, one of these has to be shown next"),
  roles: z
    .record(z.string(), role)
    .describe("own role in each job; an administrator is one in all of them and has none here"),
});
export type SessionAnswer = z.output<typeof sessionAnswer>;
