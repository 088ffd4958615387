import type { BookRow } from "@pinwright/book";
import type { SomeTables } from "./book.ts";
import { createWiring, type TestInline } from "./wiring.ts";

export interface TestSwitch {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Column and row, from 1. */
  readonly column: number;
  readonly row: number;
  /** A diode within the switch, or one of its own in the wire: `apart`. */
  readonly diode?: "none" | "with" | "against" | "apart";
  readonly number?: number;
}

export interface TestMatrix {
  readonly columns: number;
  readonly rows: number;
  readonly switches: readonly TestSwitch[];
  /** Drivers that pull the column up instead of down. */
  readonly high?: boolean;
  /** The playfield's wires plug into the board's by an in-line connector. */
  readonly inline?: boolean;
  readonly choices?: readonly Partial<BookRow<"choices">>[];
  readonly more?: SomeTables;
}

const SWITCH_TYPES = ["plain", "with", "against", "diode"] as const;

/** Points of a switch on its column and on its row. */
function switchPoints({ id, diode = "none" }: TestSwitch): readonly [string, string] {
  return [`${id}:com`, diode === "with" || diode === "against" ? `${id}:d` : `${id}:no`];
}

/**
 * A machine with one matrix board `mx` at the playfield's lower edge: columns on `j1`, rows on `j2`, 5 V and 0 V on
 * `j3`. Nets are `col.1` …, `row.1` …; a switch is a contact `com`–`no`, with a diode `no`–`d` where it has one.
 */
export function createMatrixTables(matrix: TestMatrix): SomeTables {
  const { columns, rows, switches, high = false, inline = false } = matrix;
  const pins = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);
  const nets: Record<string, Record<string, string[]>> = {
    v5: { "hs.power": ["psu:j1.1", "mx:j3.1"] },
    gnd: { "hs.power": ["psu:j1.2", "mx:j3.2"] },
  };
  const lineOf = (line: string, boardPoint: string, cavity: number): void => {
    nets[line] = inline
      ? { "hs.board": [boardPoint, `il:a.${cavity}`], "hs.field": [`il:b.${cavity}`] }
      : { "hs.field": [boardPoint] };
  };
  for (const c of pins(columns)) lineOf(`col.${c}`, `mx:j1.${c}`, c);
  for (const r of pins(rows)) lineOf(`row.${r}`, `mx:j2.${r}`, columns + r);
  const put = (net: string, point: string): void => {
    nets[net] = { ...nets[net], "hs.field": [...(nets[net]?.["hs.field"] ?? []), point] };
  };
  for (const s of switches) {
    const [columnPoint, rowPoint] = switchPoints(s);
    put(`col.${s.column}`, columnPoint);
    if (s.diode !== "apart") put(`row.${s.row}`, rowPoint);
    else {
      put(`between.${s.id}`, rowPoint);
      put(`between.${s.id}`, `${s.id}.diode:k`);
      put(`row.${s.row}`, `${s.id}.diode:a`);
    }
  }
  const place = (s: TestSwitch) => ({ panel: "pf", side: "under", x_mm: s.x, y_mm: s.y }) as const;
  const typeOf = ({ diode = "none" }: TestSwitch): string =>
    diode === "with" || diode === "against" ? diode : "plain";
  const il: readonly TestInline[] = inline ? [{ id: "il", x: 250, y: 120, ways: columns + rows }] : [];
  return createWiring({
    boards: [
      { id: "mx", x: 230, y: 40, connectors: { j1: columns, j2: rows, j3: 2 } },
      { id: "psu", x: 50, y: 20, connectors: { j1: 2 }, sources: [["j1.1", "j1.2"]] },
    ],
    inlines: il,
    nets,
    netRows: { v5: { volts: 5 }, gnd: { volts: 0 } },
    choices: matrix.choices ?? [],
    more: {
      ...matrix.more,
      device_types: SWITCH_TYPES.map((id) => ({
        id,
        class: id === "diode" ? "other" : "switch",
        width_mm: 20,
        depth_mm: 10,
      })),
      terminals: [
        ...SWITCH_TYPES.filter((type) => type !== "diode").flatMap((device_type) =>
          ["com", "no", "d"].map((terminal) => ({ device_type, terminal, family: "lug" })),
        ),
        ...["a", "k"].map((terminal) => ({ device_type: "diode", terminal, family: "lug" })),
      ],
      devices: [
        ...switches.map((s) => ({ id: s.id, type: typeOf(s), ...place(s), number: s.number ?? null })),
        ...switches
          .filter((s) => s.diode === "apart")
          .map((s) => ({ id: `${s.id}.diode`, type: "diode", ...place(s) })),
        ...(matrix.more?.devices ?? []),
      ],
      elements: [
        ...["plain", "with", "against"].map((device_type) => ({
          id: `el.${device_type}`,
          device_type,
          kind: "contact" as const,
          from: "com",
          to: "no",
        })),
        {
          id: "el.with-d",
          device_type: "with",
          kind: "diode" as const,
          from: high ? "no" : "d",
          to: high ? "d" : "no",
        },
        { id: "el.against-d", device_type: "against", kind: "diode" as const, from: "no", to: "d" },
        { id: "el.diode", device_type: "diode", kind: "diode" as const, from: "a", to: "k" },
        ...pins(columns).map((c) => ({
          id: `el.col-${c}`,
          board_type: "t.mx",
          kind: "driver" as const,
          from: high ? "j3.1" : `j1.${c}`,
          to: high ? `j1.${c}` : "j3.2",
          amp: 0.1,
        })),
        ...pins(rows).map((r) => ({
          id: `el.row-${r}`,
          board_type: "t.mx",
          kind: "input" as const,
          from: `j2.${r}`,
          to: "j3.2",
        })),
        ...(matrix.more?.elements ?? []),
      ],
    },
  });
}
