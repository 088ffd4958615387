import { releaseJobSchema } from "@pinwright/contract";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { asking, lead, standAt } from "./testing/floor-hand.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";

/** Releases the book, and waits until that is done. */
async function release(name: string): Promise<void> {
  const ask = await asking(app.address());
  const body = { id: crypto.randomUUID(), name, note: "" };
  const { id } = releaseJobSchema.parse(await ask(`/api/books/${BOOK}/releases`, body));
  for (;;) {
    const { state, now } = releaseJobSchema.parse(await ask(`/api/release-jobs/${id}`));
    if (state === "done") return;
    if (state === "failed" || state === "cancelled") throw new Error(now);
    await new Promise((done) => setTimeout(done, 300));
  }
}

const machines = async (count: number): Promise<readonly string[]> =>
  (await lead(app.address())).units({ book: BOOK, what: "machine", type: BOOK, count });
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const STEP = "st.mechanisms";
const OLD = "Mount bumper and saucer";
const NEW = "Do it another way";

describe("a unit of a release", { timeout: 2 * PATIENCE_MS }, () => {
  it("is built by what its release keeps, named large; one begun at a change by the draft", async () => {
    const [drafted = ""] = await machines(1);
    await release("A");
    const [built = ""] = await machines(1);
    const other = await someoneElse(app.address());
    await other.put(BOOK, "steps", STEP, "label", NEW);

    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${built}`);
    await page.locator(".floor-revision").getByText("Revision A", { exact: true }).waitFor();
    await page.getByRole("heading", { name: OLD }).waitFor();
    expect(await page.getByText(NEW).count()).toBe(0);
    expect(await accessFaults(page)).toEqual([]);

    // The step's own sheet is the one that was composed for the release.
    await button(page, "Step sheet of revision A").click();
    await page.getByText(/^Page \d+ of \d+$/u).waitFor();
    await page.locator(".floor-picture svg").waitFor();
    expect(await page.locator(".floor-picture").innerHTML()).not.toContain(NEW);
    expect(await accessFaults(page)).toEqual([]);
    await button(page, "Sheets of revision A").click();
    expect(await page.locator(".floor-ticks button").count()).toBeGreaterThan(5);
    expect(await sidewaysPx(page)).toBe(0);

    await page.goto(`/floor/u/${drafted}`);
    await page.getByText(/^Draft, begun at change \d+$/u).waitFor();
    await page.getByRole("heading", { name: NEW }).waitFor();

    // Of two revisions at once nobody can say what is to be done.
    await page.goto(`/floor/u/${built}+${drafted}`);
    await page.getByText(/^These are of different revisions: /u).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("does not fall back on the draft while its release cannot be fetched", async () => {
    const [built = ""] = await machines(1);
    const { page, context } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    let isAway = true;
    await context.route(`**/api/books/${BOOK}/releases/A/line`, (route) =>
      isAway ? route.abort() : route.continue(),
    );
    await page.goto(`/floor/u/${built}`);
    await page.getByText(/^This is built to revision A\./u).waitFor();
    expect(await page.getByText(NEW).count()).toBe(0);
    isAway = false;
    await button(page, "Try again").click();
    await page.getByRole("heading", { name: OLD }).waitFor();
    await context.close();
  });
});
