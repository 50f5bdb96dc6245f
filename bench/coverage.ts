/**
 * Holds the stated uncertainty against simulated truth at full size and writes docs/method/coverage.md.
 *
 * Run by: npm run bench -- coverage. Seeds 1 to 250 of each of the twelve scenarios of test/jobs/coverage-trials.ts.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { coverageOf, coverageScenarios } from "../test/jobs/coverage-trials.ts";

const RUNS = 250;
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const rows = coverageScenarios.map((scenario) => {
  const { toe, worst } = coverageOf(scenario, RUNS);
  console.log(`${scenario.name.padEnd(16)} ${percent(toe)}  ${percent(worst)}`);
  return { name: scenario.name, toe, worst };
});
const mean = (of: "toe" | "worst") => rows.reduce((sum, row) => sum + row[of], 0) / rows.length;
const band = 1.96 * Math.sqrt((0.95 * 0.05) / RUNS);
const bandOfAll = 1.96 * Math.sqrt((0.95 * 0.05) / (RUNS * rows.length));

writeFileSync(
  join(process.cwd(), "docs/method/coverage.md"),
  `# Coverage held against simulation

Written by \`npm run bench -- coverage\`; do not edit by hand.

The simulator knows the true hole and integrates the motion of a probe with errors drawn from the budget. The program gets the
readings and the budget, nothing else. If its statements are right, the 95 % ellipse holds the true toe, and u95 the true point
of worst offset, in 95 of 100 runs. ${RUNS} runs a scenario (seeds 1 to ${RUNS}), ${RUNS * rows.length} in all; both compared at
equal level.

| scenario | 95 % ellipse holds the toe | u95 holds the worst offset |
|---|---|---|
${rows.map((row) => `| ${row.name} | ${percent(row.toe)} | ${percent(row.worst)} |`).join("\n")}
| all | ${percent(mean("toe"))} | ${percent(mean("worst"))} |

With ${RUNS} runs a share of 95 % scatters by ± ${percent(band)} (95 % of the time); with all together by ± ${percent(bandOfAll)}.
`,
);
