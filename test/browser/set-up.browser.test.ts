import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { accessViolations, openBrowser, openPage, THEMES, takePicture, WIDTHS } from "./support/browser.ts";
import { startOffice, type TestOffice } from "./support/office.ts";

let office: TestOffice;
let browser: Browser;

beforeAll(async () => {
  office = await startOffice();
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await office?.stop();
});

/** As a spreadsheet in a comma country gives it. The third line has a letter in a number; all of it is invented. */
const PASTED = [
  "Pile\tKind\tDiameter (m)\tEasting\tNorthing\tHead level\tToe level\tWall\tsequence",
  "H10\tbored-pile\t0,9\t1214,40\t3400,00\t4,50\t-16,00\tnorth wall\t10",
  "H2\tbored-pile\t0,9\t1201,60\t3400,00\t4,50\t-16,00\tnorth wall\t2",
  "H3\tbored-pile\t0,9\t12o3,20\t3400,00\t4,50\t-16,00\tnorth wall\t3",
  "H4\tbored-pile\t0,9\t1204,80\t3400,00\t4,50\t-16,00\tnorth wall\t4",
].join("\n");

async function newJob(page: Page, name: string): Promise<void> {
  await page.goto(`${office.address}/jobs`);
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByLabel("Name of the job").fill(name);
  await page.getByText("A map grid").click();
  await page.getByLabel("EPSG number of the map grid").fill("32631");
  await page.getByLabel(/Latitude/).fill("51,5");
  await page.getByLabel(/Longitude/).fill("100");
  await page.getByLabel("Levels are above").fill("site datum");
  await page.getByRole("button", { name: "Start the job" }).click();
  await page.getByText("This is outside of the area").waitFor();
  await takePicture(page, "new-job");
  await page.getByText("The site's own grid").click();
  await page.getByRole("button", { name: "Start the job" }).click();
  await page.getByRole("heading", { name: "No elements yet" }).waitFor();
}

const column = (page: Page, nth: number) =>
  page.locator(`[role=grid] tbody tr > :nth-child(${nth})`).allInnerTexts();

test("a pasted schedule with decimal commas and a bad line becomes elements with allowances on the plan", async () => {
  const { page, context, troubles } = await openPage(browser);
  await newJob(page, "North wall, invented");
  await page.getByRole("link", { name: "Elements" }).click();
  await page.getByRole("button", { name: "Add elements" }).click();
  await page.getByLabel("Lines from a spreadsheet").fill(PASTED);
  await page.getByText("1 line has a problem").waitFor();
  await page.getByText("12o3,20").first().waitFor();
  await takePicture(page, "elements-proposal");
  expect(await accessViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "Take 3 lines over" }).click();
  // the bad line alone is left to be mended
  await page.getByText("3 elements written").waitFor();
  const left = page.getByLabel("Lines from a spreadsheet");
  await expect.poll(() => left.inputValue()).toContain("12o3,20");
  expect((await left.inputValue()).split("\n").length).toBe(2);
  await left.fill((await left.inputValue()).replace("12o3", "1203"));
  await page.getByRole("button", { name: "Take 1 line over" }).click();
  await page.getByRole("grid", { name: /Schedule/ }).waitFor();
  await expect.poll(() => column(page, 1)).toEqual(["H2", "H3", "H4", "H10"]);
  // a comma is a decimal mark: the easting of H10
  await page.getByRole("row", { name: /^H10/ }).getByText("1214.400").waitFor();

  await page.getByRole("link", { name: "Allowances" }).click();
  await page.getByRole("button", { name: "Add a rule" }).click();
  await page.getByLabel(/allowed offset in any direction/i).fill("0,075");
  await page.getByText("75 mm in any direction").first().waitFor();
  await page.getByText("The rule is for 4 elements.").waitFor();
  await takePicture(page, "allowances-rule");
  await page.getByRole("button", { name: "Write the rule" }).click();
  await page.getByRole("heading", { name: "Plan position" }).waitFor();
  await page.getByRole("link", { name: "Site plan" }).click();
  await page.waitForSelector("canvas");
  await expect.poll(() => column(page, 1)).toEqual(expect.arrayContaining(["H2", "H3", "H4", "H10"]));
  expect(troubles).toEqual([]);
  await context.close();
});

test("exchanged coordinates are put right by one press; a change and a withdrawal can be undone", async () => {
  const { page, context } = await openPage(browser);
  await newJob(page, "South wall, invented");
  await page.getByRole("link", { name: "Elements" }).click();
  await page.getByRole("button", { name: "Add elements" }).click();
  await page.getByRole("button", { name: "Put a sample in" }).click();
  await page.getByRole("button", { name: "Exchange easting and northing" }).click();
  await page.getByText("Easting and northing are exchanged.").waitFor();
  await page.getByRole("row", { name: /^H1 new .* 3400.000 1200.000/ }).waitFor();
  await page.getByRole("button", { name: "Undo the exchange" }).click();
  await page.getByRole("row", { name: /^H1 new .* 1200.000 3400.000/ }).waitFor();
  await page.getByRole("button", { name: "Take 3 lines over" }).click();
  await page.getByRole("row", { name: /^H2/ }).click();
  await page.getByRole("button", { name: "Change" }).click();
  await page.getByLabel(/Toe level/).fill("-21,25");
  await page.getByRole("button", { name: "Save" }).click();
  const changed = page.getByRole("row", { name: /^H2 .*21.25/ });
  await changed.waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await changed.waitFor({ state: "detached" });
  expect(await changed.count()).toBe(0);
  await page.getByRole("button", { name: "Withdraw" }).click();
  await page.getByRole("button", { name: "Put H2 back" }).click();
  await page.getByText("H2 is back in the schedule").waitFor();
  await context.close();
});

/** Looks at what is on the page: in every theme by axe-core, at every width for what stands out to the side. */
async function look(page: Page, name: string): Promise<void> {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    if (process.env["PICTURES"] !== undefined) await takePicture(page, `${name}-${width}`);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(beyond, `${name} at ${width}`).toBeLessThanOrEqual(0);
  }
  for (const theme of THEMES) {
    await page.evaluate((chosen) => {
      document.documentElement.dataset["theme"] = chosen;
    }, theme);
    if (process.env["PICTURES"] !== undefined) await takePicture(page, `${name}-${theme}`);
    expect(await accessViolations(page), `${name} in ${theme}`).toEqual([]);
  }
}

test("axe-core objects to nothing in any theme, and nothing stands out to the side at any width, in German", async () => {
  const { page, context, troubles } = await openPage(browser, { language: "de" });
  const press = (name: string | RegExp) => page.getByRole("button", { name }).first().click();
  await page.goto(`${office.address}/jobs`);
  await press("Neuer Auftrag");
  await page.getByLabel("Name des Auftrags").fill("Südwand, erfunden");
  await press("Auftrag beginnen");
  await page.getByRole("heading", { name: "Noch keine Elemente" }).waitFor();
  await page.getByRole("link", { name: "Elemente" }).click();
  await press("Elemente hinzufügen");
  await press("Beispiel einsetzen");
  await page.getByRole("heading", { name: "Was verstanden wurde" }).waitFor();
  await look(page, "elements-paste");
  await press("3 Zeilen übernehmen");
  await page.getByRole("row", { name: /^H2/ }).click();
  await page.getByText("1 Element gewählt").waitFor();
  await look(page, "elements");
  await page.getByRole("link", { name: "Toleranzen" }).click();
  await press("Fertige Sätze");
  await press(/^In diesen Auftrag übernehmen/);
  await page.getByText("Seine Regeln stehen im Auftrag.").waitFor();
  await look(page, "allowances-sets");
  await press("Zurück zu den Toleranzen");
  await page.locator("article").first().waitFor();
  await look(page, "allowances");
  await press("Regel hinzufügen");
  await press("Stufe hinzufügen");
  await look(page, "allowances-new");
  expect(troubles).toEqual([]);
  await context.close();
});
