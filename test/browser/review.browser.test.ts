import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { verifyEvidenceBag } from "#evidence";
import { accessViolations, openBrowser, openPage, takePicture } from "./support/browser.ts";
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

const worked = (page: Page) =>
  page.waitForSelector("[role=progressbar]", { state: "detached", timeout: 110_000 });

const SCREENS = [
  { name: "inbox", path: "/jobs/example/inbox", shown: "[role=grid] tbody tr" },
  { name: "readings", path: "/jobs/example/runs/S07-1", shown: "[data-outcome=good]" },
  { name: "readings-faces", path: "/jobs/example/runs/W01A-1", shown: "[data-outcome=good]" },
  { name: "path", path: "/jobs/example/elements/S07/path", shown: "figure svg" },
  { name: "together", path: "/jobs/example/elements/P01/runs", shown: "[role=grid]" },
  { name: "verdict", path: "/jobs/example/elements/S07/verdict", shown: "blockquote" },
] as const;

describe.each([
  { theme: "light", width: 1280, language: "en" },
  { theme: "dark", width: 800, language: "de" },
  { theme: "contrast", width: 390, language: "de" },
] as const)("the review, $theme, $width pixels wide, $language", (settings) => {
  test("has nothing that axe-core objects to and stays inside the page", async () => {
    const { page, context, troubles } = await openPage(browser, settings);
    for (const { name, path, shown } of SCREENS) {
      await page.goto(office.address + path);
      await page.waitForSelector(shown);
      await worked(page);
      await takePicture(page, `${name}-${settings.theme}-${settings.width}`);
      expect(await accessViolations(page), `${name} in ${settings.theme}`).toEqual([]);
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(beyond, `${name} at ${settings.width}`).toBeLessThanOrEqual(0);
    }
    expect(troubles).toEqual([]);
    await context.close();
  });
});

/** Presses Tab until the keyboard stands on what is wanted: nobody touches a mouse here. */
async function tabTo(page: Page, isThere: string, most = 60): Promise<void> {
  for (let i = 0; i < most; i++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, isThere)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`the keyboard did not reach ${isThere} in ${most} steps`);
}

const heading = (page: Page, text: string | RegExp) =>
  page.getByRole("heading", { level: 1, name: text }).waitFor();

/** Until the dialogue that was answered is gone and the page takes keys again. */
const noDialog = (page: Page) => page.waitForSelector("[role=dialog]", { state: "detached" });

test("ten runs are reviewed without a mouse", async () => {
  const { page, context, troubles } = await openPage(browser);
  await page.goto(`${office.address}/jobs/example/inbox`);
  await page.waitForSelector("[role=grid] tbody tr");
  await worked(page);
  await page.keyboard.press("?");
  await page.getByRole("dialog", { name: "Keys" }).waitFor();
  await page.keyboard.press("Escape");
  await noDialog(page);
  // the most urgent one stands first: the only pile that is outside
  await tabTo(page, "[role=grid] tbody tr");
  await page.keyboard.press("Enter");
  await heading(page, "S17-1");
  await page.keyboard.press("/");
  await page.keyboard.type("s01");
  await page.keyboard.press("Enter");
  await heading(page, "S01");
  await tabTo(page, "a[href$='/runs/S01-1']");
  await page.keyboard.press("Enter");
  for (let n = 1; n <= 10; n++) {
    const run = `S${String(n).padStart(2, "0")}-1`;
    await heading(page, run);
    await page.keyboard.press("a");
    await page.getByRole("dialog", { name: `Accept the readings of ${run}` }).waitFor();
    await page.keyboard.press("Enter");
    await noDialog(page);
    await page.getByText(/^Accepted by/).waitFor();
    await page.keyboard.press("]");
  }
  await page.goto(`${office.address}/jobs/example/inbox`);
  await page.getByText("Accepted (10)").waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test("setting readings aside changes the verdict and stands in the history; a signed verdict is verified outside", async () => {
  const { page, context, troubles } = await openPage(browser);
  await page.goto(`${office.address}/jobs/example/runs/S12-1`);
  await page.waitForSelector("[data-outcome=good]");
  await page.getByRole("status").getByText("Within", { exact: true }).waitFor();
  // the deepest stops of both passes, in the middle of the table: without them nobody knows where the toe is
  const rows = await page.locator("[role=grid] tbody tr").count();
  await tabTo(page, "[role=grid] tbody tr");
  for (let i = 0; i < Math.floor(rows / 2) - 5; i++) await page.keyboard.press("ArrowDown");
  for (let i = 0; i < 10; i++) {
    await page.keyboard.press("Shift+Space");
    if (i < 9) await page.keyboard.press("ArrowDown");
  }
  await page.keyboard.press("Space");
  await page.getByRole("dialog", { name: "Set 10 readings aside" }).waitFor();
  await page.keyboard.press("Enter");
  await page.getByText("Say why").waitFor();
  await page.keyboard.type("cable slipped near the toe");
  await page.keyboard.press("Enter");
  await noDialog(page);
  await page.getByText("The verdict has changed").waitFor();
  await page.getByRole("status").getByText("Not judged", { exact: true }).waitFor();
  expect(await page.locator("[role=grid] tbody tr[data-struck]").count()).toBe(10);
  await page
    .getByText(/Row \d+ set aside: cable slipped near the toe/)
    .first()
    .waitFor();
  await takePicture(page, "readings-set-aside");
  expect(await accessViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "Undo" }).press("Enter");
  await page
    .getByText(/Row \d+ put back: undone at once/)
    .first()
    .waitFor();
  await page.getByText("The verdict has changed").waitFor({ state: "detached" });
  await page.getByRole("status").getByText("Within", { exact: true }).waitFor();
  expect(await page.locator("[role=grid] tbody tr[data-struck]").count()).toBe(0);
  await recordAndSign(page, "S12");
  await page.getByRole("button", { name: "Check the whole record" }).press("Enter");
  await page.getByText(/every one is signed and unchanged/).waitFor();
  await takePicture(page, "verdict-signed");
  await page.getByText("Everything is at the office").waitFor();
  const bag = await fetch(`${office.address}/api/1/jobs/example/evidence.zip`);
  const report = await verifyEvidenceBag(new Uint8Array(await bag.arrayBuffer()));
  expect(report.isSound).toBe(true);
  expect(report.seals).toMatchObject([{ about: "element/S12", meaning: "approved by", fits: true }]);
  expect(troubles).toEqual([]);
  await context.close();
});

async function recordAndSign(page: Page, element: string): Promise<void> {
  await page.getByRole("link", { name: "Verdict", exact: true }).press("Enter");
  await heading(page, `Verdict on ${element}`);
  await page.getByRole("button", { name: "Sign", exact: true }).press("Enter");
  await page.getByText("Record the verdict first").waitFor();
  await page.keyboard.press("Escape");
  await noDialog(page);
  await page.getByRole("button", { name: "Record verdict" }).press("Enter");
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Enter");
  await noDialog(page);
  await page
    .getByText(/as worked out by the agreed rule/i)
    .first()
    .waitFor();
  await page.getByRole("button", { name: "Sign", exact: true }).press("Enter");
  const dialog = page.getByRole("dialog", { name: `Sign for the verdict on ${element}` });
  await dialog.waitFor();
  const name = /Signing as (.+), now\./.exec((await dialog.textContent()) ?? "")![1]!;
  await dialog.getByText("Approved by").click();
  await dialog.getByLabel("Type your name").fill(name);
  const sign = dialog.getByRole("button", { name: "Sign", exact: true });
  await sign.press("Enter");
  await dialog.waitFor();
  await sign.press("Space");
  await noDialog(page);
  await page.getByText("Sound: the signature fits").waitFor();
}
