import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { keptFor, lead, scan, wholeStream } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";

const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).tap();

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
}

async function standIn(page: Page, site: string): Promise<void> {
  await page.addInitScript(
    `localStorage.setItem("pinwright.floor.place", ${JSON.stringify(JSON.stringify({ book: BOOK, station: "", site }))})`,
  );
}

describe("workshops", { timeout: PATIENCE_MS }, () => {
  it("send to each other and count in what arrives, with what is missing and what is too much", async () => {
    const office = await lead(app.address());
    const [one = "", two = "", other = ""] = await office.units({
      ...{ book: BOOK, what: "board", type: "io", count: 3 },
    });
    const from = await app.look({ screen: "tablet" });
    await standIn(from.page, "joinery");
    await from.page.goto("/floor");
    await from.page.getByRole("link", { name: "Send" }).tap();
    await from.page.getByRole("button", { name: /all 3/u }).waitFor();
    await scan(from.page, one);
    await scan(from.page, two);
    await scan(from.page, two);
    await from.page.getByText(`${two} is loaded already.`).waitFor();
    await checked(from.page);
    await tap(from.page, "Send 2 units to Works");
    await from.page.getByRole("heading", { name: /^Transport tr-/u }).waitFor();
    await from.page.getByText("All sent").waitFor();
    const list = await from.page.getByRole("link", { name: "Print the list" }).getAttribute("href");
    const sheet = await fetch(new URL(list ?? "", app.address()));
    expect(sheet.headers.get("content-type")).toContain("pdf");
    await from.context.close();

    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standIn(page, "works");
    await page.goto("/floor/arrive");
    await page.getByText("0 of 2").first().waitFor();
    await scan(page, one);
    await page.getByText("1 of 2").first().waitFor();
    await scan(page, other);
    await page.getByText(`${other} was not announced here.`).waitFor();
    await page.getByRole("heading", { name: "1 missing" }).waitFor();
    await page.getByRole("heading", { name: "1 too many" }).waitFor();
    await checked(page);
    await page.reload();
    await page.getByText("1 of 2").first().waitFor();
    await scan(page, two);
    await page.getByText("2 of 2").first().waitFor();
    await page.getByText("All sent").waitFor();
    const arrived = (await office.facts()).flatMap(({ fact: { body } }) =>
      body.kind === "arrived" ? [`${body.unit} ${body.site}`] : [],
    );
    expect(arrived).toEqual([`${one} works`, `${other} works`, `${two} works`]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("go on for a day without the network: five hundred records go out in their order, each once", async () => {
    const office = await lead(app.address());
    const units = await office.units({ book: BOOK, what: "board", type: "io", count: 50 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standIn(page, "works");
    await page.goto(`/floor/u/${units.join("+")}`);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    await keptFor(page, [`/api/books/${BOOK}/rows`, "/api/books/shop/rows", `/api/units/${units.at(-1)}`]);
    await context.setOffline(true);
    await page.getByText(/^No network since \d\d:\d\d$/u).waitFor();
    await tap(page, "The kit is complete");
    await page.getByText("50 to send").waitFor();
    for (let written = 100; written <= 500; written += 50) {
      await page.goto(`/floor/u/${units.join("+")}/note`);
      await page.getByLabel("What is to be known of this unit?").fill(`note ${written}`);
      await tap(page, "Keep the note");
      await page.getByText(`${written} to send`).waitFor();
    }
    await page.goto("/floor/records");
    await page.getByText("500 records wait here", { exact: false }).waitFor();
    await checked(page);
    await context.setOffline(false);
    await page.getByText("All sent").waitFor();
    const facts = (await office.facts()).filter(
      ({ fact: { body } }) =>
        body.kind === "step-done" || (body.kind === "noted" && body.says.startsWith("note ")),
    );
    expect(facts).toHaveLength(500);
    expect(wholeStream(facts).faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
