import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { asking, lead, scan, standAt } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";
const PASSWORD = "a long enough word";

const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).tap();

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
}

describe("lots and leads", { timeout: PATIENCE_MS }, () => {
  it("records the lots of a kit for the whole batch, offers them to the next, and those of reels", async () => {
    const office = await lead(app.address());
    const boards = await office.units({ book: BOOK, what: "board", type: "io", count: 3 });
    const [harness = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.lamps", count: 1 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${boards.slice(0, 2).join("+")}`);
    const chips = page.locator(".floor-lot-chip");
    await chips.first().tap();
    await scan(page, "L-4711");
    await page.getByText("L-4711").waitFor();
    await page.locator('.floor-kit button[aria-pressed="true"]').waitFor();
    await checked(page);
    await tap(page, "The kit is complete");
    await page.getByRole("heading", { name: /^Stuff stage 1/u }).waitFor();
    await page.goto(`/floor/u/${boards[2]}`);
    await chips.first().tap();
    await checked(page);
    await tap(page, "Same as last time: L-4711");
    await tap(page, "The kit is complete");
    await page.getByRole("heading", { name: /^Stuff stage 1/u }).waitFor();

    // A reel of a harness; its lot is typed.
    await page.goto(`/floor/u/${harness}`);
    await page.getByRole("heading", { name: /^Cut the wires/u }).waitFor();
    await checked(page);
    await chips.first().tap();
    await page.getByLabel("Lot, as on the label").fill("R 7");
    await tap(page, "Use this lot");
    await page.getByText("lot R 7").waitFor();
    const end = page.getByRole("button", { name: "Done, next" });
    const more = page.getByRole("button", { name: "All of it cut, next reel" });
    while (!(await end.isVisible())) await more.tap();
    await end.tap();
    await page.getByRole("heading", { name: /^Lay up on the pinboard/u }).waitFor();
    await checked(page);
    await page.getByText("All sent").waitFor();
    const lots = (await office.facts()).flatMap(({ fact: { body } }) =>
      body.kind === "lot-used" ? [`${body.unit} ${body.lot}`] : [],
    );
    expect(lots).toEqual([...boards.map((unit) => `${unit} L-4711`), `${harness} R 7`]);
    // A recall of the lot finds all three.
    const ask = await asking(app.address());
    const found = JSON.stringify(await ask("/api/trace?lot=L-4711"));
    for (const unit of boards) expect(found).toContain(unit);
    expect(found).not.toContain(harness);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("lets a lead give a concession and pass over a step at a builder's tablet, and nobody a firm test", async () => {
    const office = await lead(app.address());
    const [machine = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
    const [board = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    const { page: desk, context: room } = await app.look();
    await desk.goto("/set-up");
    await desk.getByLabel("Your name").fill("Mara");
    await desk.getByLabel("Password (at least 10 characters)").fill(PASSWORD);
    await desk.getByLabel("The password again").fill(PASSWORD);
    await desk.getByRole("button", { name: "Make my account" }).click();
    await desk.waitForURL("**/people");
    const form = desk.locator("section", { hasText: "New account" });
    await form.getByLabel("Name").fill("Ben");
    await form.getByLabel("Role").selectOption("builder");
    await form.getByLabel("Floor code (4 to 8 digits)").fill("4711");
    await form.getByRole("button", { name: "Make the account" }).click();
    await desk.getByText("Ben can sign in now.").waitFor();
    await room.close();

    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${board}`);
    await page.getByLabel("Your name").fill("Ben");
    for (const digit of "4711") await tap(page, digit);
    await tap(page, "Sign in");
    await page.locator(".floor-kit li").first().waitFor();
    await page
      .getByRole("button", { name: /^Another part/u })
      .nth(1)
      .tap();
    await page.getByText("The book allows nothing instead.").waitFor();
    await page.getByLabel("Find a part").fill("no such part");
    await tap(page, "no such part");
    await tap(page, "The reel ran out");
    await page.getByLabel("Name of the lead").fill("Ben");
    await page.getByLabel("Password", { exact: true }).fill("4711");
    await tap(page, "Record it");
    await page.getByText("Only somebody who leads the work may do this.").waitFor();
    await checked(page);
    await page.getByLabel("Name of the lead").fill("Mara");
    await page.getByLabel("Password", { exact: true }).fill(PASSWORD);
    await tap(page, "Record it");
    await page.getByText("no such part instead").waitFor();

    await page.goto(`/floor/u/${machine}/gate`);
    await tap(page, /^Test \(/u);
    const firm = page.locator(".floor-places li", { hasText: "Nobody can pass over this." });
    await firm.first().waitFor();
    expect(await firm.first().getByRole("button").count()).toBe(0);
    await checked(page);
    await tap(page, /^Step \(/u);
    await page.getByRole("button", { name: "Pass over" }).first().tap();
    await tap(page, "Does not apply to this unit");
    await page.getByLabel("Name of the lead").fill("Mara");
    await page.getByLabel("Password", { exact: true }).fill(PASSWORD);
    await tap(page, "Record it");
    await page.getByText("Passed over", { exact: true }).waitFor();
    // Ben still works here.
    await page.goto("/floor/place");
    await page.getByText("Ben works here").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
