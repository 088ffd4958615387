import { rows, type Topic } from "./author.ts";
import { boardRows, boardTypes } from "./electrics-boards.ts";

/** Board types whose fuses are cartridges in holders; the other fuses are soldered or reset by themselves. */
const CARTRIDGE = /^F\d+$/;

/** Nominal melting I²t as a multiple of In²: ten times In for the middle of the 20 to 300 ms gate of a T fuse. */
const MELTING_MULTIPLE = 7.7;

const fuses = boardRows.flatMap((board) => {
  const type = boardTypes.find((t) => `bt.${t.name}` === board.type);
  return (type?.elements ?? [])
    .filter((e) => e.kind === "fuse" && CARTRIDGE.test(e.control ?? ""))
    .map((e) => {
      const rated = e.amp ?? 1;
      const name = e.control ?? "";
      return {
        id: `fu.${board.id.slice(3)}.${name.toLowerCase()}`,
        label: `${board.label} ${name}`,
        label_zh: `${board.label_zh} ${name}`,
        from: `${board.id}:${e.from}`,
        to: `${board.id}:${e.to}`,
        rated_a: rated,
        speed: "t" as const,
        melting_a2s: Math.round(10 * MELTING_MULTIPLE * rated * rated) / 10,
        rated_v: 250,
        breaking_a: board.id === "bd.mains" ? 1500 : Math.max(35, 10 * rated),
        size: board.id === "bd.mains" ? "5 × 20 mm, ceramic" : "5 × 20 mm, glass",
        part: `fuse.t-${String(rated).replace(".", "-")}${board.id === "bd.mains" ? "-h" : ""}`,
      };
    });
});

const isolated = (
  id: string,
  label: string,
  labelZh: string,
  [positive, negative]: readonly [string, string],
  rated_a: number,
) => ({
  id,
  label,
  label_zh: labelZh,
  volts: 12,
  tolerance_pct: 3,
  positive,
  negative,
  rated_a,
  limit_mode: "constant" as const,
  limit_a: 1.3 * rated_a,
  stored_j: 0.02,
});

/** Supplies and cartridge fuses. Stored energy is ½CV² of usual output capacitors (common practice, no source). */
export const supplies: Topic = {
  tables: {
    supplies: rows("supplies", [
      {
        id: "sup.mains",
        label: "Mains",
        label_zh: "市电",
        volts: 230,
        tolerance_pct: 10,
        positive: "ml.inlet:l",
        negative: "ml.inlet:n",
        rated_a: 10,
        limit_mode: "none",
      },
      {
        id: "sup.48",
        label: "Coil supply",
        label_zh: "线圈电源",
        volts: 48,
        tolerance_pct: 3,
        positive: "psu.48:vp",
        negative: "psu.48:vn",
        rated_a: 12,
        // A unit for peak loads: two and a half times its rating for 3 s, then it rests.
        limit_mode: "hiccup",
        limit_a: 30,
        burst_ms: 3000,
        stored_j: 7.6,
      },
      {
        id: "sup.motor",
        label: "Motor supply",
        label_zh: "电机电源",
        volts: 12,
        tolerance_pct: 3,
        positive: "psu.motor:vp",
        negative: "psu.motor:vn",
        rated_a: 8,
        limit_mode: "constant",
        limit_a: 12,
        stored_j: 0.3,
      },
      {
        id: "sup.lamp",
        label: "Lamp supply",
        label_zh: "灯电源",
        volts: 12,
        tolerance_pct: 3,
        positive: "psu.lamp:vp",
        negative: "psu.lamp:vn",
        rated_a: 12,
        limit_mode: "constant",
        limit_a: 13,
        stored_j: 0.4,
      },
      {
        id: "sup.logic",
        label: "Logic supply",
        label_zh: "逻辑电源",
        volts: 12,
        tolerance_pct: 3,
        positive: "psu.logic:vp",
        negative: "psu.logic:vn",
        rated_a: 8,
        limit_mode: "constant",
        limit_a: 12,
        stored_j: 0.3,
      },
      {
        id: "sup.5",
        label: "5 V of the backbox",
        label_zh: "背箱 5 V",
        volts: 5,
        tolerance_pct: 2,
        positive: "bd.bbpower:j8.1",
        negative: "bd.bbpower:j8.3",
        rated_a: 6,
        limit_mode: "constant",
        limit_a: 8,
        stored_j: 0.01,
      },
      isolated("sup.bus", "Bus 12 V", "总线 12 V", ["bd.hub:j7.1", "bd.hub:j7.3"], 2.5),
    ]),
    fuses: rows("fuses", fuses),
  },
};
