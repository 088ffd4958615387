import { describe, expect, it } from "vitest";
import { PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

describe("the first start", { timeout: PATIENCE_MS }, () => {
  it("says in three lines what this is, and has Tidewatch ready to open", async () => {
    const { page, complaints } = await app.look();
    await page.goto("/");
    await page.getByRole("link", { name: "Tidewatch" }).waitFor();
    expect(await page.locator(".start-lines p").count()).toBe(3);
    await page.getByRole("link", { name: "Tidewatch" }).click();
    await page.locator(".bar", { hasText: "Tidewatch" }).getByText("Saved").waitFor();
    expect(new URL(page.url()).pathname).toMatch(/^\/b\/tidewatch\/layout/u);
    expect(complaints).toEqual([]);
  });

  it("makes a book from an example, puts it away and takes it out again", async () => {
    const { page, complaints } = await app.look();
    await page.goto("/");
    const form = page.locator("section", { hasText: "New book" });
    await form.getByLabel("Name", { exact: false }).first().fill("Storm Front");
    expect(await form.getByLabel("Short name").inputValue()).toBe("storm-front");
    await form.getByRole("button", { name: "Make it" }).click();
    await page.waitForURL("**/b/storm-front/**");
    await page.getByRole("heading", { name: "Storm Front", level: 1 }).waitFor();

    await page.goto("/");
    const row = page.locator(".book-list li", { hasText: "Storm Front" });
    await row.getByRole("button", { name: "Put away" }).click();
    await page.getByText("Put away (1)").click();
    await row.getByRole("button", { name: "Take out" }).click();
    await page.getByText("Put away (1)").waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
  });

  it("says in the reader's words why a book cannot be made", async () => {
    const { page } = await app.look({ language: "zh" });
    await page.goto("/");
    const form = page.locator("section", { hasText: "新设计册" });
    await form.getByLabel("名称").first().fill("潮");
    await form.getByLabel("短名").fill("tidewatch");
    await form.getByRole("button", { name: "创建" }).click();
    await form.getByText("已有相同短名的设计册。").waitFor();
    await form.getByLabel("短名").fill("Tide Watch");
    await form.getByText("请使用小写字母和数字").waitFor();
  });
});
