import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./run-step.mjs";

// Prints "N passed, N failed" for the tests of the last `npm test`.
// Arguments: exit code of what ran before, number of failures outside the tests. A bad exit code that
// no counted failure explains is one failure.
const [exitCode = 0, outside = 0] = process.argv.slice(2).map(Number);
const file = join(root, "out/test-report.json");
const report = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
const passed = report.numPassedTests ?? 0;
// a file that cannot be loaded has no tests to count, so it counts as one failure itself
const unloadable = (report.testResults ?? []).filter(
  (one) => one.status === "failed" && one.assertionResults.length === 0,
);
const counted = (report.numFailedTests ?? 0) + unloadable.length + outside;
const failed = counted === 0 && (exitCode !== 0 || passed === 0) ? 1 : counted;
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
