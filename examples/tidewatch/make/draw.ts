/**
 * Draws the playfield from its tables, top and under (mirrored, as seen from below):
 * `npx tsx examples/tidewatch/make/draw.ts FOLDER` writes `top.svg` and `under.svg` there.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { BookRow } from "@pinwright/book";
import { type Item, Line, type PanelPoint, Resolver } from "@pinwright/engine";
import { bodiesAbove } from "../check/bodies.ts";
import { cutoutShape } from "../check/cutout-shape.ts";
import { assemble } from "./assemble.ts";

const WIDTH = 514;
const HEIGHT = 1067;
const SCALE = 2;
const PANEL = "playfield";
/** Parts that start this high are over the ball. */
const CLEAR_MM = 27;
/** Switch wires and heads of screws: their slots and holes show where they are. */
const ROLLED_OVER_MM = 5;

const { book, shop } = assemble();
const machine = new Resolver().resolve(book, shop);

const COLOURS: Readonly<Record<string, string>> = {
  switch: "#0072b2",
  lamp: "#e69f00",
  coil: "#d55e00",
  motor: "#cc79a7",
  sensor: "#009e73",
  board: "#117733",
  mechanism: "#bbbbbb",
  fastener: "#222222",
  inline: "#8c8c8c",
  rubber: "#1a1a1a",
  clear: "#7fb2d9",
  wall: "#8a7a66",
};

const path = (points: readonly PanelPoint[]): string =>
  `M${points.map((p) => `${p.xMm.toFixed(2)} ${(HEIGHT - p.yMm).toFixed(2)}`).join("L")}Z`;

const shape = (points: readonly PanelPoint[], fill: string, opacity: number, stroke = "#222"): string =>
  `<path d="${path(points)}" fill="${fill}" fill-opacity="${opacity}" stroke="${stroke}" stroke-width="0.6"/>`;

const text = (p: PanelPoint, words: string, mirror: boolean): string =>
  `<text transform="translate(${p.xMm} ${HEIGHT - p.yMm})${mirror ? " scale(-1 1)" : ""}" font-size="5" text-anchor="middle" font-family="sans-serif">${words}</text>`;

const colourOf = (item: Item): string => {
  if (item.kind !== "device") return COLOURS[item.kind] ?? "#999";
  if (item.id.startsWith("tp.rubber-")) return COLOURS.rubber ?? "#000";
  if (item.type.class === "other") return COLOURS[item.place.zMm >= CLEAR_MM ? "clear" : "wall"] ?? "#999";
  return COLOURS[item.type.class] ?? "#999";
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

const isQuiet = (item: Item): boolean => item.kind === "fastener" || item.id.startsWith("tp.");

const labelled = (item: Item, mirror: boolean): string =>
  isQuiet(item) ? "" : text(item.place, item.id, mirror);

const folder = process.argv[2] ?? ".";
const tops = bodiesAbove(machine, PANEL)
  .filter((body) => body.toMm - body.fromMm > ROLLED_OVER_MM)
  .toSorted((a, b) => a.fromMm - b.fromMm);
const topBody = tops
  .map(
    ({ item, ring, fromMm }) =>
      shape(ring, colourOf(item), fromMm >= CLEAR_MM ? 0.3 : 0.9) +
      (fromMm >= CLEAR_MM ? "" : labelled(item, false)),
  )
  .join("\n");
writeFileSync(join(folder, "top.svg"), svg(false, `${cutoutsOf(book.tables.cutouts)}\n${topBody}`));

const ORDER: Readonly<Record<Item["kind"], number>> = {
  mechanism: 0,
  device: 1,
  inline: 2,
  fastener: 3,
  board: 4,
};
const underBody = [...machine.items.values()]
  .filter(({ place }) => place.panelId === PANEL && place.side === "under" && place.zMm > -1)
  .toSorted((a, b) => ORDER[a.kind] - ORDER[b.kind])
  .map(
    (item) =>
      shape(item.footprint, colourOf(item), item.kind === "board" ? 0.25 : 0.6) + labelled(item, true),
  )
  .join("\n");

const spotAt = new Map(
  book.tables.waypoints
    .filter((row) => row.panel === PANEL && row.side === "under")
    .map((row) => [row.id, { xMm: row.x_mm, yMm: row.y_mm }]),
);
const wiresIn = new Map<string, number>();
for (const { branches } of new Line().run(book, shop).harnesses.values())
  for (const { id, wireIds } of branches) wiresIn.set(id, (wiresIn.get(id) ?? 0) + wireIds.length);

/** Every lane as a thin line; the more wires lie in it, the thicker. */
const laneBody = book.tables.lanes
  .flatMap(({ id, from, to }) => {
    const [a, b] = [spotAt.get(from), spotAt.get(to)];
    if (a === undefined || b === undefined) return [];
    const wires = wiresIn.get(id) ?? 0;
    const width = wires === 0 ? 0.4 : 0.8 + 0.7 * Math.sqrt(wires);
    return [
      `<path d="M${a.xMm} ${HEIGHT - a.yMm}L${b.xMm} ${HEIGHT - b.yMm}" stroke="${wires === 0 ? "#999" : "#0b6e74"}" stroke-width="${width.toFixed(2)}" stroke-linecap="round"/>`,
    ];
  })
  .join("\n");
writeFileSync(
  join(folder, "under.svg"),
  svg(true, `${cutoutsOf(book.tables.cutouts)}\n${underBody}\n${laneBody}`),
);
