import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { lead, scan, standAt } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";

const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).tap();

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
}

const fitting = (machine: string): string => `/floor/u/${machine}/k/${encodeURIComponent("fit st.boards")}`;

describe("fitting", { timeout: PATIENCE_MS }, () => {
  it("warns and never refuses, swaps with a reason, and tells it in the history", async () => {
    const office = await lead(app.address());
    const [first = "", second = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 2 });
    const [one = "", two = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 2 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(fitting(one));
    await page.getByText("0 of 3 fitted").waitFor();

    // Nobody tested it.
    await scan(page, first);
    await page.getByText("1 test is missing.").waitFor();
    await checked(page);
    await tap(page, "Fit it all the same");
    await page.getByText("1 of 3 fitted").waitFor();

    // The place of its kind is filled: the other comes out, and is faulty from now on.
    await scan(page, second);
    await page.getByRole("heading", { name: new RegExp(`^${first} comes out of`, "u") }).waitFor();
    await tap(page, "It is faulty");
    await checked(page);
    await tap(page, "Swap");
    // The question names the second board too: only when it is gone is the swap kept.
    await page
      .getByRole("heading", { name: new RegExp(`^${first} comes out of`, "u") })
      .waitFor({ state: "hidden" });
    await page.getByText(second).first().waitFor();
    await page.getByText("All sent").waitFor();

    await page.goto(fitting(two));
    await page.getByText("0 of 3 fitted").waitFor();
    await scan(page, first);
    await page.getByText("1 defect not mended: Something else").waitFor();
    await tap(page, "Do not fit it");
    // Two labels one right after the other: each is asked in its turn.
    await scan(page, second);
    await page.getByText(new RegExp(`It is fitted in ${one}`, "u")).waitFor();
    await checked(page);
    await tap(page, "Fit it all the same");
    await page.getByText("1 of 3 fitted").waitFor();
    await page.getByText("All sent").waitFor();

    await page.goto(`/floor/u/${one}/history`);
    await page.getByText("Swapped", { exact: true }).waitFor();
    await page.getByText(`${first} out, ${second} in`, { exact: false }).waitFor();
    await checked(page);
    const bodies = (await office.facts()).map(({ fact }) => fact.body);
    expect(bodies).toMatchObject([
      { kind: "fitted", unit: first, into: one },
      { kind: "removed", unit: first, from: one, why: "It is faulty" },
      { kind: "defect", unit: first },
      { kind: "fitted", unit: second, into: one },
      { kind: "removed", unit: second, from: one },
      { kind: "fitted", unit: second, into: two },
    ]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("offers to build two boards together whose labels are scanned one after the other", async () => {
    const office = await lead(app.address());
    const [one = "", two = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 2 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${one}`);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    await scan(page, two);
    await tap(page, `Build it together with ${one}`);
    await page.getByText("2 units together").waitFor();
    await checked(page);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("puts the minutes right before they are recorded, and names what is missing at hand-over", async () => {
    const office = await lead(app.address());
    const [board = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${board}/hand`);
    await page.getByText("No work at the bench of it is recorded", { exact: false }).waitFor();
    await page.getByText("1 thing is missing.", { exact: false }).waitFor();
    await page.goto(`/floor/u/${board}`);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    await tap(page, /^Time 0:0/u);
    for (let i = 0; i < 7; i++) await tap(page, "More");
    await tap(page, "Less");
    await tap(page, "Pause");
    await checked(page);
    await tap(page, "That is right");
    await tap(page, "The kit is complete");
    await page.getByRole("heading", { name: /^Stuff stage 1/u }).waitFor();
    await page.goto(`/floor/u/${board}/hand`);
    await page.getByRole("button", { name: "Stuff stage 1" }).waitFor();
    await checked(page);
    await page.getByText("All sent").waitFor();
    const done = (await office.facts()).findLast(({ fact }) => fact.body.kind === "step-done");
    expect(done?.fact.body).toMatchObject({ unit: board, step: "kit", minutes: 6 });
    expect(complaints).toEqual([]);
    await context.close();
  });
});
