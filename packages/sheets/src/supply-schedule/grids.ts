import type { ElectricRatings, LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SupplyNode } from "../circuits/index.ts";
import type { Grid } from "../compose/grid.ts";
import { supplyName } from "../machine-facts.ts";
import { type FuseFacts, fuseName, fusePlace, protectsText, pulseShare } from "./fuses.ts";

/** The supplies for a spreadsheet. */
export function supplyGrid(
  line: LineResult,
  supplies: readonly SupplyNode[],
  ratings: ElectricRatings,
  language: SheetLanguage,
): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const s = w.machine.schedule;
  return {
    name: s.suppliesTitle,
    header: [
      "id",
      s.supply,
      s.volts,
      `${s.tolerance} %`,
      "+",
      "−",
      s.rated,
      s.overload,
      `${s.overload} A`,
      s.steady,
      s.rms,
      s.hold,
      s.worst,
      s.headroom,
      s.stored,
    ],
    rows: supplies.map(({ supply }) => {
      const budget = line.electric.supplies.get(supply.id);
      return [
        supply.id,
        supplyName(line, supply.id, language === "both" ? "en" : language),
        supply.volts,
        supply.tolerance_pct,
        supply.positive ?? "",
        supply.negative ?? "",
        supply.rated_a,
        s.modes[supply.limit_mode],
        supply.limit_a ?? "",
        rounded(budget?.steadyA.most),
        rounded(budget?.rmsA.most),
        rounded(budget?.holdA.most),
        rounded(budget?.worstA.most),
        rounded(ratings.supplies.get(supply.id)?.headroomA),
        supply.stored_j ?? "",
      ];
    }),
  };
}

/** A figure for a spreadsheet, to a thousandth. */
const rounded = (value: number | undefined): number | "" =>
  value === undefined ? "" : Math.round(value * 1000) / 1000;

/** The fuses for a spreadsheet. */
export function fuseGrid(
  line: LineResult,
  supplies: readonly (readonly [SupplyNode, readonly FuseFacts[]])[],
  language: SheetLanguage,
): Grid {
  const own = language === "both" ? "en" : language;
  const w = sheetWords(own);
  const s = w.machine.schedule;
  return {
    name: s.fusesTitle,
    header: [
      s.supply,
      "id",
      s.fuse,
      s.place,
      s.rating,
      "",
      s.size,
      "A",
      "A²s",
      s.protects,
      s.rms,
      s.peak,
      "I²t %",
      s.part,
    ],
    rows: supplies.flatMap(([{ supply }, fuses]) =>
      fuses.map((fuse) => {
        const { row, element } = fuse.node;
        const carried = line.electric.elements.get(element.id);
        const share = pulseShare(fuse);
        return [
          supply.id,
          row?.id ?? element.id,
          fuseName(line, fuse, own),
          `${element.itemId} ${fusePlace(line, fuse)}`,
          row?.rated_a ?? element.row.amp ?? "",
          w.machine.speeds[row?.speed ?? "resettable"],
          row?.size ?? "",
          row?.breaking_a ?? "",
          row?.melting_a2s ?? "",
          protectsText(line, fuse, Number.POSITIVE_INFINITY, own),
          rounded(carried?.rmsA.most),
          rounded(carried?.peakA.most),
          share === null ? "" : Math.round(share * 1000) / 10,
          row?.part ?? "",
        ];
      }),
    ),
  };
}
