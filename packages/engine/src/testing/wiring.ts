import type { BookRow } from "@pinwright/book";
import type { SomeTables } from "./book.ts";

/** A board for a test: connectors by name with their number of ways, placed on panel `pf`. */
export interface TestBoard {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly connectors: Readonly<Record<string, number>>;
  /** Pairs of points that the board joins, as `j1.1`. */
  readonly links?: readonly (readonly [string, string])[];
  readonly sources?: readonly (readonly [string, string])[];
  readonly pins?: readonly Partial<BookRow<"pins">>[];
}

/** A device with two terminals, `1` and `2`. */
export interface TestDevice {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Wires that a terminal takes; blank: 1. */
  readonly takes?: 1 | 2;
}

export interface TestInline {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly ways: number;
}

export interface TestWiring {
  readonly boards?: readonly TestBoard[];
  readonly devices?: readonly TestDevice[];
  readonly inlines?: readonly TestInline[];
  /** Points by harness within each net: `{ v12: { h1: ["psu:j1.1", "drv:j1.1"] } }`. */
  readonly nets: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
  readonly netRows?: Readonly<Record<string, Partial<BookRow<"nets">>>>;
  readonly choices?: readonly Partial<BookRow<"choices">>[];
  /** Further rows, added to those that are made. */
  readonly more?: SomeTables;
}

const FAMILY: Partial<BookRow<"connector_families">> = {
  kind: "housing",
  rated_a: 5,
  rated_v: 250,
  area_min_mm2: 0.2,
  area_max_mm2: 0.8,
  insulation_max_mm: 2.5,
  insulation_min_mm: 1,
  strip_mm: 3.5,
  contact_mohm: 5,
  pitch_mm: 4,
  wires_per_contact: 1,
};

/** Families: `hsg` takes one wire in each cavity, `tab` one on each terminal, `lug` two. */
const FAMILIES: readonly Partial<BookRow<"connector_families">>[] = [
  { ...FAMILY, id: "hsg", latch: true },
  { ...FAMILY, id: "tab", kind: "tab", pitch_mm: null },
  { ...FAMILY, id: "lug", kind: "lug", pitch_mm: null, wires_per_contact: 2, area_max_mm2: 2 },
];

const WIRES: readonly Partial<BookRow<"wire_types">>[] = [
  ["w24", 0.22, 24, 1.4],
  ["w20", 0.52, 20, 1.8],
  ["w18", 0.82, 18, 2.1],
].map(([id, area, awg, od]) => ({
  id: String(id),
  area_mm2: Number(area),
  awg: Number(awg),
  od_mm: Number(od),
  strands: 7,
  strand_mm: 0.2,
  temperature_c: 105,
  volts: 300,
  colours: ["BK", "RD", "BU", "WH", "YE", "GN", "OG", "BN", "VT", "GY", "GNYE"],
}));

/** Tables of a small machine on one panel, each board and device of a type of its own. */
export function createWiring(wiring: TestWiring): SomeTables {
  const { boards = [], devices = [], inlines = [], more = {} } = wiring;
  const harnessIds = [...new Set(Object.values(wiring.nets).flatMap((net) => Object.keys(net)))].sort();
  const element = (
    board: TestBoard,
    kind: BookRow<"elements">["kind"],
    pair: readonly [string, string],
    n: number,
  ): Partial<BookRow<"elements">> => ({
    id: `${kind}-${board.id}-${n}`,
    board_type: `t.${board.id}`,
    kind,
    from: pair[0],
    to: pair[1],
  });
  const made: SomeTables = {
    panels: [
      { id: "pf", purpose: "playfield", width_mm: 500, height_mm: 1000, thickness_mm: 13 },
      { id: "cab", purpose: "cabinet", width_mm: 500, height_mm: 1000, thickness_mm: 18 },
    ],
    connector_families: FAMILIES,
    wire_types: WIRES,
    board_types: boards.map((b) => ({ id: `t.${b.id}`, revision: "A", width_mm: 40, depth_mm: 30 })),
    boards: boards.map((b) => ({
      id: b.id,
      type: `t.${b.id}`,
      panel: "pf",
      side: "under",
      x_mm: b.x,
      y_mm: b.y,
    })),
    connectors: [
      ...boards.flatMap((b) =>
        Object.entries(b.connectors).map(([name, ways]) => ({
          id: `${b.id}-${name}`,
          board_type: `t.${b.id}`,
          name,
          family: "hsg",
          ways,
        })),
      ),
      ...inlines.map((i) => ({ id: `c.${i.id}`, name: "x", family: "hsg", ways: i.ways })),
    ],
    pins: boards.flatMap((b) => b.pins ?? []),
    elements: boards.flatMap((b) => [
      ...(b.links ?? []).map((pair, n) => element(b, "link", pair, n)),
      ...(b.sources ?? []).map((pair, n) => element(b, "source", pair, n)),
    ]),
    device_types: [
      { id: "one", class: "switch", width_mm: 10, depth_mm: 10 },
      { id: "two", class: "lamp", width_mm: 10, depth_mm: 10 },
    ],
    terminals: (["one", "two"] as const).flatMap((type) =>
      ["1", "2"].map((terminal) => ({ device_type: type, terminal, family: type === "one" ? "tab" : "lug" })),
    ),
    devices: devices.map((d) => ({
      id: d.id,
      type: d.takes === 2 ? "two" : "one",
      panel: "pf",
      side: "under",
      x_mm: d.x,
      y_mm: d.y,
    })),
    inlines: inlines.map((i) => ({
      id: i.id,
      connector: `c.${i.id}`,
      panel: "pf",
      side: "under",
      x_mm: i.x,
      y_mm: i.y,
    })),
    harnesses: harnessIds.map((id, n) => ({ id, label: id, number: n + 1 })),
    nets: Object.keys(wiring.nets).map((id) => ({ id, class: "lamp", ...wiring.netRows?.[id] })),
    ends: Object.entries(wiring.nets).flatMap(([net, byHarness]) =>
      Object.entries(byHarness).flatMap(([harness, points]) =>
        points.map((point) => ({ net, harness, point })),
      ),
    ),
    choices: wiring.choices ?? [],
  };
  return merged(made, more);
}

function merged(a: SomeTables, b: SomeTables): SomeTables {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const rows = (tables: SomeTables, name: string): readonly unknown[] =>
    (tables as Readonly<Record<string, readonly unknown[]>>)[name] ?? [];
  return Object.fromEntries(names.map((name) => [name, [...rows(a, name), ...rows(b, name)]]));
}
