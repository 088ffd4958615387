import { rows, type Topic } from "./author.ts";

/** Findings that the designer looked at and takes as they are, up to the size that was looked at. */
const BENDS = [
  ["wp.pt-104-388", "hs.light-sling-left", "ln.pt-104-388.pt-106-345", "ln.hole-top-81-145.pt-104-388"],
  ["wp.pt-235-40", "hs.light-front", "ln.hole-top-81-145.pt-235-40", "ln.pt-235-40.pt-150-60"],
  ["wp.pt-84-1058", "hs.light-rear", "ln.pt-84-1058.pt-116-1058", "ln.hole-top-439-1042.pt-84-1058"],
] as const;

const ELECTRIC: readonly (readonly [subject: readonly string[], reason: string, basis: string])[] = [
  [
    ["supply-peak", "sup.48"],
    "Three flippers in the same 40 ms while three coils are held: the supply gives its peak, and the voltage falls by a quarter, to 36 V, for that pulse. A flipper is to reach its stop with 30 V; nothing else hangs on this supply. To be measured on the first machine.",
    "severity<=warning worst_a<=42 limit_a>=30 needed_j<=24 held_j>=1.4",
  ],
  [
    [
      "wire-unprotected",
      "sup.mains",
      "mains.inlet-l|hs.mains|ml.inlet:l|ml.switch:l-in",
      "mains.l|hs.mains|bd.mains:j1.1|ml.filter:l-out",
      "mains.switch-l|hs.mains|ml.filter:l-in|ml.switch:l-out",
    ],
    "1.2 m of 600 V wire in the closed mains box, apart from all other wires, between inlet and fuse board; the house's circuit breaker of at most 16 A opens a short circuit there. To be judged by a licensed electrician with the local code.",
    "severity<=warning wires<=3 length_mm<=1300 held_a<=3200 limit_a>=10",
  ],
];

/** A tail that ends beneath a board, and the loop of harnesses and boards that it is in. */
const LOOPS = [
  ["lp.multi-2", "hs.lamp-word", "bd.lamp-3", "hs.lamp-centre", "bd.lamp-4"],
  ["sw.orbit-right-high", "hs.switch-mid", "bd.lamp-6", "hs.lamp-mid", "bd.flip-upper"],
  ["sw.top-lane-2", "hs.switch-rear", "bd.lamp-7", "hs.lamp-rear", "bd.beacon"],
] as const;

const FASTENING: readonly (readonly [subject: readonly string[], reason: string, basis: string])[] = [
  [
    ["bundle-blocked", "tail:pe.pf-bar", "hs.earth-playfield", "bd.trough-rx"],
    "The earth trunk goes round the end of the receiver board to its bar; the bar's studs take it from that side, and its wires are cut long for that.",
    "severity<=warning extra_mm<=27",
  ],
  ...LOOPS.map(
    ([at, ...subjects]) =>
      [
        ["order-loop", ...subjects],
        "One tail ends beneath the lamp board: it is put on with the board laid aside on its loop, which is long enough for that, and the board is screwed down after.",
        `severity<=warning why=wired at=landing:${at}`,
      ] as const,
  ),
  [
    ["screw-lookalike", "fx.interlock-3", "fx.mains-4", "ft.standoff-10", "ft.standoff-12"],
    "The higher ones are of brass, the lower ones nickelled, and they lie in boxes apart; a board on a wrong one stands 2 mm askew, which shows before it is screwed down.",
    "severity<=note alike_pct<=35",
  ],
];

export const accepted: Topic = {
  tables: {
    choices: rows("choices", [
      ...BENDS.map((subjects) => ({
        kind: "accept" as const,
        subject: ["bend-tight", ...subjects].join("|"),
        by: "designer",
        reason:
          "Two or three thin wires that turn round a lamp post and never move; they are not tied at the turn.",
        basis: "diameter_mm<=3.6",
      })),
      ...[...ELECTRIC, ...FASTENING].map(([subject, reason, basis]) => ({
        kind: "accept" as const,
        subject: subject.join("|"),
        by: "designer",
        reason,
        basis,
      })),
    ]),
  },
};
