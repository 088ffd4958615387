import { beside } from "./board-kit.ts";
import { KEY_AT } from "./electrics-node-boards.ts";
import { labelOfAll } from "./item-labels.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import type { Wiring } from "./wiring-kit.ts";

/** One output: a lamp of its own, or several that always go together. */
type Output = string | readonly string[];

interface Half {
  readonly board: string;
  readonly connector: "j5" | "j6";
  readonly key: "lamp16.j5" | "lamp16.j6" | "lamp4.j5";
  readonly harness: string;
  readonly outputs: readonly Output[];
}

const series = (prefix: string, first: number, last: number): string[] =>
  Array.from({ length: last - first + 1 }, (_, i) => `${prefix}-${first + i}`);
/** Regions of the general lights: those under the playfield, and those on top, which hang on in-line connectors. */
const REGIONS = {
  "rear-left": (x, y, top) => !top && y > 850 && x < 257,
  "rear-right": (x, y, top) => !top && y > 850 && x >= 257,
  "middle-left": (x, y, top) => !top && y <= 850 && y > 420 && x < 257,
  "middle-right": (x, y, top) => !top && y <= 850 && y > 420 && x >= 257,
  "front-left": (x, y, top) => !top && y <= 420 && x < 257,
  "front-right": (x, y, top) => !top && y <= 420 && x >= 257,
  "top-rear-left": (x, y, top) => top && y > 850 && x < 257,
  "top-rear-right": (x, y, top) => top && y > 850 && x >= 257,
  "top-left": (x, y, top) => top && y <= 850 && y > 420 && x < 257,
  "top-right": (x, y, top) => top && y <= 850 && y > 420 && x >= 257,
  "top-sling-left": (x, y, top) => top && y <= 420 && y > 250 && x < 257,
  "top-sling-right": (x, y, top) => top && y <= 420 && y > 250 && x >= 257,
  "top-front": (_x, y, top) => top && y <= 250,
} as const satisfies Readonly<Record<string, (x: number, y: number, top: boolean) => boolean>>;

/** General lights of one region, which are one string on one output; none when there are none. */
const general = (region: keyof typeof REGIONS): readonly Output[] => {
  const lights = (playfieldLamps.tables.devices ?? []).filter(
    (row) => row.id.startsWith("lp.gi-") && REGIONS[region](row.x_mm, row.y_mm, row.side === "top"),
  );
  return lights.length === 0 ? [] : [lights.map((row) => row.id)];
};

const pairOf = (
  board: string,
  harness: string,
  j5: readonly Output[],
  j6: readonly Output[],
): readonly Half[] => [
  { board, connector: "j5", key: "lamp16.j5", harness, outputs: j5 },
  { board, connector: "j6", key: "lamp16.j6", harness, outputs: j6 },
];

const HALVES: readonly Half[] = [
  ...pairOf(
    "bd.lamp-1",
    "hs.lamp-front",
    [
      "lp.outlane-left",
      "lp.inlane-left",
      "lp.kickback",
      "lp.again",
      ...series("lp.bonus", 1, 2),
      ...series("lp.bonus", 6, 7),
    ],
    [
      ...series("lp.fog", 1, 3),
      "lp.flash-left-sling",
      ...general("front-left"),
      ...general("top-sling-left"),
    ],
  ),
  ...pairOf(
    "bd.lamp-2",
    "hs.lamp-front",
    [
      "lp.outlane-right",
      "lp.inlane-right",
      ...series("lp.bonus", 3, 5),
      ...series("lp.bonus", 8, 9),
      ...general("top-front"),
    ],
    ["lp.flash-right-sling", ...general("front-right"), ...general("top-sling-right")],
  ),
  ...pairOf("bd.lamp-3", "hs.lamp-centre", series("lp.compass", 9, 16), series("lp.compass", 1, 8)),
  ...pairOf(
    "bd.lamp-4",
    "hs.lamp-word",
    [...series("lp.word", 1, 5), ...series("lp.multi", 4, 5), "lp.jackpot"],
    [...series("lp.word", 6, 9), ...series("lp.multi", 2, 3), "lp.magnet"],
  ),
  ...pairOf(
    "bd.lamp-5",
    "hs.lamp-mid",
    [
      ...series("lp.orbit-left", 1, 3),
      ...series("lp.lock", 1, 2),
      "lp.anchor-left",
      "lp.spinner",
      "lp.lock-3",
    ],
    [
      ...series("lp.ramp-left", 1, 3),
      ...series("lp.drop", 1, 2),
      "lp.flash-ramp-left",
      ...general("middle-left"),
      ...general("top-left"),
    ],
  ),
  ...pairOf(
    "bd.lamp-6",
    "hs.lamp-mid",
    [...series("lp.drop", 3, 4), ...series("lp.cave", 1, 3), "lp.cave-drop", "lp.flash-ramp-right"],
    [
      ...series("lp.ramp-right", 1, 3),
      ...series("lp.orbit-right", 1, 2),
      "lp.anchor-right",
      ...general("middle-right"),
      ...general("top-right"),
    ],
  ),
  ...pairOf(
    "bd.lamp-7",
    "hs.lamp-rear",
    [
      "lp.wreck",
      "mech.bumper-left/lamp",
      "mech.bumper-low/lamp",
      "lp.flash-lighthouse",
      ...general("rear-left"),
      ...general("top-rear-left"),
      ...general("top-rear-right"),
    ],
    [
      ...series("lp.top-lane", 1, 3),
      "mech.bumper-right/lamp",
      "lp.flash-bumpers",
      "lp.flash-corner",
      "lp.flash-ship",
      ...general("rear-right"),
    ],
  ),
  {
    board: "bd.lamp-cab",
    connector: "j5",
    key: "lamp4.j5",
    harness: "hs.cabinet-front",
    outputs: ["lp.coin-1", "lp.coin-2", "sw.start", "sw.action"],
  },
  ...pairOf("bd.lamp-bb-1", "hs.backbox-lamps", series("lp.bb", 1, 8), [
    ...series("lp.bb", 9, 12),
    ["bd.strip-1", "bd.strip-3"],
    ["bd.strip-5", "bd.strip-7"],
  ]),
  ...pairOf("bd.lamp-bb-2", "hs.backbox-lamps", series("lp.bb", 13, 20), [
    ["bd.strip-2", "bd.strip-4"],
    ["bd.strip-6", "bd.strip-8"],
  ]),
];

/** Harnesses that hang on an in-line connector, by the lamps in them. */
const BEYOND: ReadonlyMap<string, readonly [inline: string, harness: string]> = new Map(
  (
    [
      ["il.coin-door", "hs.coin-door", ["lp.coin-1", "lp.coin-2"]],
      ["il.light-sling-left", "hs.light-sling-left", general("top-sling-left").flat()],
      ["il.light-sling-right", "hs.light-sling-right", general("top-sling-right").flat()],
      ["il.light-left", "hs.light-left", general("top-left").flat()],
      ["il.light-right", "hs.light-right", general("top-right").flat()],
      ["il.light-front", "hs.light-front", general("top-front").flat()],
      ["il.light-rear", "hs.light-rear", [...general("top-rear-left"), ...general("top-rear-right")].flat()],
    ] as const
  ).flatMap(([inline, harness, lamps]) => lamps.map((lamp) => [lamp, [inline, harness] as const] as const)),
);

/** Expected current of one lamp of a kind, in A. */
const ampsOf = (item: string): number =>
  item.startsWith("lp.flash")
    ? 0.35
    : item.startsWith("bd.strip")
      ? 0.12
      : item.endsWith("/lamp")
        ? 0.06
        : 0.04;

function wireHalf(w: Wiring, half: Half): void {
  const keyAt = KEY_AT[half.key];
  const at = (n: number): string => `${half.board}:${half.connector}.${beside(keyAt, n)}`;
  const name = `${half.board.slice(3)}.${half.connector}`;
  const lamps = half.outputs.flat();
  const columns = { supply: "sup.lamp", max_drop_pct: 5 } as const;
  const feed = w.net(`lf.${name}`, "lamp", `lamp feed ${name}`, `灯供电 ${name}`, {
    ...columns,
    volts: 12,
    amps: Math.round(100 * lamps.reduce((sum, lamp) => sum + ampsOf(lamp), 0)) / 100,
    shape: "chain",
    source: at(1),
    wire_type: "hu-22",
  });
  w.end(feed, half.harness, at(1));
  const passed = new Set<string>();
  const passThrough = (net: string, [inline, harness]: readonly [string, string]): void => {
    const key = `${inline} ${net}`;
    if (!passed.has(key)) w.through(inline, net, half.harness, harness);
    passed.add(key);
  };
  half.outputs.forEach((output, i) => {
    const members = typeof output === "string" ? [output] : output;
    const first = members[0] ?? "";
    const label = labelOfAll(members);
    const net = w.net(`lo.${name}.${i + 1}`, "lamp", label.en, label.zh, {
      ...columns,
      volts: 12,
      amps: Math.round(100 * members.reduce((sum, lamp) => sum + ampsOf(lamp), 0)) / 100,
      shape: "chain",
      source: at(i + 2),
      wire_type: "hu-24",
    });
    w.end(net, half.harness, at(i + 2));
    if (first.startsWith("bd.strip")) {
      wireStrips(w, half.harness, feed, net, at(i + 2), members, i === half.outputs.length - 1);
      return;
    }
    for (const lamp of members) {
      const beyond = BEYOND.get(lamp);
      if (beyond !== undefined) {
        passThrough(feed, beyond);
        passThrough(net, beyond);
      }
      const harness = beyond?.[1] ?? half.harness;
      w.end(feed, harness, `${lamp}:a`);
      w.end(net, harness, `${lamp}:k`);
    }
  });
  for (let n = half.outputs.length + 1; n <= (half.key === "lamp4.j5" ? 4 : 8); n += 1)
    w.spare(at(n + 1), "output for a later lamp");
}

/** Strips pass the zone on to the next of their zone, and the feed on to the next of their half of the board. */
function wireStrips(
  w: Wiring,
  harness: string,
  feed: string,
  net: string,
  source: string,
  strips: readonly string[],
  lastZone: boolean,
): void {
  const last = strips.at(-1);
  const through = (cavity: number, end: string | undefined): string[] =>
    strips.flatMap((strip) =>
      strip === end ? [`${strip}:j1.${cavity}`] : [`${strip}:j1.${cavity}`, `${strip}:j2.${cavity}`],
    );
  w.end(net, harness, ...through(2, last));
  w.order(net, harness, [source, ...through(2, last)], "The zone runs from strip to strip.");
  w.spare(`${last}:j2.2`, "last strip of its zone");
  w.end(feed, harness, ...through(1, lastZone ? last : undefined));
  if (lastZone) w.spare(`${last}:j2.1`, "last strip of its board");
}

/** Wires every lamp: an output of its own or of its string, and a feed chained along the lamps of one half. */
export function wireLamps(w: Wiring): void {
  for (const half of HALVES) wireHalf(w, half);
}
