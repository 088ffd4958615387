import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

describe("history", { timeout: 2 * PATIENCE_MS }, () => {
  it("is in Chinese for who reads Chinese, notes of the server and refusals included", async () => {
    const { page, complaints } = await app.look({ language: "zh" });
    await openBook(page, "/b/first-light/history");
    await page.locator(".change .what").getByText("示例", { exact: true }).waitFor();
    // The first set of a book made it; nothing before it can be taken back.
    await page.getByRole("button", { name: "撤销我的上一次更改" }).click();
    await page.getByText("没有可以撤销的您的更改。").first().waitFor();
    expect(complaints).toEqual([]);
  });

  it("follows the shop as it changes, and undo goes back in the order in which things were done", async () => {
    const other = await someoneElse(app.address());
    const says = (
      book: string,
      table: string,
      id: string,
      column: string,
      text: string | undefined,
    ): Promise<void> =>
      expect
        .poll(
          async () =>
            Object.values((await other.rows(book)).tables[table] ?? {}).find((row) => row.id === id)?.[
              column
            ],
          { timeout: PATIENCE_MS },
        )
        .toBe(text);
    const { page } = await app.look();
    await openBook(page, "/b/first-light/history?of=shop");
    await page.locator(".change").first().waitFor();
    await other.put("first-light", "devices", "sw.top", "x_mm", "207");
    await other.put("shop", "shop_settings", "hand_room_mm", "value", "64");
    await page.locator(".change", { hasText: "Put 64" }).waitFor();
    const undo = page.getByRole("banner").getByRole("button", { name: "Undo" });
    await undo.click();
    await page.getByRole("status").getByText("Put 64").waitFor();
    await says("shop", "shop_settings", "hand_room_mm", "value", undefined);
    await undo.click();
    await page.getByRole("status").getByText("Put 207").waitFor();
    await says("first-light", "devices", "sw.top", "x_mm", "200");
    await page.getByRole("banner").getByRole("button", { name: "Redo" }).click();
    await says("first-light", "devices", "sw.top", "x_mm", "207");
  });
});
