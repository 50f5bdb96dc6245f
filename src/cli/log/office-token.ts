import { existsSync, readFileSync } from "node:fs";
import { fail, ok, type Result } from "#core";

/** Names of the environment's variables: the token itself, or a file that holds it. */
const TOKEN = "TOELINE_TOKEN";
const TOKEN_FILE = "TOELINE_TOKEN_FILE";

/**
 * The token with which an office is asked. It comes from the environment or from a file, never from the command line, where every
 * user of the machine could read it.
 *
 * @returns undefined if there is none: an office on this machine, for one person, needs none.
 */
export function officeToken(
  environment: Readonly<Record<string, string | undefined>>,
  file: string | undefined = environment[TOKEN_FILE],
): Result<string | undefined, string> {
  if (file === undefined) return ok(environment[TOKEN]?.trim() || undefined);
  if (!existsSync(file)) return fail(`There is no file ${file} with a token.`);
  const token = readFileSync(file, "utf8").trim();
  return token === "" ? fail(`The file ${file} holds no token.`) : ok(token);
}
