import { expect, test } from "vitest";
import { at, box, group, LINE, line, rect, stroke, write } from "../compose/draw.ts";
import type { Page } from "../compose/mark.ts";
import { paragraph } from "../compose/paragraph.ts";
import { TICK, table } from "../compose/table.ts";
import { composePinboard } from "../pinboard/index.ts";
import { exampleLine, OPTIONS, straightHarness } from "../testing/first-light.ts";
import { pageSvg } from "./svg.ts";

const page = (marks: Page["marks"]): Page => ({ widthMm: 120, heightMm: 80, marks });

test("every kind of mark", async () => {
  const marks: Page["marks"] = [
    line(at(5, 5), at(35, 5), stroke("accent", LINE.strong, [3, 1])),
    rect(box(5, 10, 30, 10), stroke("ink", LINE.thin), "tint"),
    {
      kind: "circle",
      at: at(50, 15),
      radiusMm: 6,
      stroke: stroke("ink", LINE.medium),
      fill: null,
      layer: "HOLES",
    },
    {
      kind: "arc",
      at: at(70, 15),
      radiusMm: 6,
      fromDeg: 30,
      toDeg: 250,
      stroke: stroke("ink", LINE.bold),
      layer: "BORDER",
    },
    {
      kind: "polygon",
      points: [at(85, 5), at(115, 5), at(100, 25)],
      stroke: stroke("ink", LINE.thin),
      fill: "paper",
      hatchMm: 3,
      layer: "BORDER",
    },
    write("Wire 12 < 线 12", at(60, 40), { anchor: "middle", weight: "bold", turnDeg: 30 }),
    group([line(at(0, 0), at(30, 30))], 10, 40, box(12, 42, 10, 10)),
    { kind: "code", at: at(90, 45), sizeMm: 25, text: "pinwright:x:A:y:0", layer: "BORDER" },
  ];
  await expect(pageSvg(page(marks), "Marks & signs")).toMatchFileSnapshot("golden/marks.svg");
});

test("a table with a group, a detail and a tick", async () => {
  const blocks = [
    paragraph("A table", 110, 2.5, true),
    ...table(
      [
        { header: "Wire\n线号", align: "end", heightMm: 3.5, weight: "bold" },
        { header: "From", grow: true, detail: true },
        { header: "Done", align: "middle" },
      ],
      [
        { kind: "group", text: "WHRD · AWG 22", detail: "3 pcs, 1.24 m" },
        { kind: "row", cells: ["12", "bd.lamp-left:j1 3\nLamp board · 灯板", TICK] },
        { kind: "total", cells: ["1", "", ""] },
      ],
      110,
      "continued",
    ),
  ];
  let y = 5;
  const marks = blocks.map((b) => {
    const placed = group(b.marks, 5, y);
    y += b.heightMm;
    return placed;
  });
  await expect(pageSvg(page(marks), "Table")).toMatchFileSnapshot("golden/table.svg");
});

test("a pinboard of one straight branch", async () => {
  const result = await exampleLine("first-light");
  const [roll] = composePinboard(result, straightHarness(result, 200), () => [], OPTIONS);
  const drawing = roll?.pages[0];
  if (roll === undefined || drawing === undefined) throw new Error("a pinboard has a roll");
  // The code follows the body of the whole sheet; it is tested where it is read back.
  const svg = pageSvg(drawing, roll.title).replace(
    /<path d="[^"]*" fill="#16191b" shape-rendering[^>]*>/u,
    "<code/>",
  );
  await expect(svg.replaceAll(roll.bodyHash.slice(0, 12), "hash")).toMatchFileSnapshot("golden/pinboard.svg");
});
