import { compareText } from "@pinwright/kernel";
import type { Machine, PlacedElement } from "../../model/index.ts";
import { type Conductors, type Control, conductors, type Traced, traces } from "../program/index.ts";

/** A line of a switch matrix: a column, which a driver selects, or a row, which an input reads. */
export interface MatrixLine {
  /** Net of the line, the first in code-point order where a line has several. */
  readonly id: string;
  readonly conductor: number;
  /** The driver of a column, the input of a row. */
  readonly control: PlacedElement;
  /** The board's point of the line. */
  readonly pointId: string;
  /**
   * Of a column: the way that the current takes through a switch while it is selected. A driver that pulls down takes
   * it from the row, one that pulls up gives it to the row.
   */
  readonly current: "row-to-column" | "column-to-row";
}

/** A switch at a crossing of a column and a row. */
export interface Crossing {
  /** Placed element of the contact. */
  readonly id: string;
  readonly itemId: string;
  /** Index of its column and of its row. */
  readonly column: number;
  readonly row: number;
  /** A diode in series, that lets the selecting current through or stops it. */
  readonly diode: "none" | "with" | "against";
  /** Points at which the switch, with what lies in series, hangs on its lines. */
  readonly columnPointId: string;
  readonly rowPointId: string;
}

/** Switches that are read through columns and rows: each crossing holds at most one. */
export interface SwitchMatrix {
  /** The board that reads, with the board that selects where it is another one. */
  readonly id: string;
  readonly columns: readonly MatrixLine[];
  readonly rows: readonly MatrixLine[];
  /** In code-point order of their ids. */
  readonly crossings: readonly Crossing[];
}

/** A contact with the driver and the input between which it lies. */
interface Found {
  readonly traced: Traced;
  readonly driver: Control;
  readonly input: Control;
}

/**
 * The switch matrices of a machine, found from elements and nets alone: a contact that leads to a driver on one side
 * and to an input on the other lies at a crossing. Further lines are the drivers and inputs of the same boards, with
 * the same common, that have a net and nothing else on it.
 */
export function switchMatrices(machine: Machine): readonly SwitchMatrix[] {
  const c = conductors(machine);
  const groups = new Map<string, Found[]>();
  for (const traced of traces(machine).values()) {
    const found = asCrossing(traced);
    if (found === null) continue;
    const id = matrixId(found);
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [found]);
    else group.push(found);
  }
  return [...groups]
    .sort(([a], [b]) => compareText(a, b))
    .map(([id, group]) => {
      const columns = linesOf(
        machine,
        c,
        group.map((f) => f.driver),
      );
      const rows = linesOf(
        machine,
        c,
        group.map((f) => f.input),
      );
      return { id, columns, rows, crossings: group.flatMap((f) => crossingOf(c, f, columns, rows) ?? []) };
    })
    .map((matrix) => ({
      ...matrix,
      crossings: matrix.crossings.sort((a, b) => compareText(a.id, b.id)),
    }));
}

function asCrossing(traced: Traced): Found | null {
  if (traced.element.row.kind !== "contact") return null;
  const of = (kind: "driver" | "input"): readonly Control[] =>
    traced.controls.filter(
      ({ element }) => element.row.kind === kind && element.itemId !== traced.element.itemId,
    );
  // With a diode the wrong way round a neighbour's line can be reached too: the nearer one is the switch's own.
  const pairs = of("driver").flatMap((driver) =>
    of("input").flatMap((input) => (input.side === driver.side ? [] : [{ traced, driver, input }])),
  );
  const far = ({ driver, input }: Found): number => driver.passed + input.passed;
  return pairs.sort((a, b) => far(a) - far(b))[0] ?? null;
}

const matrixId = ({ driver, input }: Found): string =>
  input.element.itemId === driver.element.itemId
    ? input.element.itemId
    : `${input.element.itemId}+${driver.element.itemId}`;

/** The lines of the controls that switches were found on, and the idle ones beside them. */
function linesOf(machine: Machine, c: Conductors, controls: readonly Control[]): readonly MatrixLine[] {
  const lines = new Map<number, MatrixLine>();
  const add = (control: PlacedElement, end: "from" | "to", pointId: string): void => {
    const conductor = c.of.get(pointId) ?? -1;
    const id = c.nets[conductor]?.[0]?.id;
    const current = end === "from" ? "row-to-column" : "column-to-row";
    if (id !== undefined && !lines.has(conductor))
      lines.set(conductor, { id, conductor, control, pointId, current });
  };
  const sorted = [...controls].sort((a, b) => compareText(a.element.id, b.element.id));
  for (const { element, end, pointId } of sorted) add(element, end, pointId);
  for (const { element, end, pointId } of idleBeside(machine, c, sorted)) add(element, end, pointId);
  return [...lines.values()].sort((a, b) => compareText(a.control.id, b.control.id));
}

/** Controls of the same kind, board and common as one that is used, whose point is in a net with nothing else on it. */
function idleBeside(
  machine: Machine,
  c: Conductors,
  used: readonly Control[],
): readonly Pick<Control, "element" | "end" | "pointId">[] {
  const common = (element: PlacedElement, end: "from" | "to"): string =>
    `${element.itemId} ${element.row.kind} ${end} ${c.of.get(end === "from" ? element.toPointId : element.fromPointId)}`;
  const ends = new Map(used.map(({ element, end }) => [common(element, end), end]));
  return machine.elements.flatMap((element) => {
    if (element.row.kind !== "driver" && element.row.kind !== "input") return [];
    const end = ends.get(common(element, "from")) ?? ends.get(common(element, "to"));
    if (end === undefined || ends.get(common(element, end)) === undefined) return [];
    const pointId = end === "from" ? element.fromPointId : element.toPointId;
    const alone = (c.terminals[c.of.get(pointId) ?? -1] ?? []).every(
      (t) => t.element.itemId === element.itemId,
    );
    return alone ? [{ element, end, pointId }] : [];
  });
}

function crossingOf(
  c: Conductors,
  { traced, driver, input }: Found,
  columns: readonly MatrixLine[],
  rows: readonly MatrixLine[],
): Crossing | null {
  const { element } = traced;
  const lineOf = (lines: readonly MatrixLine[], control: Control): number =>
    lines.findIndex((line) => line.conductor === c.of.get(control.pointId));
  const column = lineOf(columns, driver);
  const row = lineOf(rows, input);
  const line = columns[column];
  const way = (control: Control): Chain | null =>
    chainTo(c, element, control.side, c.of.get(control.pointId) ?? -1);
  const toColumn = way(driver);
  const toRow = way(input);
  if (line === undefined || row < 0 || toColumn === null || toRow === null) return null;
  // A diode lets current out towards its cathode: towards the column for a column that pulls down.
  const outOfColumn = line.current === "row-to-column";
  const stops = [
    ...toColumn.diodes.map((outward) => outward !== outOfColumn),
    ...toRow.diodes.map((outward) => outward === outOfColumn),
  ];
  return {
    id: element.id,
    itemId: element.itemId,
    column,
    row,
    diode: stops.length === 0 ? "none" : stops.includes(true) ? "against" : "with",
    columnPointId: toColumn.pointId,
    rowPointId: toRow.pointId,
  };
}

/** What lies in series between a contact and a line. */
interface Chain {
  /** Point on the line. */
  readonly pointId: string;
  /** For each diode whether it lets current out of the contact. */
  readonly diodes: readonly boolean[];
}

/** At most so many elements in series between a contact and its line. */
const LONGEST_CHAIN = 6;

function chainTo(c: Conductors, contact: PlacedElement, side: "from" | "to", line: number): Chain | null {
  const pointId = side === "from" ? contact.fromPointId : contact.toPointId;
  const start = c.of.get(pointId) ?? -1;
  const seen = new Set([start]);
  let fringe: { readonly at: number; readonly chain: Chain }[] = [
    { at: start, chain: { pointId, diodes: [] } },
  ];
  for (let step = 0; step <= LONGEST_CHAIN; step++) {
    const there = fringe.find(({ at }) => at === line);
    if (there !== undefined) return there.chain;
    fringe = fringe.flatMap(({ at, chain }) =>
      (c.terminals[at] ?? []).flatMap((t) => {
        const { kind } = t.element.row;
        if ((kind !== "diode" && kind !== "resistor" && kind !== "fuse") || seen.has(t.other)) return [];
        seen.add(t.other);
        const far = t.end === "from" ? t.element.toPointId : t.element.fromPointId;
        const diodes = kind === "diode" ? [...chain.diodes, t.end === "from"] : chain.diodes;
        return [{ at: t.other, chain: { pointId: far, diodes } }];
      }),
    );
  }
  return null;
}
