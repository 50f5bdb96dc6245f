import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

const root = resolve(import.meta.dirname, "../../..");
const CHROMIUM = process.env["CHROMIUM"] ?? "/usr/bin/chromium";

/** The browser of this machine. Nothing is downloaded. */
export async function openBrowser(): Promise<Browser> {
  if (!existsSync(CHROMIUM))
    throw new Error(
      `There is no Chromium at ${CHROMIUM}. Install it (apt-get install chromium) or name one in CHROMIUM.`,
    );
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      "--no-sandbox",
      "--disable-quic",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

export const WIDTHS = [390, 800, 1280] as const;
export const THEMES = ["light", "dark", "contrast"] as const;

/** What went wrong in a page: mistakes, refused by the content policy, and what was written to the console as an error. */
export interface WatchedPage {
  readonly page: Page;
  readonly troubles: readonly string[];
}

/** A page in a browser profile of its own, that gathers everything that goes wrong in it. */
export async function openPage(
  browser: Browser,
  settings: {
    readonly language?: "en" | "de";
    readonly theme?: (typeof THEMES)[number];
    readonly width?: number;
  } = {},
): Promise<WatchedPage & { readonly context: BrowserContext }> {
  const { language = "en", theme = "light", width = 1280 } = settings;
  const context = await browser.newContext({ viewport: { width, height: 900 }, locale: language });
  await context.addInitScript(
    (kept) => localStorage.setItem("toeline-preferences", kept),
    JSON.stringify({ language, theme }),
  );
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on("pageerror", (thrown) => troubles.push(String(thrown)));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  return { page, context, troubles };
}

/** A picture of the page for people to look at, in out/screens. */
export async function takePicture(page: Page, name: string): Promise<void> {
  mkdirSync(join(root, "out/screens"), { recursive: true });
  await page.screenshot({ path: join(root, "out/screens", `${name}.png`), fullPage: true });
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds on the page (WCAG 2.2 A and AA and good practice), one line a violation. */
export async function accessViolations(page: Page): Promise<readonly string[]> {
  // as a part of the test, not of the page: the content policy holds for the page
  const found = await page.evaluate(async (source) => {
    const load = new Function(`${source}; return window.axe;`) as () => {
      run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }>;
    };
    return (await load().run()).violations;
  }, axe);
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
  );
}
