import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { faultFileOf, faultPageOf, Line } from "@pinwright/engine";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBrowser, PATIENCE_MS, SCREENS } from "./testing/browser.ts";
import { builtApp, ROOT } from "./testing/built-app.ts";

let folder = "";
let browser: Browser;
/** Address of the page in a file, in English and in Chinese. */
const addresses = { en: "", zh: "" };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pinwright-faults-"));
  const empty = await readFile(join(await builtApp(), "service-page.html"), "utf8");
  const { book, shop } = await readBook(join(ROOT, "examples", "first-light"));
  const file = faultFileOf(new Line().run(book, shop ?? emptyShop(), undefined), { revision: "B" });
  for (const language of ["en", "zh"] as const) {
    const path = join(folder, `${language}.html`);
    await writeFile(path, faultPageOf(empty, file, language));
    addresses[language] = pathToFileURL(path).href;
  }
  browser = await openBrowser();
}, PATIENCE_MS);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
}, PATIENCE_MS);

interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: readonly string[];
  /** Everything that the page asked for beside itself. */
  readonly asked: readonly string[];
}

/** Opens the page from its file, on a phone without a network. */
async function openPage(language: "en" | "zh", scheme: "light" | "dark"): Promise<Opened> {
  const { width, height } = SCREENS.phone;
  const context = await browser.newContext({
    viewport: { width, height },
    hasTouch: true,
    colorScheme: scheme,
  });
  await context.setOffline(true);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS / 2);
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("request", (request) => asked.push(request.url().slice(0, 5)));
  await page.goto(addresses[language]);
  await page.locator(".ff").waitFor();
  return { page, context, complaints, asked };
}

/** Waits until what is shown is the answer to all that was said. */
const settled = (page: Page): Promise<void> => page.locator(".ff-right[data-settled=true]").waitFor();

async function sayDark(page: Page, letter: string, text: string, take: string): Promise<void> {
  await page.getByRole("button", { name: letter, exact: true }).click();
  await page.locator(".ff-letter textarea").fill(text);
  await page.getByRole("button", { name: take }).click();
  await page.locator(".ff-history li").nth(3).waitFor();
}

describe("the page that is shipped with a machine", () => {
  it(
    "leads from four lamps that do not work to their cause, over a measurement, to the end, without a network",
    async () => {
      const { page, context, complaints, asked } = await openPage("en", "light");
      await sayDark(page, "Letter", "lamps 1-4 dead", "Take it over");
      await page.locator(".ff-left").getByRole("button", { name: "All others work" }).click();
      await page.getByText("12 of 12 said").waitFor();
      await settled(page);
      await page.locator(".ff-next").waitFor();
      expect(await page.locator(".ff-cause").first().textContent()).toContain(
        "All 4 that do not work hang on it.",
      );
      const kinds = new Set<string>();
      for (let n = 0; n < 20 && (await page.locator(".ff-found").count()) === 0; n++) {
        kinds.add((await page.locator(".ff-next .ff-card h3").textContent()) ?? "");
        const said = await page.locator(".ff-history li").count();
        // Looks tell nothing; what is measured reads good but for the first.
        const isFirst = [...kinds].filter((kind) => kind.startsWith("Measure")).length === 1;
        const isMeasured = (await page.locator(".ff-reads").count()) > 0;
        await page
          .locator(".ff-next .ff-main")
          .nth(isMeasured && !isFirst ? 0 : 1)
          .click();
        await page.locator(".ff-history li").nth(said).waitFor();
        await settled(page);
      }
      await page.locator(".ff-found").waitFor();
      expect([...kinds].some((kind) => kind.startsWith("Measure"))).toBe(true);
      expect([...kinds][0]).not.toContain("Measure");
      await page.reload();
      await page.locator(".ff-found").waitFor();
      await page.getByRole("button", { name: "Mended: it works now" }).first().click();
      await page.getByRole("heading", { name: "Mended." }).waitFor();
      expect(complaints).toEqual([]);
      expect(new Set(asked)).toEqual(new Set(["file:", "blob:"]));
      await context.close();
    },
    PATIENCE_MS,
  );

  it(
    "carries its cautions in full, in both languages, and can be read by everyone",
    async () => {
      for (const [language, scheme] of [
        ["en", "light"],
        ["zh", "dark"],
      ] as const) {
        const { page, context, complaints } = await openPage(language, scheme);
        await page.locator(".ff-all-cautions summary").click();
        const cautions = await page.locator(".ff-all-cautions").textContent();
        expect(cautions).toContain(language === "en" ? "licensed electrician" : "持证电工");
        expect(cautions).toContain(language === "en" ? "pull the mains plug" : "拔下电源插头");
        if (language === "zh") await sayDark(page, "来信", "灯 1-4 不亮", "采用");
        else await sayDark(page, "Letter", "lamps 1-4 dead", "Take it over");
        await page.locator(".ff-next").waitFor();
        expect(await sidewaysPx(page)).toBe(0);
        expect(await accessFaults(page)).toEqual([]);
        expect(complaints).toEqual([]);
        await context.close();
      }
    },
    PATIENCE_MS,
  );

  it(
    "changes its language at once and keeps what was said",
    async () => {
      const { page, context } = await openPage("en", "light");
      await sayDark(page, "Letter", "lamps 1-4 dead", "Take it over");
      await page.getByRole("button", { name: "中文" }).click();
      await page.getByRole("heading", { name: "什么坏了？" }).waitFor();
      expect(await page.locator(".ff-history").textContent()).toContain("不工作");
      expect(await page.locator("html").getAttribute("lang")).toBe("zh-Hans");
      await context.close();
    },
    PATIENCE_MS,
  );
});
