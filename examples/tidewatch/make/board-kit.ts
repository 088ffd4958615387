import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { inCarrier } from "./board-carriers.ts";

/** A cavity as the author writes it: what it carries, its class and limit; `-` is spare, `key` is blocked. */
export type PinWritten =
  | "-"
  | "key"
  | { readonly label: string; readonly class: BookRow<"nets">["class"]; readonly maxA: number };

export interface ConnectorWritten {
  readonly name: string;
  readonly label: string;
  readonly family: string;
  readonly rows?: number;
  /** Place of pin 1 in the board's frame, and the direction of pin 2. */
  readonly at: readonly [xMm: number, yMm: number, rotationDeg?: number];
  readonly pins: readonly PinWritten[];
}

type ElementWritten = Partial<BookRow<"elements">> & Pick<BookRow<"elements">, "kind" | "from" | "to">;

export interface BoardTypeWritten {
  /** Name without `bt.`. */
  readonly name: string;
  readonly label: string;
  readonly labelZh: string;
  readonly purpose: string;
  readonly purposeZh: string;
  readonly sizeMm: readonly [widthMm: number, depthMm: number, heightMm: number];
  readonly standoffMm?: number;
  /** Fixing holes; 4 mm from the corners where none are given. */
  readonly holes?: readonly (readonly [x: number, y: number])[];
  readonly connectors: readonly ConnectorWritten[];
  readonly elements: readonly ElementWritten[];
}

export const pin = (label: string, cls: BookRow<"nets">["class"], maxA: number): PinWritten => ({
  label,
  class: cls,
  maxA,
});

/** Several like cavities, numbered from `first`. */
export const pinRow = (
  label: string,
  count: number,
  cls: BookRow<"nets">["class"],
  maxA: number,
  first = 1,
): PinWritten[] => Array.from({ length: count }, (_, i) => pin(`${label} ${first + i}`, cls, maxA));

export const link = (from: string, to: string): ElementWritten => ({ kind: "link", from, to });
/** Links like pins of two connectors: power and data that a board passes on. */
export const linkAll = (a: string, b: string, pins: readonly number[]): ElementWritten[] =>
  pins.map((n) => link(`${a}.${n}`, `${b}.${n}`));
export const load = (from: string, to: string, volt: number, amp: number): ElementWritten => ({
  kind: "load",
  from,
  to,
  volt,
  amp,
});
export const driver = (from: string, to: string, amp: number, control: string): ElementWritten => ({
  kind: "driver",
  from,
  to,
  amp,
  control,
});
export const input = (from: string, to: string, control: string): ElementWritten => ({
  kind: "input",
  from,
  to,
  control,
});
export const fuse = (from: string, to: string, amp: number, control = ""): ElementWritten => ({
  kind: "fuse",
  from,
  to,
  amp,
  control,
});
export const resistor = (from: string, to: string, ohm: number, control = ""): ElementWritten => ({
  kind: "resistor",
  from,
  to,
  ohm,
  control,
});

/** Current at 12 V of a node's processor and bus driver. */
const NODE_LOAD_A = 0.05;

/**
 * The two bus connectors of a node, alike so that either may be the incoming one: 12 V, 0 V, key, data pair.
 * They stand at the two ends of the board's lower edge.
 */
export const busConnectors = (widthMm: number): ConnectorWritten[] =>
  [
    { name: "j1", at: [8, 4] as const },
    { name: "j2", at: [widthMm - 18, 4] as const },
  ].map(({ name, at }) => ({
    name,
    label: "bus",
    family: "s250",
    at,
    pins: [
      pin("+12 V bus", "logic", 3),
      pin("0 V bus", "logic", 3),
      "key",
      pin("D+", "data", 0.1),
      pin("D−", "data", 0.1),
    ],
  }));

/** What every node has between its bus pins. */
export const busElements = (): ElementWritten[] => [
  ...linkAll("j1", "j2", [1, 2, 4, 5]),
  load("j1.1", "j1.2", 12, NODE_LOAD_A),
  input("j1.4", "j1.5", "bus"),
];

/** A board that is narrower than this has one hole at each end: two stand-offs beside each other would split the wood. */
const NARROW_MM = 20;

/** Holes 4 mm from the corners, or from the ends. */
const cornerHoles = (w: number, d: number): string =>
  (d < NARROW_MM
    ? [
        [4, d / 2],
        [w - 4, d / 2],
      ]
    : [
        [4, 4],
        [w - 4, 4],
        [w - 4, d - 4],
        [4, d - 4],
      ]
  )
    .map((at) => at.join(","))
    .join(" ");

/** Cavities with a key set in at `keyAt`, from 1. */
export const keyed = (pins: readonly PinWritten[], keyAt: number): PinWritten[] => [
  ...pins.slice(0, keyAt - 1),
  "key",
  ...pins.slice(keyAt - 1),
];
/** Cavity of the `n`th pin (from 1) of a connector whose key is at `keyAt`. */
export const beside = (keyAt: number, n: number): number => (n < keyAt ? n : n + 1);

/** Rows of a set of board types: types, connectors, pins and what joins their points. */
export function boardTypeTopic(written: readonly BoardTypeWritten[]): Topic {
  const connectorId = (b: BoardTypeWritten, name: string): string => `cn.${b.name}.${name}`;
  return {
    tables: {
      board_types: rows(
        "board_types",
        written.map((b) => ({
          id: `bt.${b.name}`,
          label: b.label,
          label_zh: b.labelZh,
          revision: "A",
          purpose: b.purpose,
          purpose_zh: b.purposeZh,
          width_mm: b.sizeMm[0],
          depth_mm: b.sizeMm[1],
          height_mm: b.sizeMm[2],
          standoff_mm: b.standoffMm ?? 10,
          holes: b.holes?.map((at) => at.join(",")).join(" ") ?? cornerHoles(b.sizeMm[0], b.sizeMm[1]),
          part: `pcb.${b.name}`,
          carrier: inCarrier(b.sizeMm[0], b.sizeMm[1]),
        })),
      ),
      connectors: rows(
        "connectors",
        written.flatMap((b) =>
          b.connectors.map((c) => ({
            id: connectorId(b, c.name),
            board_type: `bt.${b.name}`,
            name: c.name,
            label: c.label,
            family: c.family,
            ways: c.pins.length,
            rows: c.rows ?? 1,
            x_mm: c.at[0],
            y_mm: c.at[1],
            rotation_deg: c.at[2] ?? 0,
            housing_part: `housing.${c.family}-${c.pins.length}`,
            mate_part: `header.${c.family}-${c.pins.length}`,
            key_part: c.pins.includes("key") ? `key.${c.family}` : null,
          })),
        ),
      ),
      pins: rows(
        "pins",
        written.flatMap((b) =>
          b.connectors.flatMap((c) =>
            c.pins.map((p, i) => ({
              connector: connectorId(b, c.name),
              pin: i + 1,
              ...(typeof p === "string"
                ? { use: p === "key" ? ("key" as const) : ("spare" as const) }
                : { label: p.label, class: p.class, max_a: p.maxA }),
            })),
          ),
        ),
      ),
      elements: rows(
        "elements",
        written.flatMap((b) =>
          b.elements.map((e, i) => ({
            id: `el.${b.name}.${String(i + 1).padStart(2, "0")}`,
            board_type: `bt.${b.name}`,
            ...e,
          })),
        ),
      ),
    },
  };
}
