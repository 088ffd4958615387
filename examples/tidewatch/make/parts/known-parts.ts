import type { BookRow } from "@pinwright/book";
import { type Extra, type Offer, wears } from "./part-kit.ts";

/** What the parts that wiring and boards name cost, and how they wear. */
interface Known {
  readonly offers: readonly Offer[];
  readonly cells?: Extra;
}

const two = (price: number, pack: number, cells?: Extra): Known => ({
  offers: [
    ["components", price, pack],
    ["components-b", price * 0.92, pack * 5],
  ],
  ...(cells === undefined ? {} : { cells }),
});

const hardware = (price: number, pack: number): Known => ({
  offers: [
    ["hardware", price * 1.3, pack],
    ["hardware-b", price, pack * 5],
  ],
});

const wireOf = (price: number, length: number): Known => ({
  offers: [
    ["wire", price, length],
    ["wire-b", price * 1.08, length],
  ],
});

const ELECTRONICS: Readonly<Record<string, Known>> = {
  "el.controller": { offers: [["components", 1.15, 10, 28]], cells: wears(0.002) },
  "el.transceiver": two(0.48, 25, wears(0.004)),
  "el.fet-power": two(0.62, 25, wears(0.006)),
  "el.fet-small": two(0.058, 100, wears(0.001)),
  "el.diode-clamp": two(0.034, 100),
  "el.led-3": two(0.061, 100, wears(0.001)),
  "el.ir-emitter": two(0.19, 50, wears(0.004)),
  "el.ir-receiver": two(0.24, 50, wears(0.003)),
  "el.link": two(0.09, 100),
  "el.pot-10k": two(0.92, 10, wears(0.02)),
  "el.jack-35": two(0.48, 20, wears(0.02)),
  "el.fuse-holder": two(0.16, 50),
  "el.fuse-reset": two(0.14, 50, wears(0.002)),
  "el.regulator": two(1.9, 5, wears(0.004)),
  "el.cap-470": two(0.19, 50, wears(0.003)),
  "el.cap-100n": two(0.021, 100),
  "el.relay": two(2.6, 5, wears(0.004)),
};

const POSTS: Readonly<Record<string, Known>> = {
  "hw.post-rubber": {
    offers: [["turner", 0.46, 1]],
    cells: { source: "have-made", revision: "A", material: "acetal, clear, on steel" },
  },
  "hw.post-plastic": {
    offers: [["turner", 0.58, 1]],
    cells: { source: "have-made", revision: "A", material: "brass, hexagon 8 mm", finish: "nickel" },
  },
  "hw.ball": {
    offers: [
      ["hardware", 0.92, 10],
      ["hardware-b", 0.84, 50],
    ],
    cells: wears(0.4),
  },
  "cable.ribbon-10": wireOf(0.74, 30),
  "cable.screened-5": wireOf(1.35, 50),
  "cable.cord-2x1": wireOf(0.88, 50),
};

const SHEET_PRICES: Readonly<Record<string, number>> = {
  "sheet.ply-18": 19.4,
  "sheet.ply-13": 21.8,
  "sheet.ply-12": 14.6,
  "sheet.ply-9": 11.9,
};

const READY: Readonly<Record<string, readonly [price: number, lead: number]>> = {
  "board.main": [58, 28],
  "board.netmaster": [17.5, 21],
  "board.audio": [23, 28],
  "board.display": [19.5, 21],
  "board.dot": [31, 35],
};

/** Boards that come stuffed and tested from their maker. */
export const READY_BOARDS: ReadonlySet<string> = new Set(Object.keys(READY));

/** Wire by copper and insulation; connectors by ways; bare boards by area; stand-offs by length. */
const RULES: readonly (readonly [form: RegExp, known: (match: readonly string[], part: Named) => Known])[] = [
  [/^el\.res-/, () => two(0.0075, 100)],
  [/^el\.shunt-/, () => two(0.21, 50)],
  [/^fuse\..*-h$/, () => two(0.42, 10, wears(0.05))],
  [/^fuse\./, () => two(0.16, 10, wears(0.05))],
  [/^housing\.(?:s|i)2[05]0-(\d+)/, ([, ways]) => two(0.03 + 0.014 * Number(ways), 50)],
  [/^housing\.p396-(\d+)/, ([, ways]) => two(0.04 + 0.021 * Number(ways), 50)],
  [/^housing\.i420-(\d+)/, ([, ways]) => two(0.06 + 0.026 * Number(ways), 50)],
  [/^housing\.(?:m750|d254)-(\d+)/, ([, ways]) => two(0.11 + 0.038 * Number(ways), 25)],
  [/^header\.s2[05]0-(\d+)/, ([, ways]) => two(0.035 + 0.019 * Number(ways), 50)],
  [/^header\.p396-(\d+)/, ([, ways]) => two(0.05 + 0.032 * Number(ways), 50)],
  [/^header\.(?:m750|d254)-(\d+)/, ([, ways]) => two(0.12 + 0.055 * Number(ways), 25)],
  [/^hw\.tie-(\d+)/, ([, mm]) => hardware(0.004 + 0.00011 * Number(mm), 100)],
  [
    /^hw\.sleeve-(\d+)/,
    ([, mm]) => ({
      offers: [
        ["wire", 0.12 + 0.035 * Number(mm), 25],
        ["components-b", 0.13 + 0.036 * Number(mm), 50],
      ],
    }),
  ],
  [/^hw\.(?:saddle|clip)-(\d+)/, ([, mm]) => hardware(0.03 + 0.007 * Number(mm), 100)],
  [/^hw\.(?:wood|guide|m[34]x)/, (_, part) => hardware(/-40x|m4x30/.test(part.id) ? 0.019 : 0.012, 200)],
  [/^hw\.(?:nut|washer)/, () => hardware(0.009, 200)],
  [/^key\./, () => two(0.025, 100)],
  [/^contact\.(?:s2|i25)/, () => two(0.022, 200)],
  [/^contact\.(?:p396|i420|tab)/, () => two(0.034, 200)],
  [/^contact\.m750/, () => two(0.062, 100)],
  [/^contact\./, () => two(0.045, 100)],
  [/^wire\.(?:hu|hv|pe|cord|rb)/, (_, part) => wireOf(wirePrice(part.value), 305)],
  [
    /^hw\.standoff-(?:m3-)?(\d+)/,
    ([, mm]) => ({
      offers: [
        ["hardware", 0.09 + 0.0035 * Number(mm), 100],
        ["hardware-b", 0.08 + 0.003 * Number(mm), 500],
      ],
    }),
  ],
  [
    /^pcb\./,
    (_, part) => ({
      offers: [["boards", barePrice(part.value), 5]],
      cells: { revision: "A", material: "FR4, two layers", thickness_mm: 1.6, finish: "tin, green" },
    }),
  ],
];

type Named = Pick<BookRow<"parts">, "id" | "value">;

const cents = (price: number): number => Math.round(price * 1000) / 1000;

/** Copper by its area, and the insulation. */
const wirePrice = (value: string): number => cents(0.045 + 0.16 * (Number.parseFloat(value) || 0.5));

/** A bare board by its area, `84 × 44 mm`, and its panel. */
function barePrice(value: string): number {
  const [width = 80, depth = 50] = value.split("×").map((side) => Number.parseFloat(side));
  return cents(0.22 + (width * depth * 1.7e-2) / 100);
}

export function knownOf(part: Named): Known | null {
  const listed = ELECTRONICS[part.id] ?? POSTS[part.id];
  if (listed !== undefined) return listed;
  const sheet = SHEET_PRICES[part.id];
  if (sheet !== undefined)
    return {
      offers: [
        ["timber", sheet, 1],
        ["timber-b", sheet * 1.06, 1],
      ],
      cells: { material: "birch plywood", scrap_pct: 2 },
    };
  const ready = READY[part.id];
  if (ready !== undefined) return { offers: [["boards", ready[0], 1, ready[1]]], cells: wears(0.02) };
  for (const [form, known] of RULES) {
    const match = form.exec(part.id);
    if (match !== null) return known(match, part);
  }
  return null;
}
