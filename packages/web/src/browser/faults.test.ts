import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const { look } = withApp();
const PLACE = "/b/first-light/service/faults";

/** Opens fault finding of the small book. */
async function open(page: Page): Promise<void> {
  await page.goto(PLACE);
  await page.locator(".ff").waitFor();
}

/** Waits until what is shown is the answer to all that was said. */
const settled = (page: Page): Promise<void> => page.locator(".ff-right[data-settled=true]").waitFor();

/** Says by letter that a lamp is dark, and that all else works. */
async function sayDark(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Letter", exact: true }).click();
  await page.locator(".ff-letter textarea").fill("lamp 1 dead");
  await page.getByRole("button", { name: "Take it over" }).click();
  await page.locator(".ff-history li").first().waitFor();
  await page.locator(".ff-left").getByRole("button", { name: "All others work" }).click();
  await page.getByText("12 of 12 said").waitFor();
}

describe("fault finding in the app", () => {
  it(
    "leads from a dark lamp to what is to be mended, and loses nothing when the page is loaded again",
    async () => {
      const { page, context, complaints } = await look();
      await open(page);
      await sayDark(page);
      await settled(page);
      await page.locator(".ff-next").waitFor();
      expect(await page.locator(".ff-cause").first().textContent()).toContain("hangs on it");
      expect(await accessFaults(page)).toEqual([]);
      for (let n = 0; n < 15 && (await page.locator(".ff-found").count()) === 0; n++) {
        const said = await page.locator(".ff-history li").count();
        await page.locator(".ff-next .ff-main").nth(1).click();
        await page.locator(".ff-history li").nth(said).waitFor();
        await settled(page);
      }
      await page.locator(".ff-found").waitFor();
      const found = await page.locator(".ff-found .ff-card h3").first().textContent();
      await page.reload();
      await page.locator(".ff-found").waitFor();
      expect(await page.locator(".ff-found .ff-card h3").first().textContent()).toBe(found);
      await page.locator(".ff-export summary").click();
      expect(await page.locator(".ff-export textarea").inputValue()).toContain(
        "lamp 1 Lamp A: does not work",
      );
      await page.getByRole("button", { name: "Mended: it works now" }).first().click();
      await page.getByText("All that did not work fits what was mended.").waitFor();
      expect(complaints).toEqual([]);
      await context.close();
    },
    PATIENCE_MS,
  );

  it(
    "says which tick does not fit, and takes it back",
    async () => {
      const { page, context } = await look();
      await open(page);
      await page.getByRole("button", { name: "Letter", exact: true }).click();
      await page.locator(".ff-letter textarea").fill("switches 1-2 dead; lamps 1-3 dead; lamp 4 works");
      await page.getByRole("button", { name: "Take it over" }).click();
      await page.locator(".ff-causes .ff-cause").first().waitFor();
      const lines = await page.locator(".ff-history li").count();
      await page.getByRole("button", { name: /^Forget: lamp 1 / }).click();
      await page
        .locator(".ff-history li")
        .nth(lines - 1)
        .waitFor({ state: "detached" });
      expect(await page.locator(".ff-history").textContent()).not.toContain("lamp 1 Lamp A");
      await context.close();
    },
    PATIENCE_MS,
  );

  for (const screen of ["phone", "tablet"] as const)
    it(
      `is usable on a ${screen} in Chinese and in the dark`,
      async () => {
        const { page, context, complaints } = await look({ screen, language: "zh", scheme: "dark" });
        await open(page);
        await page.getByRole("button", { name: "位置图", exact: true }).click();
        await page.locator(".ff-map .ff-panel").waitFor();
        await page.getByRole("button", { name: "来信", exact: true }).click();
        await page.locator(".ff-letter textarea").fill("灯 1 不亮");
        await page.getByRole("button", { name: "采用" }).click();
        await page.locator(".ff-next").waitFor();
        expect(await sidewaysPx(page)).toBe(0);
        expect(await accessFaults(page)).toEqual([]);
        expect(complaints).toEqual([]);
        await context.close();
      },
      PATIENCE_MS,
    );
});
