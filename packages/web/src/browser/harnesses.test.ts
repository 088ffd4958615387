import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { goTo, openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const HARNESS = "/b/first-light/harnesses/hs.deck";

describe("a harness", { timeout: PATIENCE_MS }, () => {
  it("has a pinboard whose holders stay where a hand put them, until they are let go", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, HARNESS);
    await page.getByRole("button", { name: "Move pegs and holders" }).click();
    const holder = page.locator(".handle").first();
    await holder.waitFor();
    const before = await holder.boundingBox();
    if (before === null) throw new Error("The holder is nowhere.");
    const [x, y] = [before.x + before.width / 2, before.y + before.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y + 60, { steps: 5 });
    // While it is carried the board follows in lines.
    await page.locator(".board-branch").first().waitFor();
    await page.mouse.up();
    await page.locator(".handle[data-pinned]").waitFor();
    await page.getByText(/^Placed by hand by /u).waitFor();
    const after = await page.locator(".handle[data-pinned]").getAttribute("transform");

    await page.reload();
    await page.getByRole("button", { name: "Move pegs and holders" }).click();
    const pinned = page.locator(".handle[data-pinned]");
    await pinned.waitFor();
    expect(await pinned.getAttribute("transform")).toBe(after);

    // By keyboard, and back.
    await pinned.focus();
    await page.keyboard.press("Shift+ArrowLeft");
    await page.waitForFunction(
      `document.querySelector(".handle[data-pinned]").getAttribute("transform") !== ${JSON.stringify(after)}`,
    );
    await page.getByRole("button", { name: "Let the program place all again" }).click();
    await page.getByText("No peg or holder of this board was placed by hand.").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("prints its pinboard", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, HARNESS);
    await page.getByRole("button", { name: "Print …" }).click();
    const dialog = page.getByRole("dialog");
    await dialog
      .getByRole("group", { name: /^Kinds of sheet/u })
      .getByRole("button", { name: "None" })
      .click();
    await dialog.getByRole("checkbox", { name: "Pinboard" }).check();
    await dialog.getByRole("button", { name: "Make the sheets" }).click();
    const roll = dialog.getByRole("link", { name: /hs\.deck\.pinboard-roll\.en\.pdf/u });
    await roll.waitFor();
    const [download] = await Promise.all([page.waitForEvent("download"), roll.click()]);
    expect((await readFile(await download.path())).subarray(0, 5).toString()).toBe("%PDF-");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("lists its wires so that a spreadsheet takes them, and each leads to its way", async () => {
    const { page, context } = await app.look();
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await openBook(page, `${HARNESS}/cut`);
    await page.getByRole("button", { name: "Copy table" }).click();
    await page.getByRole("button", { name: "Copied" }).waitFor();
    const copied = String(await page.evaluate("navigator.clipboard.readText()")).split("\n");
    expect(copied[0]?.split("\t").slice(0, 2)).toEqual(["Wire", "Colour"]);
    expect(copied).toHaveLength(1 + (await page.locator(".data-table tbody tr:not(.data-group)").count()));
    await page.locator(".data-table .wire-no").first().click();
    await page.getByRole("heading", { name: /^Wire \d+-\d+$/u }).waitFor();
    await page.getByRole("link", { name: "Light it up on the layout" }).waitFor();
    await goTo(page, "/b/first-light/wiring?id=nothing.here");
    await page.getByText("The book has nothing called “nothing.here” that wires could end on.").waitFor();
    await context.close();
  });
});
