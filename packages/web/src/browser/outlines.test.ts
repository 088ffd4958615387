import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";

/** A DXF of group codes and values by turns: closed polylines and circles. */
function dxf(
  rings: readonly (readonly (readonly [number, number])[])[],
  circles: readonly (readonly [number, number, number])[],
): string {
  const pairs: (readonly [number, string | number])[] = [
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$INSUNITS"],
    [70, 4],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
  ];
  for (const ring of rings) {
    pairs.push([0, "LWPOLYLINE"], [90, ring.length], [70, 1]);
    for (const [x, y] of ring) pairs.push([10, x], [20, y]);
  }
  for (const [x, y, radius] of circles) pairs.push([0, "CIRCLE"], [10, x], [20, y], [40, radius]);
  pairs.push([0, "ENDSEC"], [0, "EOF"]);
  return pairs.map(([code, value]) => `${code}\n${value}`).join("\n");
}
const box = (width: number, height: number): readonly (readonly [number, number])[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
const svg = (width: number, height: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">` +
  `<path d="M0 0H${width}V${height}H0Z"/></svg>`;

async function bringIn(page: Page, name: string, text: string) {
  await page.getByRole("button", { name: "Bring in a drawing" }).click();
  const dialog = page.getByRole("dialog", { name: "Bring in a drawing" });
  await dialog.locator('input[type="file"]').setInputFiles({
    name,
    mimeType: "application/octet-stream",
    buffer: Buffer.from(text),
  });
  return dialog;
}

describe("drawings from elsewhere", { timeout: 2 * PATIENCE_MS }, () => {
  it("become outlines of a panel, a type and a cutout", async () => {
    const other = await someoneElse(app.address());
    const cell = async (table: string, id: string, column: string): Promise<string> => {
      const { tables } = await other.rows(BOOK);
      return Object.values(tables[table] ?? {}).find((row) => row.id === id)?.[column] ?? "";
    };
    const has = (table: string, id: string, column: string, text: string): Promise<void> =>
      expect.poll(() => cell(table, id, column), { timeout: PATIENCE_MS }).toBe(text);
    for (const [column, text] of Object.entries({
      panel: "pf",
      side: "under",
      x_mm: "350",
      y_mm: "260",
      shape: "circle",
      width_mm: "12",
    }))
      await other.put(BOOK, "cutouts", "cut.drawn", column, text);
    const { page, complaints } = await app.look();
    await openBook(page, `/b/${BOOK}/layout/pf/under`);
    let dialog = await bringIn(page, "Deck 2.DXF", dxf([box(400, 310)], []));
    await dialog.getByText("400 mm × 310 mm, 1 closed line").waitFor();
    await dialog.getByRole("button", { name: "Use it" }).click();
    await has("panels", "pf", "outline", "deck-2.dxf");
    await page.getByRole("banner").getByRole("button", { name: "Undo" }).click();
    await has("panels", "pf", "outline", "");

    await openBook(page, `/b/${BOOK}/layout/pf/under?id=sw.top`);
    dialog = await bringIn(page, "switch.svg", svg(18, 7));
    await dialog.getByRole("radio", { name: "Type: micro-switch" }).check();
    await dialog.getByRole("button", { name: "Use it" }).click();
    await has("device_types", "micro-switch", "outline", "switch.svg");

    await openBook(page, `/b/${BOOK}/layout/pf/under?id=cut.drawn`);
    dialog = await bringIn(page, "hole.dxf", dxf([box(20, 8)], []));
    await dialog.getByRole("radio", { name: "Cutout: cut.drawn" }).check();
    await dialog.getByRole("button", { name: "Use it" }).click();
    await has("cutouts", "cut.drawn", "outline", "hole.dxf");
    await has("cutouts", "cut.drawn", "shape", "outline");
    expect(complaints).toEqual([]);
  });

  it("give places by their circles: fasteners of one size, waypoints of another", async () => {
    const other = await someoneElse(app.address());
    const places = async (table: string): Promise<readonly string[]> => {
      const { tables } = await other.rows(BOOK);
      return Object.values(tables[table] ?? {})
        .filter((row) => row.id?.includes("drawn") === true)
        .map((row) => `${row.id} ${row.side} ${row.x_mm},${row.y_mm}`)
        .sort();
    };
    const circles = dxf(
      [],
      [
        [20, 280, 1.5],
        [380, 280, 1.5],
        [200, 60.5, 4],
      ],
    );
    const { page, complaints } = await app.look();
    await openBook(page, `/b/${BOOK}/layout/pf/under`);
    let dialog = await bringIn(page, "holes.dxf", circles);
    await dialog.getByRole("checkbox", { name: "Ø 8 mm (1)" }).uncheck();
    await dialog.getByRole("button", { name: "Add 2" }).click();
    const screws = ["fx.drawn-1 under 20,280", "fx.drawn-2 under 380,280"];
    await expect.poll(() => places("fasteners"), { timeout: PATIENCE_MS }).toEqual(screws);
    dialog = await bringIn(page, "holes.dxf", circles);
    await dialog.getByRole("checkbox", { name: "Ø 3 mm (2)" }).uncheck();
    await dialog.getByRole("radio", { name: "Circles as waypoints" }).check();
    await dialog.getByRole("button", { name: "Add 1" }).click();
    await expect
      .poll(() => places("waypoints"), { timeout: PATIENCE_MS })
      .toEqual(["wp.drawn-1 under 200,60.5"]);
    await page.getByRole("banner").getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => places("waypoints"), { timeout: PATIENCE_MS }).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
