import { describe, expect, it } from "vitest";
import { PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

describe("the guide", { timeout: 3 * PATIENCE_MS }, () => {
  it("leads through First Light, notices each step, and is resumed where it was left", async () => {
    const { page, complaints } = await app.look();
    await page.goto("/");
    await page.getByRole("button", { name: "Begin", exact: true }).click();
    const guide = page.getByRole("complementary", { name: "Ten minutes with First Light" });
    const step = (title: string) => guide.getByRole("heading", { name: title }).waitFor();
    const there = () => guide.getByRole("link", { name: "Take me there" }).click();
    await step("Move a switch");
    await there();
    const chosen = page.locator(".drawing .chosen").first();
    const box = await chosen.boundingBox();
    if (box === null) throw new Error("The switch is not on the drawing.");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 5; i++) await page.mouse.move(x + 6 * i, y);
    await page.mouse.up();

    await step("Read a finding");
    await guide.getByRole("button", { name: "Leave the guide" }).click();
    await guide.waitFor({ state: "detached" });
    await page.goto("/");
    await page.getByRole("button", { name: "Go on" }).click();
    await step("Read a finding");
    await there();
    await step("Open a pinboard");
    await there();
    await page
      .getByRole("main")
      .getByRole("link", { name: /Deck harness/u })
      .click();
    await step("Change a cell in a table");
    await there();
    await page.getByRole("gridcell", { name: "Lamp A", exact: true }).dblclick();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("First lamp");
    await page.keyboard.press("Enter");
    await step("Undo it");
    await page.getByRole("banner").getByRole("button", { name: "Undo" }).click();
    await step("Make a sheet");
    await there();
    await page.getByRole("checkbox", { name: /Deck harness/u }).check();
    await page.getByRole("checkbox", { name: "Cut list", exact: false }).first().check();
    await page.getByRole("button", { name: "Make the sheets" }).click();
    await step("That was the whole way");
    expect(complaints).toEqual([]);
  });
});
