import { rows, type Topic } from "./author.ts";

/**
 * How each coil is wound and what heat it gives off as it is fitted. Turns and wire are chosen so that they make the
 * resistance; heat and time constants are estimates by surface and mass (common practice, no source), to be measured by
 * the change of resistance on the first machine.
 */
type Wound = readonly [
  element: string,
  turns: number,
  wireMm: number,
  enamelMm: number,
  boreMm: number,
  windowMm: number,
  heatW: number,
  warmMin: number,
];

const WOUND: readonly Wound[] = [
  ["el.coil-flipper-1", 980, 0.644, 0.714, 16, 54, 22, 10],
  ["el.coil-flipper-2", 4600, 0.286, 0.324, 24, 54, 12, 10],
  ["el.coil-sling-1", 1380, 0.455, 0.508, 14, 42, 14, 8],
  ["el.coil-bumper-1", 1370, 0.511, 0.569, 14, 46, 16, 8],
  ["el.coil-reset-1", 1080, 0.573, 0.637, 15, 50, 14, 8],
  ["el.coil-reset-small-1", 1220, 0.405, 0.453, 12, 36, 8, 6],
  ["el.coil-trip-1", 1930, 0.227, 0.259, 8, 22, 4, 4],
  ["el.coil-kick-1", 1220, 0.511, 0.569, 14, 46, 12, 8],
  ["el.coil-vuk-1", 1230, 0.573, 0.637, 14, 50, 12, 8],
  ["el.coil-plunger-1", 1080, 0.644, 0.714, 15, 54, 14, 8],
  ["el.coil-diverter-1", 3270, 0.321, 0.362, 14, 44, 14, 8],
  ["el.coil-gate-1", 2950, 0.18, 0.208, 8, 22, 6, 4],
  ["el.coil-post-1", 2210, 0.321, 0.362, 12, 42, 9, 6],
  ["el.coil-magnet-1", 1330, 0.644, 0.714, 20, 42, 30, 15],
  ["el.coil-knocker-1", 1440, 0.511, 0.569, 14, 46, 12, 8],
];

/** Enamel of 155 °C on nylon bobbins with glass fibre: class F. */
export const windings: Topic = {
  tables: {
    windings: rows(
      "windings",
      WOUND.map(([element, turns, wire_mm, enamel_mm, bore_mm, window_mm, heat_w, warm_min]) => ({
        element,
        turns,
        wire_mm,
        enamel_mm,
        bore_mm,
        window_mm,
        class: "F" as const,
        heat_w,
        warm_min,
      })),
    ),
  },
};
