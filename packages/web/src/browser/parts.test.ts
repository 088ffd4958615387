import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const PARTS = "/b/first-light/parts";

/** The first amount in a text, in its own currency. */
const amountIn = (text: string | null): number =>
  Number(/[\d\u202f]+(?:\.\d+)?/u.exec(text ?? "")?.[0].replaceAll("\u202f", "") ?? Number.NaN);

const fieldOf = (page: Page, label: string) => page.getByRole("textbox", { name: label, exact: true });

describe("parts", { timeout: PATIENCE_MS }, () => {
  it("are a bill from the machine down, cost less in quantity, and say where they are used", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/tidewatch/parts/bill");
    const tree = page.getByRole("table", { name: "Bill" });
    await tree.getByRole("row", { name: /panel/u }).first().waitFor();
    const open = tree.locator('[aria-expanded="true"]');
    expect(await open.count()).toBe(1);
    await page.getByRole("button", { name: "Open all levels" }).click();
    await expect.poll(() => open.count()).toBeGreaterThan(10);

    const cost = page.locator(".bill-cost b");
    const dear = amountIn(await cost.textContent());
    await fieldOf(page, "Machines made together").fill("1000");
    await expect
      .poll(async () => amountIn(await cost.textContent()), { timeout: PATIENCE_MS })
      .toBeLessThan(dear);
    expect(new URL(page.url()).searchParams.get("machines")).toBe("1000");

    await fieldOf(page, "Filter").fill("contact.s250");
    await tree
      .getByRole("button", { name: /^Signal housing/u })
      .first()
      .click();
    const about = page.getByRole("region", { name: "Signal housing, 2.5 mm, contact" });
    await about.getByRole("heading", { name: "Where it is used" }).waitFor();
    await about.getByText("counts here").waitFor();
    expect(await about.locator(".used-in li").count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("are walked level by level, and listed once each", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${PARTS}/bill?view=level`);
    const into = page.getByRole("button", { name: /^Contents of/u }).first();
    const name = (await into.getAttribute("aria-label")) ?? "";
    await into.click();
    await page.getByRole("heading", { name, exact: true }).waitFor();
    expect(new URL(page.url()).searchParams.get("at")).toMatch(/^(?:panel|board|harness|mechanism):/u);
    await page.getByText("Each part once").click();
    await page.getByRole("table", { name: "Bill of the machine" }).getByText("p.coil-short").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("move into stock and out of it, never below nothing without a reason", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${PARTS}/stock?id=p.coil-short`);
    const form = page.getByRole("form", { name: "New movement" });
    const quantity = form.getByRole("textbox", { name: "How many" });
    await quantity.fill("4");
    await form.getByText("On the shelf: 0 → 4").waitFor();
    await form.getByRole("button", { name: "Write it down" }).click();
    await form.getByText("Received 4 × Coil, 900 turns.").waitFor();

    await form.getByRole("combobox", { name: "What happened" }).selectOption({ value: "used" });
    await quantity.fill("6");
    await form.getByRole("button", { name: "Write it down" }).click();
    await form.getByText("That would leave −2: less than nothing.", { exact: false }).waitFor();
    const history = page.getByRole("table", { name: "Movements of Coil, 900 turns" });
    expect(await history.locator("tbody tr").count()).toBe(1);

    await form.getByRole("textbox", { name: "Why" }).fill("two were never booked in");
    await form.getByRole("button", { name: "Write it down" }).click();
    await history.getByText("less than nothing").waitFor();
    await history.getByText("two were never booked in").waitFor();

    await page.getByRole("button", { name: "Undo" }).click();
    await history.getByText("two were never booked in").waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("ways of getting a part", { timeout: PATIENCE_MS }, () => {
  it("stand against each other over the quantity; one is chosen, and undo leaves it to the cost again", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/tidewatch/parts/ways?id=br.rollover");
    await page.getByRole("img", { name: /^Cost of one Bracket of a rollover in each way/u }).waitFor();
    await page.getByText(/^from [\d\u202f]+: Stamped/u).waitFor();
    const table = page.getByRole("table", { name: "Make, have made or buy" });
    const stamped = table.getByRole("row", { name: /^Stamped/u });
    await stamped.getByRole("button", { name: /^Choose Stamped/u }).click();
    await stamped.getByText("decided").waitFor();
    await page.getByRole("button", { name: "Let the cost decide" }).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await stamped.getByText("decided").waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
    await context.close();
  });
});
