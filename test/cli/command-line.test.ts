import { afterAll, beforeAll, describe, expect, test } from "vitest";
import packageFile from "../../package.json" with { type: "json" };
import { buildToeline, temporaryFolder, toeline } from "./run-toeline.ts";

beforeAll(buildToeline);
const folder = temporaryFolder();
afterAll(folder.remove);

const noTrace = (text: string) => expect(text).not.toMatch(/^\s+at .*\.m?[jt]s:\d+/m);

describe("the command line", () => {
  test("says its version", () => {
    const ran = toeline(["--version"]);
    expect(ran).toEqual({ code: 0, stdout: `${packageFile.version}\n`, stderr: "" });
  });

  test.each([
    [["--help"], ["check", "reduce", "simulate", "Examples:", "Exit code"]],
    [
      ["help", "check"],
      ["Examples:", "Exit code: 0 no errors"],
    ],
    [
      ["reduce", "--help"],
      ["--out", "--json", "--only", "--method", "Examples:", "Exit code: 0 worked out"],
    ],
    [
      ["simulate", "--help"],
      ["--out", "--seed", "Examples:"],
    ],
  ])("shows help with examples: %s", (args, words) => {
    const ran = toeline(args);
    expect(ran.code).toBe(0);
    expect(ran.stderr).toBe("");
    for (const word of words) expect(ran.stdout).toContain(word);
  });

  test.each([
    ["an unknown command", ["chekc", "job"], /check/],
    ["an unknown option", ["check", "job", "--jsn"], /--jsn/],
    ["a missing argument", ["reduce"], /job/],
    ["a method that there is not", ["reduce", "job", "--method", "spline"], /minimum-curvature/],
    ["a job that is not there", ["check", "no-such-folder"], /no-such-folder/],
    ["nothing at all", [], /toeline check/],
  ])("answers %s with exit code 2, a hint and nothing on the standard output", (_what, args, hint) => {
    const ran = toeline(args, folder.path);
    expect(ran.code).toBe(2);
    expect(ran.stdout).toBe("");
    expect(ran.stderr).toMatch(hint);
    noTrace(ran.stderr);
  });
});
