import { beforeAll, describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { lead } from "./testing/floor-hand.ts";
import { Tablet } from "./testing/tablet.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const BENCH = "/b/tidewatch/bench";
const HOUR_MS = 3_600_000;
const BOARDS = 30;
let machines: readonly string[] = [];
let tablet: Tablet;

/** Thirty boards with a reading each, two of them bad; a machine with a defect, one on the way, one counted in. */
beforeAll(async () => {
  const office = await lead(app.address());
  const now = Date.now();
  const boards = await office.units({ book: "tidewatch", what: "board", type: "bt.lamp16", count: BOARDS });
  machines = await office.units({ book: "tidewatch", what: "machine", type: "tidewatch", count: 25 });
  tablet = new Tablet(app.address(), "tablet-1");
  boards.forEach((unit, i) => {
    const isBad = i === 7 || i === 20;
    const at = now - (BOARDS - i) * 60_000;
    const value = isBad ? 95 : 50 + ((i * 7) % 11) / 4;
    tablet.write(at, {
      kind: "reading",
      unit,
      test: "t.lamp16-current",
      value,
      good: !isBad,
      station: "stn.test",
    });
    if (!isBad) return;
    const defect = `d-${i}`;
    tablet.write(at + 1, {
      ...{ kind: "defect", unit, defect, what: "solder-bridge", says: "", where: { item: "R1" } },
      station: "stn.test",
    });
    if (i === 20) return;
    tablet.write(at + 2, { kind: "mended", unit, defect, cause: "work", says: "", minutes: 6 });
    tablet.write(at + 3, { kind: "reading", unit, test: "t.lamp16-current", value: 51, good: true });
  });
  machines.forEach((unit, i) => {
    const at = now - 5 * HOUR_MS + i;
    tablet.write(at, { kind: "handed", unit, stage: i < 20 ? "st.assembly" : "st.paint", site: "works" });
  });
  const [first = "", second = "", third = ""] = machines;
  const where = { panel: "playfield", xMm: 210, yMm: 640 };
  tablet.write(now - HOUR_MS, {
    ...{ kind: "defect", unit: first, defect: "d-m", what: "wire-pinched", says: "", where },
  });
  for (const unit of [second, third])
    tablet.write(now - 2 * HOUR_MS, { kind: "sent", unit, transport: "tr-1", to: "joinery" });
  tablet.write(now - HOUR_MS, { kind: "arrived", unit: third, transport: "tr-1", site: "joinery" });
  await tablet.send();
}, PATIENCE_MS);

describe("quality on the bench", { timeout: 2 * PATIENCE_MS }, () => {
  it("shows defects with the open ones first, what goes wrong most, and what comes through at the first try", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BENCH}/defects`);
    const list = page.getByRole("table", { name: "Defects", exact: true });
    await list.locator("tbody tr").first().waitFor();
    const rows = await list.locator("tbody tr").allInnerTexts();
    expect(rows.map((row) => /open: [\w ]+|passed/u.exec(row)?.[0])).toEqual([
      ...["open: Solder bridge", "open: Wire pinched", "passed"],
    ]);

    await page.getByRole("button", { name: "Solder bridge" }).click();
    await page.getByText("1 open, 1 mended", { exact: false }).waitFor();
    expect(await list.locator("tbody tr").count()).toBe(2);
    await page.getByRole("button", { name: "Show all" }).click();
    await page.getByLabel("By", { exact: true }).selectOption("board");
    await page.getByRole("img", { name: "Defects by board" }).waitFor();
    await page.getByLabel("Drawing").selectOption({ label: "Playfield: 1 defect" });
    await page.getByRole("img", { name: /^Playfield: 1 defect/u }).waitFor();

    await page.getByRole("row", { name: /^Lamp board, 16 outputs 28 of 30 93 % 79 % to 98 %/u }).waitFor();
    await page.getByRole("table", { name: "Failed at the first try" }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("charts a measurement with its rules, and says what its capability is worth", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BENCH}/charts`);
    await page.getByRole("img", { name: /^Readings: 30 points/u }).waitFor();
    await page.getByRole("img", { name: /^Moving ranges: 29 points/u }).waitFor();
    await page.getByText("Left out: 1 later reading.", { exact: false }).waitFor();
    await page.getByRole("row", { name: "one point beyond a control limit b-000008, b-000021" }).waitFor();
    await page.getByText("The process is not in control", { exact: false }).waitFor();
    await page.getByRole("row", { name: /^Cpk \? -?\d/u }).waitFor();
    const limits = await page.locator(".control-chart .limit.specification text").allTextContents();
    expect(limits.map((text) => text.slice(text.indexOf("mA") + 2))).toEqual(["70 ◆", "30 ◆"]);
    await page.getByLabel("Points", { exact: true }).selectOption("5");
    await page.getByRole("img", { name: /^Means: 6 points/u }).waitFor();
    // Limits of single units say nothing of means.
    expect(await page.locator(".control-chart .limit.specification").count()).toBe(0);
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("shows the floor from across the room, live, and says when it is not current", async () => {
    const { page, context, complaints } = await app.look();
    await page.setViewportSize({ width: 1920, height: 1080 });
    await openBook(page, `${BENCH}/floor?screen=1`);
    const screen = page.getByRole("dialog", { name: "Floor now" });
    await screen.getByText("open defect: Wire pinched").waitFor();
    await screen.getByText("on the way to Cabinet shop").waitFor();
    await screen
      .getByText(/^\d+ missing|wait for/u)
      .first()
      .waitFor();
    // All of a run of 25 is there without scrolling, and nothing is smaller than 28 px.
    const measured: unknown = await page.evaluate(`(() => {
      const screen = document.querySelector("dialog");
      const cut = [...screen.querySelectorAll("section")].filter((one) => one.scrollHeight > one.clientHeight + 1);
      const texts = [...screen.querySelectorAll("*")].filter((one) =>
        [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ""));
      return {
        cut: cut.map((one) => one.className),
        smallest: Math.min(...texts.map((one) => parseFloat(getComputedStyle(one).fontSize))),
        overflow: screen.scrollHeight - screen.clientHeight,
      };
    })()`);
    expect(measured).toMatchObject({ cut: [], overflow: 0 });
    expect(measured).toHaveProperty("smallest");
    expect(
      Number(Object.entries(measured ?? {}).find(([key]) => key === "smallest")?.[1]),
    ).toBeGreaterThanOrEqual(28);
    expect(await accessFaults(page)).toEqual([]);

    const [, , , fourth = ""] = machines;
    tablet.write(Date.now(), {
      ...{ kind: "defect", unit: fourth, defect: "d-live", what: "scratch", says: "", where: {} },
    });
    await tablet.send();
    await screen.getByText("open defect: Scratch").waitFor();

    await context.setOffline(true);
    await screen.getByText(/^NOT CURRENT: as of/u).waitFor();
    await context.setOffline(false);
    await screen.getByText(/^as of/u).waitFor();
    await screen.getByRole("button", { name: "Leave" }).click();
    await page.getByRole("heading", { name: "Stuck" }).first().waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints.filter((text) => !text.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
    await context.close();
  });

  it("shows sites in Chinese on a tablet: what is where, on the way and missing", async () => {
    const { page, context, complaints } = await app.look({ language: "zh", screen: "tablet" });
    await openBook(page, `${BENCH}/sites`);
    await page.getByText("缺 1 件：其余已点收。").waitFor();
    const second = machines[1] ?? "";
    await page
      .getByRole("row", { name: new RegExp(`^${second}`, "u") })
      .getByText("缺", { exact: true })
      .waitFor();
    await page.getByRole("heading", { name: "木工厂的工作" }).waitFor();
    expect(await sidewaysPx(page)).toBe(0);
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
