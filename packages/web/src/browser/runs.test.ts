import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { type Look, openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const RUNS = "/b/tidewatch/runs";
/** Plans begin on this day, whenever the test runs. */
const TODAY = new Date("2026-11-30T09:00:00Z");

async function lookToday(): Promise<Look> {
  const look = await app.look();
  await look.page.clock.setFixedTime(TODAY);
  return look;
}

/** Waits until a plan is there. */
const planned = (page: Page) => page.locator(".plan-progress progress").waitFor({ state: "detached" });

async function makeRun(page: Page, name: string): Promise<void> {
  await openBook(page, RUNS);
  const open = page.getByRole("button", { name: "New run" });
  if ((await open.count()) > 0) await open.click();
  const form = page.getByRole("form", { name: "New run" });
  await form.getByRole("button", { name: "Make the run" }).click();
  await form.getByText("Give the run a name.").waitFor();
  await form.getByRole("textbox", { name: "Name", exact: true }).fill(name);
  await form.getByLabel("The last one leaves on").fill("2027-06-25");
  await form.getByRole("button", { name: "Make the run" }).click();
  await page.getByRole("heading", { name: new RegExp(`^${name}`, "u") }).waitFor();
  await page.getByText("What one machine costs").first().waitFor();
  await planned(page);
}

const tab = (page: Page, name: string) =>
  page.getByRole("navigation", { name: "Run" }).getByRole("link", { name }).click();

describe("a run", { timeout: 2 * PATIENCE_MS }, () => {
  it("is made, tells what it needs and costs, and orders are placed and received", async () => {
    const { page, context, complaints } = await lookToday();
    await makeRun(page, "First batch");
    expect(new URL(page.url()).pathname).toBe(`${RUNS}/first-batch`);
    await page.getByRole("table", { name: "What contributes most" }).getByRole("row").first().waitFor();

    await tab(page, "Needs");
    const needs = page.getByRole("table", { name: "Needs" });
    await needs.getByRole("link", { name: /^Art of the backglass/u }).waitFor();

    await tab(page, "Orders");
    await page.getByRole("button", { name: "Make PDF, XLSX and CSV" }).click();
    const file = page.getByRole("link", { name: /XLSX$/u }).first();
    await file.waitFor();
    const [download] = await Promise.all([page.waitForEvent("download"), file.click()]);
    expect(download.suggestedFilename()).toMatch(/^runs\.purchase-order.*\.xlsx$/u);
    const order = page.locator("details.order", { hasText: "Printing house" }).first();
    await order.locator("summary").click();
    await order.getByRole("button", { name: /^Place the order of/u }).click();
    const placed = page.locator("details.order", { hasText: /po\.[\w-]+\.20261130/u });
    await placed.waitFor();
    await planned(page);
    await placed.locator("summary").click();
    await placed.getByRole("button", { name: /^All received of order/u }).click();
    await placed.getByText("received", { exact: true }).first().waitFor();

    await page.goto("/b/tidewatch/parts/stock");
    await page.getByRole("table", { name: "Stock" }).locator("tbody tr").first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("is tried with other numbers and prices, and its prices are frozen", async () => {
    const { page, context, complaints } = await lookToday();
    await makeRun(page, "Second batch");
    await tab(page, "What if");
    await page.getByRole("textbox", { name: "Machines" }).fill("100");
    await page.getByRole("columnheader", { name: "Tried" }).waitFor();
    await page.getByRole("row", { name: /^Machines 25 100 \+75/u }).waitFor();
    await page.getByRole("button", { name: "Back to the plan" }).click();
    await page.getByText("Change something above", { exact: false }).waitFor();

    await tab(page, "Cost against quantity");
    await page.getByRole("img", { name: /^Cost of one machine in runs of 10 to 1000/u }).waitFor();
    await tab(page, "Cash");
    await page.getByRole("img", { name: /^Money by week/u }).waitFor();
    await tab(page, "Shortages");
    await page.getByRole("table", { name: "Shortages" }).waitFor();

    await tab(page, "Overview");
    await page.getByRole("button", { name: "Freeze today's prices" }).click();
    await page.getByText(/^Its prices are frozen: \d+ prices\.$/u).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Freeze today's prices" }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("has its stages over the calendar, and stands beside another", async () => {
    const { page, context, complaints } = await lookToday();
    await openBook(page, "/b/tidewatch/runs/run.spring/schedule");
    await page.getByRole("img", { name: /^Stages from 2027-/u }).waitFor();
    await page
      .getByRole("table", { name: "Schedule" })
      .getByRole("row", { name: /^Packed/u })
      .waitFor();
    await openBook(page, "/b/tidewatch/runs?a=run.spring&b=run.autumn");
    await page.getByRole("row", { name: /^Machines 25 100 \+75/u }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
