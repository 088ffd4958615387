import { SHOP_TABLES, type ShopRow } from "@pinwright/book";
import { fillRows } from "../author.ts";
import { COIL_NAMES } from "./coil-parts.ts";
import type { Item } from "./part-kit.ts";
import { WOOD_PARTS } from "./top-parts.ts";
import { CHOICES, type Row } from "./way-choices.ts";

/** Minutes on the winding machine, with leads soldered and taped. */
const WIND_MINUTES: Readonly<Record<string, number>> = { flipper: 7, magnet: 8, diverter: 6, gate: 5 };

const COILS: readonly Row[] = COIL_NAMES.flatMap((coil): readonly Row[] => [
  [
    `coil.${coil}`,
    "own",
    "make",
    "Wound here",
    "自行绕制",
    { minutes: WIND_MINUTES[coil] ?? 4.5, setup_minutes: 25, lead_days: 4 },
  ],
  [`coil.${coil}`, "winder", "have-made", "Wound to our drawing", "外协绕制", { supplier: "coils" }],
]);

const WOOD: readonly Row[] = WOOD_PARTS.map((part) => [
  part,
  "own",
  "make",
  "Sawn, routed to a template and lacquered",
  "锯切、仿形铣、上漆",
  { minutes: 7, setup_minutes: 25, lead_days: 4 },
]);

/** Putting one piece to another, and a bench set up for it: common practice, no source. */
const PIECE_MIN = 0.28;
const BENCH_SETUP_MIN = 8;

function assembled(items: readonly Item[]): readonly Row[] {
  const planned = new Set([...CHOICES, ...COILS, ...WOOD].map(([part]) => part));
  return items.flatMap(({ part, contains }): readonly Row[] => {
    if (part.source !== "make" || planned.has(part.id)) return [];
    const pieces = Object.values(contains).reduce((sum, n) => sum + Math.max(1, Math.round(n)), 0);
    const minutes = Math.round(pieces * PIECE_MIN * 10) / 10;
    return [
      [
        part.id,
        "own",
        "make",
        "Put together here",
        "自行组装",
        { minutes, setup_minutes: BENCH_SETUP_MIN, lead_days: 2 },
      ],
    ];
  });
}

/** Ways of making, having made and buying, for what can be got in more than one way or takes our time. */
export const waysOf = (items: readonly Item[]): ShopRow<"ways">[] =>
  fillRows<ShopRow<"ways">>(
    SHOP_TABLES.ways,
    [...CHOICES, ...COILS, ...WOOD, ...assembled(items)].map(([part, way, kind, label, label_zh, cells]) => ({
      part,
      way,
      kind,
      label,
      label_zh,
      ...cells,
    })),
  );
