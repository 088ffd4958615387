/**
 * Draws the playfield from its tables, top and under (mirrored, as seen from below):
 * `npx tsx examples/tidewatch/make/draw.ts FOLDER` writes `top.svg` and `under.svg` there.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { BookRow } from "@pinwright/book";
import { type Item, type PanelPoint, Resolver } from "@pinwright/engine";
import { cutoutShape } from "../check/cutout-shape.ts";
import { assemble } from "./assemble.ts";

const WIDTH = 514;
const HEIGHT = 1067;
const SCALE = 2;

const { book, shop } = assemble();
const machine = new Resolver().resolve(book, shop);
const items = [...machine.items.values()].filter((item) => item.place.panelId === "playfield");
const thickness = machine.panels.get("playfield")?.thickness_mm ?? 0;

const COLOURS: Readonly<Record<string, string>> = {
  switch: "#0072b2",
  lamp: "#e69f00",
  coil: "#d55e00",
  motor: "#cc79a7",
  sensor: "#009e73",
  other: "#555555",
};

const path = (points: readonly PanelPoint[]): string =>
  `M${points.map((p) => `${p.xMm.toFixed(2)} ${(HEIGHT - p.yMm).toFixed(2)}`).join("L")}Z`;

const shape = (points: readonly PanelPoint[], fill: string, opacity: number, stroke = "#222"): string =>
  `<path d="${path(points)}" fill="${fill}" fill-opacity="${opacity}" stroke="${stroke}" stroke-width="0.6"/>`;

const text = (p: PanelPoint, words: string, mirror: boolean): string =>
  `<text transform="translate(${p.xMm} ${HEIGHT - p.yMm})${mirror ? " scale(-1 1)" : ""}" font-size="5" text-anchor="middle" font-family="sans-serif">${words}</text>`;

const colourOf = (item: Item): string =>
  item.kind === "device"
    ? (COLOURS[item.type.class] ?? "#999")
    : item.kind === "board"
      ? "#117733"
      : item.kind === "mechanism"
        ? "#bbbbbb"
        : "#444444";

/** Height of an item's underside above the playing surface when it is seen from the top; null when it is not. */
const topZ = (item: Item): number | null => {
  if (item.place.side === "top") return item.kind === "mechanism" ? 0 : item.place.zMm;
  if (item.parentId !== null && item.place.zMm <= -thickness) return -item.place.zMm - thickness;
  return null;
};

const cutoutsOf = (rows: readonly BookRow<"cutouts">[]): string =>
  rows
    .filter((row) => row.panel === "playfield")
    .map((row) => shape(cutoutShape(book, row), row.purpose === "insert" ? "#ffe9a8" : "#7a5c3a", 0.9))
    .join("\n");

const svg = (mirror: boolean, body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-10 -10 ${WIDTH + 20} ${HEIGHT + 20}" width="${(WIDTH + 20) * SCALE}" height="${(HEIGHT + 20) * SCALE}">
<rect x="-10" y="-10" width="${WIDTH + 20}" height="${HEIGHT + 20}" fill="white"/>
<g${mirror ? ` transform="translate(${WIDTH} 0) scale(-1 1)"` : ""}><rect width="${WIDTH}" height="${HEIGHT}" fill="#f4e6c8" stroke="black"/>
${body}
</g></svg>
`;

const drawn = (list: readonly Item[], mirror: boolean): string =>
  list
    .map((item) => {
      const label =
        item.kind === "fastener" || item.id.startsWith("tp.") ? "" : text(item.place, item.id, mirror);
      const see = mirror ? 0.55 : (topZ(item) ?? 0) >= 27 ? 0.18 : 0.8;
      return shape(item.footprint, colourOf(item), see) + label;
    })
    .join("\n");

const folder = process.argv[2] ?? ".";
const tops = items.filter((item) => topZ(item) !== null).toSorted((a, b) => (topZ(a) ?? 0) - (topZ(b) ?? 0));
writeFileSync(
  join(folder, "top.svg"),
  svg(false, `${cutoutsOf(book.tables.cutouts)}\n${drawn(tops, false)}`),
);
const unders = items.filter((item) => topZ(item) === null);
const mechanismsFirst = unders.toSorted(
  (a, b) => Number(b.kind === "mechanism") - Number(a.kind === "mechanism"),
);
writeFileSync(
  join(folder, "under.svg"),
  svg(true, `${cutoutsOf(book.tables.cutouts)}\n${drawn(mechanismsFirst, true)}`),
);
