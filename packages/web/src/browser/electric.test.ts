import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { goTo, openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const CURRENTS = "/b/first-light/wiring/currents";

describe("currents", { timeout: PATIENCE_MS }, () => {
  it("lists supplies with their budget, and a supply with its worst moment load by load", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${CURRENTS}/supplies`);
    const table = page.getByRole("table", { name: "Budget" });
    const row = table.getByRole("row", { name: /24 V/u });
    await row.getByText("4 A", { exact: true }).waitFor();
    await row.getByRole("button", { name: /^Show corners/u }).click();
    await page.getByText("contacts worn, supply low, hot").first().waitFor();

    await table.getByRole("link", { name: "24 V" }).click();
    await page.getByRole("heading", { name: "24 V", exact: true }).waitFor();
    await page.getByRole("heading", { name: "Worst moment: 1 load on" }).waitFor();
    await page.getByRole("img", { name: /^Budget of 24 V: Steady 0 A; All held 0 A; Rms/u }).waitFor();
    await page.getByRole("link", { name: "Ladder" }).first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("puts the wire or contact that is nearest to its limit first, with its computation", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${CURRENTS}/conductors`);
    const table = page.getByRole("table", { name: "Wires, contacts" });
    const shares = await table.locator("tbody .share b").allTextContents();
    const percents = shares.map((text) => Number.parseFloat(text));
    expect(percents.length).toBeGreaterThan(5);
    expect(percents).toEqual(percents.toSorted((a, b) => b - a));

    await page.getByRole("radiogroup", { name: "Kind" }).getByText("Wires", { exact: true }).click();
    await table
      .getByRole("button", { name: /^Show corners/u })
      .first()
      .click();
    const steps = page.getByRole("table", { name: "How it is computed" });
    await steps.getByText("One wire of its gauge by itself").waitFor();
    await steps.getByText(/^[\d.]+ A × [\d.]+ × [\d.]+$/u).waitFor();
    await page.getByRole("button", { name: "Lay the current out unit by unit" }).click();
    const units = page.getByRole("table", { name: /^Every unit with a part in it/u });
    await units.getByRole("row", { name: /^What is always on/u }).waitFor();
    // A wire leads to its own page, which says the same.
    await table
      .getByRole("link", { name: /^\d+-\d+$/u })
      .first()
      .click();
    await page.getByRole("heading", { name: /^Currents \d+ %/u }).waitFor();
    await page.getByRole("table", { name: "At its corners" }).first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("adds the volts of a load up from the supply and back", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${CURRENTS}/loads`);
    const loads = page.getByRole("table", { name: "Loads" });
    await loads
      .getByRole("button", { name: /^Show corners/u })
      .first()
      .click();
    await page.getByRole("button", { name: "Lay the volts out step by step" }).click();
    await page.getByRole("table", { name: /^From the supply and back/u }).waitFor();
    // Kirchhoff's voltage law: nothing is left over.
    await page.getByText("nought but for rounding: 0 V").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("draws a fuse's curve, with the same in tables", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${CURRENTS}/fuses`);
    await page.getByRole("link", { name: "Coil fuse" }).click();
    await page.getByRole("img", { name: "Time and current: Coil fuse" }).waitFor();
    const gates = page.getByRole("table", { name: /^Gates of its standard/u });
    // IEC 60127-2, time-lag of low breaking capacity: at 2.75 times its rating between 0.6 s and 10 s.
    await gates.getByRole("row", { name: "2.75 8.66 A 600 ms 10 s" }).waitFor();
    const pulses = page.getByRole("table", { name: "Pulses of its loads" });
    await pulses.getByRole("row", { name: /30 ms 200 \/ min/u }).waitFor();
    expect(await page.locator(".fuse-pulse circle").count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("leads from a supply over each point to its loads, by keyboard too", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/first-light/wiring?id=p24.fused");
    await page.getByRole("link", { name: "Ladder from the supply" }).click();
    const out = page.getByRole("list", { name: /From the supply to the loads$/u });
    await out.getByRole("link", { name: "psu:plus" }).waitFor();
    await out.getByText("fuse", { exact: false }).first().waitFor();
    const loads = out.getByText("across it");
    expect(await loads.count()).toBe(2);
    // What hangs on a point folds away.
    await out.getByRole("button", { name: "2 loads" }).first().focus();
    await page.keyboard.press("Enter");
    await loads.first().waitFor({ state: "detached" });
    await page.keyboard.press("Enter");
    await loads.first().waitFor();
    await page.getByRole("combobox", { name: "Net or supply" }).click();
    await page.getByRole("option", { name: /^s5/u }).click();
    await page.waitForURL("**/ladder?id=s5");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("shows how an electrical finding was computed", async () => {
    const other = await someoneElse(app.address());
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/first-light/findings?rule=supply-overloaded");
    await other.put("first-light", "supplies", "s24", "rated_a", "0.5");
    const group = page.locator('[data-rule="supply-overloaded"]');
    await group.getByRole("button", { name: "Show the computation" }).click();
    await group
      .getByRole("table", { name: "How it is computed: s24" })
      .getByText(/^0.5 A − /u)
      .waitFor();
    await group.getByRole("table", { name: "Figures of the finding" }).getByText("the rms current").waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await other.put("first-light", "supplies", "s24", "rated_a", "4");
    await group.waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("is accessible in every tab, and fits a phone", async () => {
    const { page, context } = await app.look({ language: "zh", scheme: "dark", screen: "phone" });
    await openBook(page, "/b/first-light/wiring/currents");
    const found: string[] = [];
    for (const tab of ["conductors", "loads", "coils", "fuses", "supplies?id=s24", "ladder?id=p24"]) {
      await goTo(page, `${CURRENTS}/${tab}`);
      found.push(...(await accessFaults(page)).map((fault) => `${tab}: ${fault}`));
      const px = await sidewaysPx(page);
      if (px > 0) found.push(`${tab}: ${px} px wider than the screen`);
    }
    expect(found).toEqual([]);
    await context.close();
  });

  it("says what belongs into a book without supplies", async () => {
    const { page, context } = await app.look();
    await page.goto("/");
    const form = page.locator("section", { hasText: "New book" });
    await form.getByLabel("Name", { exact: false }).first().fill("Calm Water");
    await form.getByLabel("Start from").selectOption("blank");
    await form.getByRole("button", { name: "Make it" }).click();
    await page.waitForURL("**/b/calm-water/**");
    await openBook(page, "/b/calm-water/wiring/currents");
    await page.getByText("No supply feeds anything yet.").waitFor();
    await page.getByRole("link", { name: "Open the table supplies" }).waitFor();
    await context.close();
  });
});
