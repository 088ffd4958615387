import { keptProblemSchema, releaseJobSchema, SHOP_ID } from "@pinwright/contract";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { asking, lead, standAt } from "./testing/floor-hand.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";
const SERVICE = `/b/${BOOK}/service`;
const SAYS = "The left lane does not count every ball.";
const RUN = { book: BOOK, machines: "5", ship: "2027-06-30" };
const DECIDED = "Move the switch towards the lane.";

const section = (page: Page, name: string | RegExp) => page.getByRole("region", { name });
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** Problems as the server tells them. */
async function told() {
  const ask = await asking(app.address());
  return keptProblemSchema.array().parse(await ask(`/api/problems?book=${BOOK}`));
}

/** Adds to the problem that is open what was done about it. */
async function add(page: Page, did: string, says: string): Promise<void> {
  const form = page.getByRole("form", { name: "Add to it" });
  await form.getByLabel("I have").selectOption({ label: did });
  await form.getByLabel("What exactly").fill(says);
  await form.getByRole("button", { name: "Record" }).click();
  await section(page, "What was seen, tried, measured and decided").getByText(says).waitFor();
}

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

describe("problems", { timeout: 3 * PATIENCE_MS }, () => {
  it("come from a letter, are measured and decided, and end in a change and its revision", async () => {
    const { page, complaints } = await app.look();
    await openBook(page, `${SERVICE}/problems`);
    await page.getByText("Nobody has written down a problem yet.").waitFor();
    await page.getByRole("link", { name: "New problem" }).click();
    const form = page.getByRole("form", { name: "New problem" });
    await form.getByLabel("Serial number of the unit").fill("m-000031");
    await form.getByLabel("What the owner writes").fill(SAYS);
    const about = form.getByRole("group", { name: "What it is about" });
    await about.getByRole("combobox").fill("sw.left");
    await page.getByRole("option", { name: /^sw\.left/u }).click();
    await about.getByText("Left lane switch").waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await form.getByRole("button", { name: "Write it down" }).click();

    await page.getByRole("heading", { name: SAYS }).waitFor();
    await add(page, "Measured", "The lever stands 3 mm beside the slot.");
    await add(page, "Decided", DECIDED);
    expect(await accessFaults(page)).toEqual([]);
    expect((await told())[0]).toMatchObject({
      ...{ state: "decided", from: "letter", unit: "m-000031" },
      about: [{ kind: "item", id: "sw.left" }],
    });

    // What is open stands on the run's page, and on that of the thing, with what was decided.
    await openBook(page, `${SERVICE}/thing/sw.left`);
    await section(page, "Problems").getByText(`Decided: ${DECIDED}`).waitFor();
    await section(page, "Problems").getByRole("link", { name: SAYS }).click();
    await page.getByRole("heading", { name: SAYS }).waitFor();
    const other = await someoneElse(app.address());
    for (const [column, text] of Object.entries(RUN))
      await other.put(SHOP_ID, "runs", "run.one", column, text);
    await openBook(page, `/b/${BOOK}/runs/run.one`);
    await section(page, "Open problems of what this run builds").getByRole("link", { name: SAYS }).click();
    await page.getByRole("heading", { name: SAYS }).waitFor();

    await other.put(BOOK, "devices", "sw.left", "x_mm", "98");
    const ending = page.getByRole("form", { name: "How it ended" });
    await ending.getByLabel("Change", { exact: true }).focus();
    await ending
      .getByRole("option", { name: /the last change of the book – [2-9]/u })
      .waitFor({ state: "attached" });
    await ending.getByLabel("What this does, or why nothing is changed").fill("3 mm to the lane.");
    await ending.getByRole("button", { name: "End the problem" }).click();
    await page.getByText("No released revision has it yet.").first().waitFor();
    const [ended] = await told();
    expect(ended).toMatchObject({ state: "ended", revision: null, ended: { how: "changed" } });
    await release("A");
    expect((await told())[0]?.revision).toBe("A");

    await openBook(page, `${SERVICE}/problems`);
    await page.getByText("Revision A is the first that has it.").waitFor();
    await page.getByText("0 open, 0 decided and not done, 1 ended").waitFor();
    await openBook(page, `${SERVICE}/thing/sw.left`);
    await section(page, "What was changed").getByText("in revision A").waitFor();
    // Faults of a machine of that revision are found by its own file, whatever the draft has become since.
    await other.put(BOOK, "devices", "sw.left", "label", "Lane switch, renamed");
    await openBook(page, `${SERVICE}/faults?release=A`);
    await page.locator(".ff").getByText("Left lane switch").first().waitFor({ state: "attached" });
    await openBook(page, `${SERVICE}/faults`);
    await page.locator(".ff").getByText("Lane switch, renamed").first().waitFor({ state: "attached" });
    await openBook(page, `${SERVICE}/faults?unit=m-999`);
    await page.getByRole("alert").getByText(/m-999/u).waitFor();
    await other.put(BOOK, "devices", "sw.left", "label", "Left lane switch");
    await openBook(page, `${SERVICE}/thing/sw.left`);
    await section(page, "What was changed")
      .getByText(/95 → 98/u)
      .waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it("that the floor writes stand on the work that they concern, with one tap to say that they are here too", async () => {
    const office = await lead(app.address());
    const units = await office.units({ book: BOOK, what: "board", type: "io", count: 2 });
    const { page, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(`/floor/u/${units[0] ?? ""}`);
    await button(page, /^Something is wrong/u).click();
    await button(page, "Not this unit: the drawing or the part is wrong").click();
    await button(page, "The part does not fit").click();
    expect(await accessFaults(page)).toEqual([]);
    await button(page, "Record").click();
    const band = section(page, "Open problems");
    await band.getByText("The part does not fit").waitFor();
    // Whoever wrote it down has seen it here.
    await band.getByText("Noted that you have seen it").waitFor();
    expect(await accessFaults(page)).toEqual([]);

    await page.goto(`/floor/u/${units[1] ?? ""}`);
    await band.getByText("The part does not fit").waitFor();
    await band.getByRole("button", { name: "I have seen it too" }).click();
    await band.getByText("Noted that you have seen it").waitFor();
    await expect
      .poll(async () => (await told()).find(({ from }) => from === "build"))
      .toMatchObject({ about: [{ kind: "board", id: "io" }], unit: units[0], seen: 1 });
    expect(complaints).toEqual([]);

    const desk = await app.look();
    await openBook(desk.page, `/b/${BOOK}/bench/units/${units[1] ?? ""}`);
    await section(desk.page, "Problems").getByText("The part does not fit").waitFor();
    expect(desk.complaints).toEqual([]);
  });
});

describe("one thing", { timeout: 2 * PATIENCE_MS }, () => {
  it("is told of with all that fails with it: a switch, a wire, a fuse", async () => {
    const { page, complaints } = await app.look();
    await openBook(page, `${SERVICE}/thing`);
    await page.getByRole("combobox", { name: "Id, number or name" }).fill("4-5");
    await page.getByRole("button", { name: "Find" }).click();
    await page.getByRole("heading", { name: /^4-5/u }).waitFor();
    await page.getByRole("row", { name: /sw\.left:no.*Switch 1.*4-5.*WHBN/u }).waitFor();
    await page.getByRole("link", { name: "sw.left:no · normally open" }).click();
    await page.getByRole("heading", { name: /Pin/u }).waitFor();
    await page.getByRole("link", { name: "Left lane switch", exact: true }).first().click();
    await page.getByRole("img", { name: "Where Left lane switch is on its panel" }).waitFor();
    const shares = section(page, "Fails together with");
    await shares.getByRole("link", { name: "Top lane switch" }).first().waitFor();
    expect(await accessFaults(page)).toEqual([]);

    await openBook(page, `${SERVICE}/thing/fuse.coils`);
    await section(page, "Fails together with").getByText("Same fuse").waitFor();
    await page.getByText("3.15 A", { exact: true }).waitFor();
    await openBook(page, `${SERVICE}/thing/nobody`);
    await page.getByText('The book has nothing called "nobody".').waitFor();
    await openBook(page, `${SERVICE}/thing/m-000031`);
    await page.getByRole("link", { name: "Everything recorded of m-000031" }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("fits a phone, in Chinese and in the dark", async () => {
    const { page, complaints } = await app.look({ language: "zh", scheme: "dark", screen: "phone" });
    for (const [place, says] of [
      ["thing/sw.left", "会一起失效的"],
      ["thing/s24", "同一电源"],
      ["problems?new=yes&about=sw.left", "关于什么"],
    ] as const) {
      await openBook(page, `${SERVICE}/${place}`);
      await page.getByText(says).first().waitFor();
      expect(await accessFaults(page)).toEqual([]);
      expect(await sidewaysPx(page)).toBe(0);
    }
    expect(complaints).toEqual([]);
  });
});
