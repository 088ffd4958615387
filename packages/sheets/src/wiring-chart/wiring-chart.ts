import type { LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { type Circuit, circuitsOf, type Power, powerOf, type SupplyNode } from "../circuits/index.ts";
import { colourKeyOf } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Grid } from "../compose/grid.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import type { TableColumn } from "../compose/table.ts";
import { type TreeLine, treeTable } from "../compose/tree-table.ts";
import { ampsText, itemName, percentText, supplyName, supplyTitle } from "../machine-facts.ts";
import { composeMachineListing } from "../machine-listing.ts";
import type { SheetOptions } from "../options.ts";
import { type FuseFacts, fuseName, fusesOf, ratingText } from "../supply-schedule/fuses.ts";
import { type ChartContext, type ChartRow, chartRows, treeRow } from "./rows.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** A circuit with its number, heading and rows. */
export interface Charted {
  readonly number: string;
  readonly title: string;
  readonly detail: string;
  readonly rows: readonly ChartRow[];
}

/** A circuit lower than this is not broken over two pages. */
const WHOLE_MM = 115;

/** Every circuit from its feed over wires and parts to its return, as an owner follows it with a meter. */
export function composeWiringChart(line: LineResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const charted = chartOf(line, language);
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  return composeMachineListing(line, options, {
    kind: "wiring-chart",
    paper: "a4-landscape",
    facts: [
      say(language, (w) => w.machine.circuits(charted.length), " · "),
      say(language, (w) => w.common.wires(wires.length), " · "),
    ],
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.machine.chart.powerOff),
        widthMm,
        TEXT.normal,
        true,
      ),
      paragraph(
        words((w) => `${w.machine.chart.hint} ${w.machine.chart.voltsRule}`),
        widthMm,
        TEXT.small,
      ),
      colourKeyOf(wires, language, widthMm),
      ...treeTable(chartColumns(words), charted.flatMap(chartLines), widthMm, {
        continued: words((w) => w.common.continued),
        keepMm: WHOLE_MM,
      }),
    ],
    grids: [chartGrid(charted, language)],
  });
}

/** Columns of a chart. */
export function chartColumns(words: Say): TableColumn[] {
  return [
    { header: words((w) => w.common.from), heightMm: TEXT.small },
    { header: words((w) => w.common.wire), weight: "bold", whole: true, align: "end" },
    { header: words((w) => w.common.colour), weight: "bold", whole: true },
    { header: words((w) => w.common.gauge), heightMm: TEXT.small, whole: true },
    { header: words((w) => w.common.to) },
    { header: words((w) => w.machine.chart.there), heightMm: TEXT.small, grow: true },
    { header: words((w) => w.machine.chart.volts), align: "end", whole: true },
  ];
}

/** A circuit as it is set. */
export function chartLines({ number, title, detail, rows }: Charted): readonly TreeLine[] {
  return [{ heading: `${number}   ${title}`, detail }, ...rows.map(treeRow)];
}

/** All circuits of a machine with their numbers: supplies 1, 2, …; their fuses 1.1, 1.2, …; then the others. */
export function chartOf(line: LineResult, language: SheetLanguage): readonly Charted[] {
  const power = powerOf(line);
  const { ratings } = line;
  const facts = new Map(
    power.supplies
      .flatMap((node) => fusesOf(node, ratings.fuses))
      .map((fuse) => [fuse.node.element.id, fuse] as const),
  );
  const circuits = circuitsOf(line, power.graph, power.rails, power.supplies);
  const numbers = numbersOf(circuits);
  const ofFuse = new Map(
    circuits.flatMap((circuit, i) =>
      circuit.of.kind === "fuse" ? [[circuit.of.fuse.element.id, numbers[i] ?? ""] as const] : [],
    ),
  );
  return circuits.map((circuit, i): Charted => {
    const number = numbers[i] ?? "";
    const context: ChartContext = {
      line,
      language,
      fuseText: (id) => {
        const fuse = facts.get(id);
        return fuse === undefined
          ? null
          : `${fuseName(line, fuse, language)}, ${ratingText(fuse, language).split("\n").join(" ")}`;
      },
      circuitOf: (id) => {
        const own = ofFuse.get(id) ?? null;
        return own === number ? null : own;
      },
      voltsAt: voltsReader(line, power, circuit),
    };
    return { number, ...headingOf(line, circuit, facts, language), rows: circuitRows(context, circuit) };
  });
}

/** `3` for a supply or what stands by itself, `3.2` for the second fuse of supply 3. */
function numbersOf(circuits: readonly Circuit[]): readonly string[] {
  let whole = 0;
  let part = 0;
  return circuits.map(({ of }) => {
    if (of.kind === "fuse") return `${whole}.${++part}`;
    part = 0;
    return String(++whole);
  });
}

/** Volts with nothing switched on, on what a supply feeds; none on mains, where nobody need measure. */
function voltsReader(line: LineResult, { graph, rails }: Power, { of }: Circuit): ChartContext["voltsAt"] {
  if (of.kind !== "supply" && of.kind !== "fuse") return () => null;
  return (pointId) => {
    const at = graph.conductorOf.get(pointId) ?? -1;
    const fed = rails.fed.get(at);
    if (fed === undefined || isMains(line, fed.supplyId)) return null;
    return line.electric.volts.get(pointId)?.nominal ?? null;
  };
}

/** Whether a supply's own nets are of class mains. */
function isMains(line: LineResult, supplyId: string): boolean {
  return line.machine.book.tables.nets.some((net) => net.supply === supplyId && net.class === "mains");
}

function circuitRows(context: ChartContext, { of, feed, returns }: Circuit): readonly ChartRow[] {
  const title = (choose: Parameters<typeof say>[1]): string => say(context.language, choose, " · ");
  const rows = feed.flatMap((stop) =>
    chartRows(
      context,
      stop,
      title(({ machine: { chart } }) =>
        of.kind === "earth"
          ? chart.earthOf(stop.pointId)
          : of.kind === "supply" || of.kind === "fuse"
            ? chart.feedOf(stop.pointId)
            : chart.from(stop.pointId),
      ),
    ),
  );
  const back = returns.flatMap((stop) =>
    chartRows(
      context,
      stop,
      title((w) => w.machine.chart.returns(stop.pointId)),
    ),
  );
  return [...rows, ...back];
}

function headingOf(
  line: LineResult,
  { of, returns }: Circuit,
  facts: ReadonlyMap<string, FuseFacts>,
  language: SheetLanguage,
): { readonly title: string; readonly detail: string } {
  const words: Say = (choose) => say(language, choose, " · ");
  switch (of.kind) {
    case "supply":
      return supplyHeading(line, of.node, language);
    case "fuse": {
      const fuse = facts.get(of.fuse.element.id);
      if (fuse === undefined) return { title: of.fuse.element.id, detail: "" };
      const detail = [
        of.fuse.row?.part ?? "",
        fuseLoad(line, fuse),
        returns.length === 0 ? words((w) => w.machine.chart.sharedReturn) : "",
      ];
      return {
        title: `${fuseName(line, fuse, language)} · ${ratingText(fuse, language).split("\n").join(" ")}`,
        detail: detail.filter((t) => t !== "").join("\n"),
      };
    }
    case "earth":
      return { title: words((w) => w.machine.chart.earth), detail: "" };
    case "board": {
      const { board } = of;
      const address = board.address === null ? "" : String(board.address);
      const name = itemName(line, board.id, language);
      return { title: words((w) => w.machine.chart.board(name, address)), detail: board.id };
    }
    case "other":
      return { title: words((w) => w.machine.chart.other), detail: "" };
  }
}

function supplyHeading(
  line: LineResult,
  { supply, fromSupplyId }: SupplyNode,
  language: SheetLanguage,
): { readonly title: string; readonly detail: string } {
  const from =
    fromSupplyId === null
      ? ""
      : say(language, (w, l) => w.machine.schedule.madeFrom(supplyName(line, fromSupplyId, l)), " · ");
  return {
    title: `${supplyTitle(line, supply.id, language)}, ${shortNumber(supply.rated_a, 2)} A`,
    detail: [supply.id, from].filter((t) => t !== "").join(" · "),
  };
}

/** `3.9 A rms, 62 %`. */
function fuseLoad(line: LineResult, { node }: FuseFacts): string {
  const carried = line.electric.elements.get(node.element.id);
  if (carried === undefined) return "";
  const rated = node.row?.rated_a ?? node.element.row.amp ?? 0;
  const share = rated > 0 ? `, ${percentText(carried.rmsA.most / rated)}` : "";
  return `${ampsText(carried.rmsA.most)} A rms${share}`;
}

/** The chart for a spreadsheet, a row for each wire and part. */
function chartGrid(charted: readonly Charted[], language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const { chart } = w.machine;
  return {
    name: w.kinds["wiring-chart"],
    header: [
      chart.circuit,
      "",
      chart.step,
      w.common.from,
      w.common.wire,
      w.common.colour,
      w.common.gauge,
      w.common.to,
      chart.what,
      chart.there,
      chart.volts,
    ],
    rows: charted.flatMap(({ number, title, rows }) =>
      rows.map((row) => [
        number,
        title,
        row.depth,
        row.from,
        row.wire?.number ?? "",
        row.wire?.colour ?? "",
        row.wire?.gauge ?? "",
        row.to,
        row.name,
        row.there,
        row.volts === null ? "" : Math.round(row.volts * 100) / 100,
      ]),
    ),
  };
}
