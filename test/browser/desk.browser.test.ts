import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Job, reduceJob, VERDICTS, type Verdict } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { accessViolations, openBrowser, openPage, THEMES, takePicture, WIDTHS } from "./support/browser.ts";
import { EXAMPLE, startOffice, type TestOffice } from "./support/office.ts";

let office: TestOffice;
let browser: Browser;

beforeAll(async () => {
  office = await startOffice({ example: EXAMPLE });
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await office?.stop();
});

/** Until everything is worked out: on a busy machine that takes its time. */
const worked = (page: Page) =>
  page.waitForSelector("[role=progressbar]", { state: "detached", timeout: 110_000 });

const SCREENS = [
  { name: "jobs", path: "/jobs", shown: "main h1" },
  { name: "job", path: "/jobs/example", shown: "canvas" },
  { name: "element", path: "/jobs/example/elements/S07", shown: "figure svg" },
  { name: "settings", path: "/settings", shown: "main h1" },
] as const;

describe.each(THEMES)("in the theme %s", (theme) => {
  test("no screen has anything that axe-core objects to, and the content policy refuses nothing", async () => {
    const { page, context, troubles } = await openPage(browser, { theme });
    for (const { name, path, shown } of SCREENS) {
      await page.goto(office.address + path);
      await page.waitForSelector(shown);
      await worked(page);
      await takePicture(page, `${name}-${theme}`);
      expect(await accessViolations(page), `${name} in ${theme}`).toEqual([]);
    }
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe.each(WIDTHS)("%i pixels wide", (width) => {
  test("nothing stands out of the page to the side, in German, whose words are longest", async () => {
    const { page, context } = await openPage(browser, { width, language: "de" });
    for (const { name, path, shown } of SCREENS) {
      await page.goto(office.address + path);
      await page.waitForSelector(shown);
      await worked(page);
      await takePicture(page, `${name}-${width}`);
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(beyond, `${name} at ${width}`).toBeLessThanOrEqual(0);
    }
    await context.close();
  });
});

/** The job as the command line reads it: the folder itself, not what went through the log and the office. */
async function exampleJob(): Promise<Job> {
  const names = readdirSync(EXAMPLE, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.\w+$/.test(name),
  );
  const files = new Map(names.map((name) => [name, readFileSync(join(EXAMPLE, name))]));
  return (await readJobFolder(folderFromFiles(files))).job!;
}

const RANK: readonly Verdict[] = ["outside", "too-close-to-call", "not-judged", "within"];

test("the desk judges the example as the folder itself is judged", async () => {
  const counts = new Map<Verdict, number>(VERDICTS.map((verdict) => [verdict, 0]));
  for (const { verdicts } of reduceJob(await exampleJob()).elements) {
    const worst = RANK.find((rank) => verdicts.some(({ verdict }) => verdict === rank)) ?? "not-judged";
    counts.set(worst, counts.get(worst)! + 1);
  }
  const { page, context } = await openPage(browser);
  await page.goto(`${office.address}/jobs/example`);
  await page.waitForSelector("canvas");
  await worked(page);
  const buttons = page.getByRole("toolbar", { name: /^Verdicts/ }).getByRole("button");
  const shown = (await buttons.allInnerTexts()).map((text) => Number.parseInt(text, 10));
  expect(shown).toEqual(VERDICTS.map((verdict) => counts.get(verdict)));
  expect(shown.reduce((sum, count) => sum + count, 0)).toBe(74);
  await context.close();
});

test("a new job begins empty and says how to go on; it is there after loading again", async () => {
  const { page, context, troubles } = await openPage(browser);
  await page.goto(`${office.address}/jobs`);
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByRole("button", { name: "Start the job" }).click();
  await page.getByText("Enter a name for the job.").waitFor();
  await page.getByLabel("Name of the job").fill("Slip wall, invented");
  await page.getByRole("button", { name: "Start the job" }).click();
  await page.getByRole("heading", { name: "No elements yet" }).waitFor();
  await page.reload();
  await page.getByRole("heading", { name: "Slip wall, invented" }).waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test("a second window of the browser shows everything and says that it does not write", async () => {
  const { page, context } = await openPage(browser);
  await page.goto(`${office.address}/settings`);
  await page.getByText("This window writes.").waitFor();
  const second = await context.newPage();
  await second.goto(`${office.address}/jobs`);
  await second.getByText("Another window of this browser is writing.").waitFor();
  await page.close();
  await second.getByText("Another window of this browser is writing.").waitFor({ state: "detached" });
  expect(await second.getByText("Another window of this browser is writing.").count()).toBe(0);
  await context.close();
});

test("the plan is walked through by the keyboard alone", async () => {
  const { page, context } = await openPage(browser);
  await page.goto(`${office.address}/jobs/example`);
  await page.waitForSelector("canvas");
  await worked(page);
  await page.locator("canvas").focus();
  await page.keyboard.press("]");
  await page.keyboard.press("]");
  await page.locator("#plan-chosen", { hasText: "S02" }).waitFor();
  await page.keyboard.press("Enter");
  const heading = page.getByRole("heading", { name: "S02", exact: true });
  await heading.waitFor();
  expect(await heading.count()).toBe(1);
  await context.close();
});

test("the check with axe-core sees what it is there for", async () => {
  const { page, context } = await openPage(browser);
  await page.goto(`${office.address}/settings`);
  await page.waitForSelector("main h1");
  await page.evaluate(() => document.querySelector("main")?.append(document.createElement("img")));
  expect((await accessViolations(page)).join()).toContain("image-alt");
  await context.close();
});
