import { type Book, type BookRow, withRows } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import {
  type Finding,
  type Machine,
  makeFinding,
  type Optimum,
  type Place,
  straightDistances,
} from "../../model/index.ts";
import { type Conductors, conductors } from "../program/index.ts";
import { assignBoundMm } from "./assign/bound.ts";
import { type Assigned, type AssignProblem, assignedMm, isPossible } from "./assign/problem.ts";
import { type AssignEffort, searchAssignment, usualAssignSteps } from "./assign/search.ts";
import type { Crossing, MatrixLine, SwitchMatrix } from "./find.ts";
import { missingDiodes } from "./ghosts.ts";

type End = BookRow<"ends">;

/** One cell of `ends` that would be another: a switch's point goes to another line's net. */
interface NetChange {
  readonly point: string;
  readonly harness: string;
  readonly from: string;
  readonly to: string;
}

/** A switch that would get another crossing. Lines are told by their nets. */
interface MatrixMove {
  readonly elementId: string;
  readonly itemId: string;
  /** Service number: it stays. */
  readonly number: number | null;
  readonly from: { readonly column: string; readonly row: string };
  readonly to: { readonly column: string; readonly row: string };
}

/** A cheaper assignment of the switches of one matrix, for a person to take or leave. */
export interface MatrixProposal {
  readonly matrixId: string;
  readonly switches: number;
  readonly pinned: number;
  /** Mm of wire of the lines as they are, by the same measure. */
  readonly nowMm: number;
  /** Mm as proposed, with what no assignment can be below. */
  readonly mm: Optimum;
  readonly moves: readonly MatrixMove[];
  readonly changes: readonly NetChange[];
  /** Switches whose missing diode lets a ghost appear, now and as proposed. */
  readonly ghosts: readonly [number, number];
}

/** One end of a switch on a line: the cell that says its net. */
interface Landing {
  readonly point: string;
  readonly harness: string;
  readonly net: string;
  readonly place: Place;
}

const known = (machine: Machine, point: string): readonly End[] =>
  machine.ends.filter((end) => end.point === point);

/** The end of a switch, or null when it cannot move: its point has several ends or other switches hang on it. */
function landingOf(machine: Machine, point: string, shared: ReadonlySet<string>): Landing | null {
  const [end, second] = known(machine, point);
  const place = machine.points.get(point)?.place;
  if (end === undefined || second !== undefined || place === undefined || shared.has(point)) return null;
  return { point, harness: end.harness, net: end.net, place };
}

/** Where a line comes into a harness: its net there, and the housing it comes from. */
interface Feed {
  readonly net: string;
  readonly place: Place;
}

/**
 * Feeds of a line by harness: the board's housing where the board's wire is, else an in-line connector or whatever else
 * does not move. A housing counts as one place: its pins lie nearer to each other than the shop's length step.
 */
function feedsOf(
  machine: Machine,
  c: Conductors,
  line: MatrixLine,
  movable: ReadonlySet<string>,
): ReadonlyMap<string, Feed> {
  const feeds = new Map<string, Feed>();
  const nets = new Set((c.nets[line.conductor] ?? []).map((net) => net.id));
  const rank = ({ point }: End): number => (point === line.pointId ? 0 : 1);
  const fixed = machine.ends.filter((end) => nets.has(end.net) && !movable.has(end.point));
  for (const end of fixed.sort((a, b) => rank(a) - rank(b) || compareText(a.point, b.point))) {
    const place = machine.landings.get(machine.points.get(end.point)?.landingId ?? "")?.place;
    if (place !== undefined && !feeds.has(end.harness)) feeds.set(end.harness, { net: end.net, place });
  }
  return feeds;
}

/** Index of the line that one of the nets of a `matrix` choice names; null when none does. */
function pinnedLine(c: Conductors, lines: readonly MatrixLine[], value: string | null): number | null {
  const names = (value ?? "").split(/\s+/u);
  const index = lines.findIndex((line) =>
    (c.nets[line.conductor] ?? []).some((net) => names.includes(net.id)),
  );
  return index < 0 ? null : index;
}

const choiceOf = (machine: Machine, crossing: Crossing): BookRow<"choices"> | undefined =>
  machine.choices.get("matrix")?.get(crossing.id) ?? machine.choices.get("matrix")?.get(crossing.itemId);

interface Ends {
  readonly crossing: Crossing;
  readonly column: Landing | null;
  readonly row: Landing | null;
}

function endsOf(machine: Machine, matrix: SwitchMatrix): readonly Ends[] {
  const seen = new Set<string>();
  const shared = new Set<string>();
  for (const { columnPointId, rowPointId } of matrix.crossings)
    for (const point of [columnPointId, rowPointId]) {
      if (seen.has(point)) shared.add(point);
      seen.add(point);
    }
  return matrix.crossings.map((crossing) => ({
    crossing,
    column: landingOf(machine, crossing.columnPointId, shared),
    row: landingOf(machine, crossing.rowPointId, shared),
  }));
}

/** What an assignment is found from, and what its lines and sites are in the book. */
interface Posed {
  readonly problem: AssignProblem;
  readonly ends: readonly Ends[];
  readonly feeds: readonly [readonly ReadonlyMap<string, Feed>[], readonly ReadonlyMap<string, Feed>[]];
}

function pose(machine: Machine, matrix: SwitchMatrix): Posed {
  const c = conductors(machine);
  const distance = straightDistances(machine);
  const ends = endsOf(machine, matrix);
  const movable = new Set(ends.flatMap(({ column, row }) => [column?.point ?? "", row?.point ?? ""]));
  const harnesses = new Map<string, number>();
  const group = (landing: Landing | null): number => {
    const id = landing?.harness ?? "";
    const own = harnesses.get(id) ?? harnesses.size;
    harnesses.set(id, own);
    return own;
  };
  const feeds = [matrix.columns, matrix.rows].map((lines) =>
    lines.map((line) => feedsOf(machine, c, line, movable)),
  );
  const [columnFeeds = [], rowFeeds = []] = feeds;
  const side = (which: "column" | "row", ofLines: readonly ReadonlyMap<string, Feed>[]) => ({
    lines: ofLines.map((byHarness, line) => ({
      feedMm: ends.map((end) => {
        const landing = end[which];
        // What cannot move costs the same wherever the others go.
        if (landing === null) return end.crossing[which] === line ? 0 : Number.POSITIVE_INFINITY;
        const feed = byHarness.get(landing.harness);
        return feed === undefined ? Number.POSITIVE_INFINITY : distance(feed.place, landing.place);
      }),
    })),
    mm: ends.map((a) =>
      ends.map((b) => {
        const [from, to] = [a[which], b[which]];
        if (from === null || to === null) return a === b ? 0 : Number.POSITIVE_INFINITY;
        return from.harness === to.harness ? distance(from.place, to.place) : Number.POSITIVE_INFINITY;
      }),
    ),
  });
  const columns = side("column", columnFeeds);
  const rows = side("row", rowFeeds);
  // A switch that cannot move is a harness of its own, so that no chain goes through it.
  const own = (landing: Landing | null, i: number): number =>
    landing === null ? ends.length + i : group(landing);
  const sites = ends.map(({ crossing, column, row }, i) => {
    const value = choiceOf(machine, crossing)?.value ?? null;
    return {
      columnGroup: own(column, i),
      rowGroup: own(row, i),
      column: column === null ? crossing.column : pinnedLine(c, matrix.columns, value),
      row: row === null ? crossing.row : pinnedLine(c, matrix.rows, value),
    };
  });
  return {
    problem: {
      columns: columns.lines,
      rows: rows.lines,
      sites: numbered(sites),
      columnMm: columns.mm,
      rowMm: rows.mm,
    },
    ends,
    feeds: [columnFeeds, rowFeeds],
  };
}

/** Groups numbered from 0, so that a search can keep them in a list. */
function numbered(sites: AssignProblem["sites"]): AssignProblem["sites"] {
  const index = (groups: readonly number[]): ReadonlyMap<number, number> =>
    new Map([...new Set(groups)].map((group, i) => [group, i]));
  const columns = index(sites.map((s) => s.columnGroup));
  const rows = index(sites.map((s) => s.rowGroup));
  return sites.map((site) => ({
    ...site,
    columnGroup: columns.get(site.columnGroup) ?? 0,
    rowGroup: rows.get(site.rowGroup) ?? 0,
  }));
}

/** The problem of assigning the switches of a matrix anew, and how they are assigned now. */
export function matrixProblem(
  machine: Machine,
  matrix: SwitchMatrix,
): { readonly problem: AssignProblem; readonly now: Assigned } {
  return { problem: pose(machine, matrix).problem, now: nowOf(matrix) };
}

const nowOf = ({ crossings }: SwitchMatrix): Assigned => ({
  columnOf: crossings.map((crossing) => crossing.column),
  rowOf: crossings.map((crossing) => crossing.row),
});

/**
 * The cheapest assignment that is found of the switches of a matrix to its crossings, by the wire of its lines, as the
 * cells of `ends` that it would change. Pinned switches (`choices` of kind `matrix`: the switch, and the nets of its
 * column and row, or one of them) keep their lines; a switch moves only to lines that come into its harness. Nothing but
 * nets changes, so that service numbers stay. Null when the pinned switches leave no assignment.
 */
export function proposeMatrix(
  machine: Machine,
  matrix: SwitchMatrix,
  effort?: AssignEffort,
): MatrixProposal | null {
  const { problem, ends, feeds } = pose(machine, matrix);
  const now = nowOf(matrix);
  const found = searchAssignment(problem, now, effort ?? { steps: usualAssignSteps(problem), seed: 1 });
  if (found === null) return null;
  const mm = assignedMm(problem, found);
  const lowerBound = assignBoundMm(problem, mm);
  const changes = ends.flatMap(({ crossing, column, row }, i) => {
    const to = [found.columnOf[i] ?? crossing.column, found.rowOf[i] ?? crossing.row] as const;
    return [column, row].flatMap((landing, k): NetChange[] => {
      const net = landing === null ? undefined : feeds[k]?.[to[k] ?? 0]?.get(landing.harness)?.net;
      return landing === null || net === undefined || net === landing.net
        ? []
        : [{ point: landing.point, harness: landing.harness, from: landing.net, to: net }];
    });
  });
  const crossings = matrix.crossings.map((crossing, i) => ({
    ...crossing,
    column: found.columnOf[i] ?? crossing.column,
    row: found.rowOf[i] ?? crossing.row,
  }));
  return {
    matrixId: matrix.id,
    switches: matrix.crossings.length,
    pinned: problem.sites.filter((site) => site.column !== null || site.row !== null).length,
    nowMm:
      isPossible(problem, now) || fits(problem, now) ? assignedMm(problem, now) : Number.POSITIVE_INFINITY,
    mm: { value: mm, lowerBound, gap: lowerBound > 0 ? mm / lowerBound - 1 : 0 },
    moves: movesOf(machine, matrix, crossings),
    changes: changes.sort((a, b) => compareText(a.point, b.point) || compareText(a.harness, b.harness)),
    ghosts: [missingDiodes(matrix).length, missingDiodes({ ...matrix, crossings }).length],
  };
}

/** Whether every switch is on lines that come to it, whatever is pinned and however many share a crossing. */
const fits = ({ columns, rows }: AssignProblem, { columnOf, rowOf }: Assigned): boolean =>
  columnOf.every((column, i) => Number.isFinite(columns[column]?.feedMm[i])) &&
  rowOf.every((row, i) => Number.isFinite(rows[row]?.feedMm[i]));

function movesOf(
  machine: Machine,
  matrix: SwitchMatrix,
  crossings: readonly Crossing[],
): readonly MatrixMove[] {
  const lines = (crossing: Pick<Crossing, "column" | "row">): MatrixMove["from"] => ({
    column: matrix.columns[crossing.column]?.id ?? "",
    row: matrix.rows[crossing.row]?.id ?? "",
  });
  return matrix.crossings.flatMap((crossing, i) => {
    const to = crossings[i] ?? crossing;
    if (to.column === crossing.column && to.row === crossing.row) return [];
    const item = machine.items.get(crossing.itemId);
    const number = item?.kind === "device" ? item.number : null;
    return [
      { elementId: crossing.id, itemId: crossing.itemId, number, from: lines(crossing), to: lines(to) },
    ];
  });
}

/** The book with a proposal taken: other nets in its `ends`, and nothing else. */
export function withProposal(book: Book, { changes }: MatrixProposal): Book {
  const to = new Map(
    changes.map((change) => [`${change.point} ${change.harness} ${change.from}`, change.to]),
  );
  return withRows(
    book,
    "ends",
    book.tables.ends.map((end) => {
      const net = to.get(`${end.point} ${end.harness} ${end.net}`);
      return net === undefined ? end : { ...end, net };
    }),
  );
}

/** Pinned crossings that the nets of the book do not follow. */
export function pinnedElsewhere(machine: Machine, matrix: SwitchMatrix): readonly Finding[] {
  const c = conductors(machine);
  return matrix.crossings.flatMap((crossing) => {
    const choice = choiceOf(machine, crossing);
    if (choice === undefined) return [];
    const column = pinnedLine(c, matrix.columns, choice.value);
    const row = pinnedLine(c, matrix.rows, choice.value);
    if ((column ?? crossing.column) === crossing.column && (row ?? crossing.row) === crossing.row)
      if (column !== null || row !== null) return [];
    return [
      makeFinding("choice-not-followed", "error", [choice.subject, choice.value ?? ""], { kind: "matrix" }),
    ];
  });
}
