import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

/** Everything here is waited for, never timed; this only ends a test that waits for what never comes. */
export const PATIENCE_MS = 180_000;

/** Sizes of screens that the app is used on. */
export const SCREENS = {
  desktop: { width: 1280, height: 800, touch: false },
  tablet: { width: 1024, height: 768, touch: true },
  "tablet upright": { width: 768, height: 1024, touch: true },
  phone: { width: 390, height: 844, touch: true },
} as const;
export type Screen = keyof typeof SCREENS;

export interface LookOptions {
  readonly language?: "en" | "zh";
  readonly scheme?: "light" | "dark";
  readonly screen?: Screen;
}

/** Debian's Chromium, from the path. */
function chromiumPath(): string {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    const path = join(folder, "chromium");
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Not in this folder.
    }
  }
  throw new Error("Chromium is not installed: apt install chromium");
}

/** @param args further arguments of the browser, such as a camera that plays a file */
export const openBrowser = (args: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath(), args: ["--no-sandbox", ...args] });

/** A page, with what its console and its scripts complained of. */
export interface Look {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: readonly string[];
}

/** Opens an empty page that speaks a language, in a colour scheme, on a screen. */
export async function look(
  browser: Browser,
  address: string,
  { language = "en", scheme = "light", screen = "desktop" }: LookOptions = {},
): Promise<Look> {
  const { width, height, touch } = SCREENS[screen];
  const context = await browser.newContext({
    baseURL: address,
    viewport: { width, height },
    hasTouch: touch,
    colorScheme: scheme,
    reducedMotion: "reduce",
    locale: language === "zh" ? "zh-CN" : "en-GB",
    timezoneId: "UTC",
    acceptDownloads: true,
  });
  const page = await context.newPage();
  // Less than a test has, so that the step that waits in vain is the one that is named.
  page.setDefaultTimeout(PATIENCE_MS / 2);
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    // A refused request is in the console too; tests that provoke one look at what the page says of it.
    const isRefusal = message.text().startsWith("Failed to load resource");
    if (message.type() === "error" && !isRefusal) complaints.push(message.text());
  });
  return { page, context, complaints };
}

/** Opens a place in a book and waits until the book is there and the section shows something. */
export async function openBook(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await page.locator(".bar", { hasText: /Saved|已保存/u }).waitFor();
  await page.locator("main h2, main svg, main table, main [role=grid]").first().waitFor();
}

const ALIKE = 3;
const LOOK_EVERY_MS = 200;

/** Waits until what is shown has been the same for a few looks. */
export async function still(page: Page): Promise<void> {
  let before = "";
  for (let alike = 0; alike < ALIKE; ) {
    await page.waitForTimeout(LOOK_EVERY_MS);
    const now = await page.locator("#app").innerHTML();
    alike = now === before ? alike + 1 : 0;
    before = now;
  }
}

/** Goes to a place as a link does: what is loaded stays loaded. */
export async function goTo(page: Page, path: string): Promise<void> {
  await page.evaluate(`history.pushState(null, "", ${JSON.stringify(path)})`);
  await still(page);
}
