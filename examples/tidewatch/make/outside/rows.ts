import type { BookRow, ShopRow } from "@pinwright/book";

type Dimension = Partial<BookRow<"dimensions">> & Pick<BookRow<"dimensions">, "part" | "mark">;
type Sample = Partial<ShopRow<"samples">> & Pick<ShopRow<"samples">, "id" | "part" | "revision">;
type Value = Partial<ShopRow<"sample_values">> & Pick<ShopRow<"sample_values">, "sample" | "mark">;

export const PLATE = "br.flipper-plate-left";
export const SHAFT = "tu.flipper-shaft";
export const BAT = "md.flipper-bat";
export const ARMATURE = "br.bumper-armature";
export const PLASTIC = "top.plastic-sling-left";
export const PLUNGER = "tu.plunger-12x62";

/** Parts that have come to a later revision than the one they began with. */
export const REVISIONS: ReadonlyMap<string, string> = new Map([
  [PLATE, "B"],
  [BAT, "B"],
]);

const CALIPER = { how: "caliper", how_zh: "卡尺" };
const MICROMETER = { how: "micrometer", how_zh: "千分尺" };
const PIN = { how: "pin gauge", how_zh: "针规" };

const measured = (
  part: string,
  mark: string,
  [label, label_zh]: readonly [string, string],
  [nominal, minus, plus]: readonly [number, number, number],
  how: Partial<Dimension>,
): Dimension => ({ part, mark, label, label_zh, nominal, minus, plus, ...how });

const looked = (part: string, mark: string, label: string, label_zh: string): Dimension => ({
  part,
  mark,
  label,
  label_zh,
});

/** What the designer marked: the few dimensions that each fit depends on. */
export const DIMENSIONS: readonly Dimension[] = [
  measured(PLATE, "1", ["Screw holes, along", "螺钉孔距（长向）"], [108, 0.15, 0.15], CALIPER),
  measured(PLATE, "2", ["Screw holes, across", "螺钉孔距（横向）"], [48, 0.15, 0.15], CALIPER),
  measured(PLATE, "3", ["Screw holes", "螺钉孔"], [4.5, 0, 0.1], PIN),
  measured(PLATE, "4", ["Bore of the bush", "衬套孔"], [13, 0, 0.05], PIN),
  measured(PLATE, "5", ["Thickness with plating", "厚度（含镀层）"], [2, 0.1, 0.1], MICROMETER),
  looked(PLATE, "6", "Plating in the bend whole, edges deburred", "折弯处镀层完好，边缘去毛刺"),
  measured(SHAFT, "1", ["Diameter", "直径"], [8, 0.015, 0], MICROMETER),
  measured(SHAFT, "2", ["Length", "长度"], [78.5, 0.1, 0.1], CALIPER),
  measured(SHAFT, "3", ["Over the flat", "扁面尺寸"], [7, 0.1, 0], MICROMETER),
  looked(SHAFT, "4", "Ends chamfered, no burr", "两端倒角，无毛刺"),
  measured(BAT, "1", ["Centres", "中心距"], [58, 0.3, 0.3], CALIPER),
  measured(BAT, "2", ["Bore for the shaft", "轴孔"], [8.1, 0, 0.05], PIN),
  measured(BAT, "3", ["Height", "高度"], [22, 0.2, 0.2], CALIPER),
  looked(BAT, "4", "No sink marks, no flash at the parting line", "无缩痕，分型线无飞边"),
  measured(ARMATURE, "1", ["Rods", "杆孔距"], [48, 0.05, 0.05], CALIPER),
  measured(ARMATURE, "2", ["Bores of the rods", "杆孔"], [5.1, 0, 0.05], PIN),
  measured(ARMATURE, "3", ["Bore in the middle", "中孔"], [4.2, 0, 0.1], PIN),
  looked(ARMATURE, "4", "Flat, laser side without dross", "平整，切割面无挂渣"),
  measured(PLASTIC, "1", ["Width", "宽度"], [55, 0.2, 0.2], CALIPER),
  measured(PLASTIC, "2", ["Length", "长度"], [148, 0.2, 0.2], CALIPER),
  looked(PLASTIC, "3", "Print to the edge, no scratches, film on", "印刷到边，无划痕，带保护膜"),
  measured(PLUNGER, "1", ["Diameter", "直径"], [11.9, 0.05, 0], MICROMETER),
  measured(PLUNGER, "2", ["Length", "长度"], [62, 0.2, 0.2], CALIPER),
  measured(PLUNGER, "3", ["Slot", "槽宽"], [4.2, 0, 0.1], PIN),
  looked(PLUNGER, "4", "Working face flat and bright", "工作端面平整光亮"),
];

/** Samples in the order in which they were asked for, from the first try to the final part. */
export const SAMPLES: readonly Sample[] = [
  {
    id: "sm.flipper-plate.a-1",
    part: PLATE,
    revision: "A",
    made: "laser-cut acrylic",
    asked: "2026-08-31",
    received: "2026-08-31",
    state: "approved",
    decided: "2026-09-01",
    by: "Designer",
    remark: "Shape and places of holes fit the playfield; go on in steel.",
  },
  {
    id: "sm.flipper-plate.a-2",
    part: PLATE,
    revision: "A",
    made: "final metal, plated",
    supplier: "metalwork",
    asked: "2026-09-02",
    received: "2026-09-21",
    state: "sent-back",
    decided: "2026-09-22",
    by: "Designer",
    remark: "Screws bind in the holes after plating: 4.5 instead of 4.2. Revision B follows.",
  },
  {
    id: "sm.flipper-plate.b-1",
    part: PLATE,
    revision: "B",
    made: "final metal, plated",
    supplier: "metalwork",
    asked: "2026-09-23",
    received: "2026-10-12",
    state: "approved",
    decided: "2026-10-12",
    by: "Designer",
    remark: "Good.",
  },
  {
    id: "sm.flipper-shaft.a-1",
    part: SHAFT,
    revision: "A",
    made: "ground bar",
    supplier: "turner",
    asked: "2026-10-05",
    received: "2026-10-22",
    state: "sent-back",
    decided: "2026-10-23",
    by: "Designer",
    remark: "Diameter too small: rattles in the bush. Ground bar h7, please.",
  },
  {
    id: "sm.flipper-shaft.a-2",
    part: SHAFT,
    revision: "A",
    made: "ground bar, h7",
    supplier: "turner",
    asked: "2026-10-26",
    state: "asked",
  },
  {
    id: "sm.flipper-bat.a-1",
    part: BAT,
    revision: "A",
    made: "laser-cut acrylic, glued in layers",
    asked: "2026-08-24",
    received: "2026-08-25",
    state: "sent-back",
    decided: "2026-09-02",
    by: "Designer",
    remark: "Cracked at the bore after 300 strokes: thicker wall in revision B.",
  },
  {
    id: "sm.flipper-bat.b-1",
    part: BAT,
    revision: "B",
    made: "printed nylon",
    asked: "2026-09-03",
    received: "2026-09-07",
    state: "approved",
    decided: "2026-09-15",
    by: "Designer",
    remark: "20,000 strokes without a crack; mould may be made.",
  },
  {
    id: "sm.flipper-bat.b-2",
    part: BAT,
    revision: "B",
    made: "moulded, first shots",
    supplier: "moulder",
    asked: "2026-09-16",
    received: "2026-11-20",
    state: "received",
  },
  {
    id: "sm.bumper-armature.a-1",
    part: ARMATURE,
    revision: "A",
    made: "final metal, plated",
    supplier: "metalwork",
    asked: "2026-10-01",
    received: "2026-10-20",
    state: "approved",
    decided: "2026-10-21",
    by: "Designer",
    remark: "Good.",
  },
  {
    id: "sm.plastic-sling.a-1",
    part: PLASTIC,
    revision: "A",
    made: "laser-cut, not printed",
    supplier: "plastics",
    asked: "2026-10-28",
    received: "2026-11-09",
    state: "approved",
    decided: "2026-11-10",
    by: "Designer",
    remark: "Sits right over the slingshot; print it.",
  },
];

const readings = (sample: string, values: readonly (number | "yes" | "no" | null)[]): Value[] =>
  values.flatMap((value, i) =>
    value === null
      ? []
      : [
          typeof value === "number"
            ? { sample, mark: String(i + 1), value, by: "Designer" }
            : { sample, mark: String(i + 1), good: value, by: "Designer" },
        ],
  );

/** What was measured, by balloon. */
export const SAMPLE_VALUES: readonly Value[] = [
  ...readings("sm.flipper-plate.a-2", [108.06, 47.95, 4.16, 13.02, 2.03, "yes"]),
  ...readings("sm.flipper-plate.b-1", [107.94, 48.03, 4.53, 13.03, 2.04, "yes"]),
  ...readings("sm.flipper-shaft.a-1", [7.96, 78.46, 6.94, "yes"]),
  ...readings("sm.flipper-bat.b-1", [57.8, 8.12, 22.1, "yes"]),
  ...readings("sm.flipper-bat.b-2", [58.1, 8.13, null, null]),
  ...readings("sm.bumper-armature.a-1", [48.02, 5.12, 4.24, "yes"]),
  ...readings("sm.plastic-sling.a-1", [55.08, 147.91, "yes"]),
];
