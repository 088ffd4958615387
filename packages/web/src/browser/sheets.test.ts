import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

describe("sheets", { timeout: PATIENCE_MS }, () => {
  it("of the whole machine are chosen by themselves, made, and stand under its heading", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/first-light/sheets");
    const group = (name: RegExp) => page.getByRole("group", { name });
    await group(/^Harnesses/u)
      .getByRole("button", { name: "None" })
      .click();
    await page.getByText("4 sheets of the machine", { exact: true }).waitFor();
    await group(/^Machine/u)
      .getByRole("checkbox", { name: "Wiring chart by circuit" })
      .uncheck();
    await page.getByText("3 sheets of the machine", { exact: true }).waitFor();
    await page.getByRole("button", { name: "Make the sheets" }).click();
    await page.getByText("Machine: 3 files").waitFor();
    const schedule = page.getByRole("link", { name: /machine\.supply-schedule\.en\.pdf/u });
    const [download] = await Promise.all([page.waitForEvent("download"), schedule.click()]);
    expect((await readFile(await download.path())).subarray(0, 5).toString()).toBe("%PDF-");
    await group(/^Machine/u)
      .getByRole("button", { name: "None" })
      .click();
    await page.getByText(/^Choose at least one sheet/u).waitFor();
    expect(await page.getByRole("button", { name: "Make the sheets" }).isDisabled()).toBe(true);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
