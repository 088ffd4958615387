import type { BookRow } from "@pinwright/book";
import type { SomeTables } from "./book.ts";
import { createWiring, type TestWiring } from "./wiring.ts";

type Element = BookRow<"elements">;

/** An element of a board or a device of a test: kind, from, to and further cells. */
type TestElement = readonly [Element["kind"], string, string, Partial<Element>?];

export interface TestPoints {
  /** Elements of each board by its id; a board `psu` with 48 V at `j1.1` and 0 V at `j1.2` is always there. */
  readonly boards: Readonly<Record<string, readonly TestElement[]>>;
  /** Elements of each device by its id, between its terminals `1`, `2` and `3`. */
  readonly devices: Readonly<Record<string, readonly TestElement[]>>;
  /** Points of each net, in one harness; `48` and `0` begin at the supply. */
  readonly nets: Readonly<Record<string, readonly string[]>>;
  readonly netRows?: TestWiring["netRows"];
  readonly boardRows?: Readonly<Record<string, Partial<BookRow<"boards">>>>;
  readonly more?: SomeTables;
}

/** Ways of the connectors `j1` to `j4` of every board. */
const WAYS = 8;

/** A small machine to trace: boards and devices, each of a type of its own, with the elements given. */
export function createPoints(points: TestPoints): SomeTables {
  const { boards, devices, nets, netRows = {}, boardRows = {}, more = {} } = points;
  const connectors = { j1: WAYS, j2: WAYS, j3: WAYS, j4: WAYS };
  const elements = (typed: "board_type" | "device_type", id: string, list: readonly TestElement[]) =>
    list.map(([kind, from, to, cells = {}], i) => ({
      id: `el.${id}.${i}`,
      [typed]: typed === "board_type" ? `t.${id}` : `d.${id}`,
      kind,
      from,
      to,
      ...cells,
    }));
  const joined = (net: string, list: readonly string[]): readonly string[] =>
    net === "48" ? ["psu:j1.1", ...list] : net === "0" ? ["psu:j1.2", ...list] : list;
  const made = createWiring({
    boards: [
      { id: "psu", x: 10, y: 10, connectors, sources: [["j1.1", "j1.2"]] },
      ...Object.keys(boards).map((id, i) => ({ id, x: 100 + 60 * i, y: 10, connectors })),
    ],
    nets: Object.fromEntries(Object.entries(nets).map(([net, list]) => [net, { h1: joined(net, list) }])),
    netRows: { "48": { volts: 48, class: "coil" }, "0": { volts: 0, class: "coil" }, ...netRows },
    more: {
      ...more,
      device_types: Object.keys(devices).map((id) => ({
        id: `d.${id}`,
        class: "other",
        width_mm: 10,
        depth_mm: 10,
      })),
      terminals: Object.keys(devices).flatMap((id) =>
        ["1", "2", "3"].map((terminal) => ({ device_type: `d.${id}`, terminal, family: "lug" })),
      ),
      devices: Object.keys(devices).map((id, i) => ({
        id,
        type: `d.${id}`,
        panel: "pf",
        side: "under",
        x_mm: 50 + 20 * i,
        y_mm: 300,
      })),
      elements: [
        ...Object.entries(boards).flatMap(([id, list]) => elements("board_type", id, list)),
        ...Object.entries(devices).flatMap(([id, list]) => elements("device_type", id, list)),
      ],
    },
  });
  return {
    ...made,
    boards: (made.boards ?? []).map((row) => ({ ...row, ...boardRows[row.id ?? ""] })),
  };
}
