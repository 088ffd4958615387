import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { Branch, Stop } from "../circuits/index.ts";
import { say } from "../compose/say.ts";
import type { TreeRow } from "../compose/tree-table.ts";
import { gaugeText, wireNo } from "../facts.ts";
import { elementText, itemName, voltsText } from "../machine-facts.ts";

/** What the rows of a chart need to know beside the circuit. */
export interface ChartContext {
  readonly line: LineResult;
  readonly language: SheetLanguage;
  /** Name of a fuse, and its rating, by its element; null for what is no fuse. */
  readonly fuseText: (elementId: string) => string | null;
  /** Number of a fuse's own circuit. */
  readonly circuitOf: (elementId: string) => string | null;
  /** Volts to be read at a point; null where none are given. */
  readonly voltsAt: (pointId: string) => number | null;
}

/** A row of a chart as values, for paper and spreadsheet. */
export interface ChartRow {
  readonly depth: number;
  readonly begins: boolean;
  readonly from: string;
  /** Null for the row of an element. */
  readonly wire: { readonly number: string; readonly colour: string; readonly gauge: string } | null;
  readonly to: string;
  /** Name of the item at the far end, or of the element's. */
  readonly name: string;
  readonly there: string;
  readonly volts: number | null;
  /** Start of a tree. */
  readonly isRoot: boolean;
}

const MOST_LEAVES = 4;

const localId = (pointId: string): string => pointId.slice(pointId.indexOf(":") + 1);

/** Where one comes to, in a few words: circuits that begin there, and what drives, reads, draws or gives there. */
function thereText(context: ChartContext, stop: Stop): string {
  const { language } = context;
  const circuits = stop.leaves.flatMap(({ element }) => context.circuitOf(element.id) ?? []);
  const others = stop.leaves.flatMap(({ element, pointId }) => {
    if (context.circuitOf(element.id) !== null) return [];
    const at = pointId === stop.pointId ? "" : `${localId(pointId)} `;
    return [`${at}${context.fuseText(element.id) ?? elementText(element, language)}`];
  });
  const unlike = [...new Set(others)];
  const shown = unlike.length <= MOST_LEAVES ? unlike : unlike.slice(0, MOST_LEAVES - 1);
  const rest = unlike.length - shown.length;
  return [
    ...shown,
    ...(rest === 0 ? [] : [say(language, (w) => w.machine.more(rest), " · ")]),
    ...(circuits.length === 0
      ? []
      : [say(language, (w) => w.machine.chart.ownCircuits(circuits.join(", ")), " · ")]),
  ].join("; ");
}

function branchRow(context: ChartContext, branch: Branch, depth: number, begins: boolean): ChartRow {
  const { line, language } = context;
  const { step, fromPointId, to } = branch;
  const there = branch.closes ? say(language, (w) => w.machine.chart.joins, " · ") : thereText(context, to);
  const itemId = (pointId: string): string => line.machine.points.get(pointId)?.itemId ?? "";
  const shared = { depth, begins, from: fromPointId, to: to.pointId, isRoot: false };
  if (step.kind === "wire") {
    const { wire, harness } = step.laid;
    const id = itemId(to.pointId);
    return {
      ...shared,
      wire: { number: wireNo(harness, wire.number), colour: wire.colour, gauge: gaugeText(wire.wireType) },
      name: id === "" ? "" : itemName(line, id, language),
      there,
      volts: context.voltsAt(to.pointId),
    };
  }
  const { element } = step;
  const fuse = context.fuseText(element.id);
  const own = fuse === null ? elementText(element, language) : "";
  return {
    ...shared,
    wire: null,
    name: fuse ?? itemName(line, element.itemId, language),
    there: [own, there].filter((t) => t !== "").join("; "),
    volts: null,
  };
}

/** Rows that a branch takes with all behind it. */
function sizeOf({ to }: Branch): number {
  return to.branches.reduce((sum, branch) => sum + sizeOf(branch), 1);
}

/**
 * Branches of a stop as rows: the ones with little behind them first, each a step in; the one with most behind it
 * last and straight below, so that a chain stays a straight line.
 */
function* rowsOf(context: ChartContext, stop: Stop, depth: number): Generator<ChartRow, void> {
  const sizes = new Map(stop.branches.map((branch) => [branch, sizeOf(branch)]));
  const main = stop.branches.reduce<Branch | null>(
    (most, branch) => (most === null || (sizes.get(branch) ?? 0) >= (sizes.get(most) ?? 0) ? branch : most),
    null,
  );
  for (const branch of stop.branches) {
    if (branch === main) continue;
    yield branchRow(context, branch, depth + 1, true);
    yield* rowsOf(context, branch.to, depth + 1);
  }
  if (main === null) return;
  yield branchRow(context, main, depth, false);
  yield* rowsOf(context, main.to, depth);
}

/** A tree as rows, its start first. @param title what the start is, in words */
export function chartRows(context: ChartContext, stop: Stop, title: string): readonly ChartRow[] {
  return [
    {
      depth: 0,
      begins: true,
      from: stop.pointId,
      wire: null,
      to: stop.pointId,
      name: title,
      there: thereText(context, stop),
      volts: context.voltsAt(stop.pointId),
      isRoot: true,
    },
    ...rowsOf(context, stop, 0),
  ];
}

/** A row as it is set on paper. */
export function treeRow(row: ChartRow): TreeRow {
  const { depth, begins } = row;
  if (row.isRoot) return { depth, begins, content: { text: row.name, detail: row.there } };
  if (row.wire === null)
    return {
      depth,
      begins,
      content: {
        text: [row.name, row.there].filter((t) => t !== "").join(" · "),
        detail: `${row.from} → ${localId(row.to)}`,
      },
    };
  return {
    depth,
    begins,
    content: [
      row.from,
      row.wire.number,
      row.wire.colour,
      row.wire.gauge,
      row.to,
      [row.name, row.there].filter((t) => t !== "").join("; "),
      row.volts === null ? "" : voltsText(row.volts),
    ],
  };
}
