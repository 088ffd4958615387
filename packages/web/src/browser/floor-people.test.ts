import { describe, expect, it } from "vitest";
import { accessFaults } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { keptFor, lead, scan, standAt } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const PASSWORD = "a long enough word";
const BOOK = "first-light";

describe("people on the floor", { timeout: PATIENCE_MS }, () => {
  it("sign in by name and code, go on when their session ends, and lose nothing by it", async () => {
    const [unit = ""] = await (await lead(app.address())).units({
      ...{ book: BOOK, what: "board", type: "io", count: 1 },
    });
    const { page: office, context: desk } = await app.look();
    await office.goto("/set-up");
    await office.getByLabel("Your name").fill("Mara");
    await office.getByLabel("Password (at least 10 characters)").fill(PASSWORD);
    await office.getByLabel("The password again").fill(PASSWORD);
    await office.getByRole("button", { name: "Make my account" }).click();
    await office.waitForURL("**/people");
    const form = office.locator("section", { hasText: "New account" });
    for (const [name, code] of [
      ["Ben", "4711"],
      ["Ida", "2002"],
    ] as const) {
      await form.getByLabel("Name").fill(name);
      await form.getByLabel("Role").selectOption("builder");
      await form.getByLabel("Floor code (4 to 8 digits)").fill(code);
      await form.getByRole("button", { name: "Make the account" }).click();
      await office.getByText(`${name} can sign in now.`).waitFor();
    }

    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto("/floor");
    await page.getByRole("heading", { name: "Who works here?" }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    const code = async (digits: string): Promise<void> => {
      for (const digit of digits) await page.getByRole("button", { name: digit, exact: true }).tap();
      await page.getByRole("button", { name: "Sign in" }).tap();
    };
    await page.getByLabel("Your name").fill("Ben");
    await code("1234");
    await page.getByText("Name and code do not go together.").waitFor();
    await code("4711");
    await page.getByRole("heading", { name: /^Which unit\?/u }).waitFor();
    await scan(page, unit);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    await keptFor(page, [
      `/api/books/${BOOK}/rows`,
      "/api/books/shop/rows",
      "/api/status",
      `/api/units/${unit}`,
    ]);

    // Ben may no longer come in; the tablet learns of it when its network is back.
    await context.setOffline(true);
    await page.getByRole("button", { name: "The kit is complete" }).tap();
    await page.getByText("1 to send").waitFor();
    await office.getByRole("button", { name: "Change Ben" }).click();
    await office.getByRole("switch").click();
    await office.getByRole("button", { name: "Save" }).click();
    await office.getByText("May not sign in").first().waitFor();
    await context.setOffline(false);
    await page.getByText("1 record is kept on this device and will be sent.", { exact: false }).waitFor();

    // Whoever comes next taps a name, sends what was left, and is told what does not count.
    await page.getByRole("button", { name: "Somebody else" }).tap();
    await page.getByLabel("Your name").fill("Ida");
    await code("2002");
    await page.getByText("All sent").waitFor();
    await page.getByRole("link", { name: /All sent/u }).tap();
    await page.getByText("kept aside: its writer may not come in any more").waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole("link", { name: "Back" }).tap();
    await page.getByRole("heading", { name: /^Which unit\?/u }).waitFor();
    await scan(page, unit);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    await page.getByRole("button", { name: "The kit is complete" }).tap();
    await page.getByRole("heading", { name: /^Stuff stage 1/u }).waitFor();
    await page.getByText("All sent").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
    await desk.close();
  });
});
