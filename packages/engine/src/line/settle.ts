import type { Book, BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { HarnessResult, LineResult } from "../model/index.ts";
import { settlePegs } from "../pinboard/index.ts";
import { settleRoute } from "../route/index.ts";
import { settleWires } from "../wire/index.ts";

type Choice = BookRow<"choices">;
type Kept = Pick<Choice, "kind" | "subject" | "value">;

const name = (choice: Pick<Choice, "kind" | "subject">): string => `${choice.kind} ${choice.subject}`;

/** Everything that keeps one harness as it is: wires, numbers, route, colours, pegs. */
function keptOf(result: LineResult, harness: HarnessResult): readonly Kept[] {
  return [
    ...settleWires(result.machine, harness.harness.id),
    ...settleRoute(harness.route),
    ...harness.wires.map((wire): Kept => ({ kind: "colour", subject: wire.id, value: wire.colour })),
    ...settlePegs(harness.pinboard).map((peg): Kept => ({ kind: "peg", ...peg })),
  ];
}

/** Subjects that belong to a harness, so that what is settled for it no longer can be told from what is another's. */
function belongsTo(result: LineResult, harnessId: string): (choice: Choice) => boolean {
  const landings = new Set(result.harnesses.get(harnessId)?.landingIds ?? []);
  return ({ kind, subject }) => {
    switch (kind) {
      case "trunk":
        return subject === harnessId;
      case "attach":
        return landings.has(subject) || subject.startsWith(`${harnessId}|`);
      case "peg":
        return subject.startsWith(`${harnessId}|`);
      case "splice-place":
        return subject.split(":")[2] === harnessId;
      case "chain":
      case "colour":
      case "wire-number":
        return subject.split("|")[1] === harnessId;
      default:
        return false;
    }
  };
}

const isSymbol = ({ kind }: Choice): boolean => kind === "symbol";

/** The symbols of the screws as they are, so that boxes and maps in use stay true. */
const keptSymbols = ({ fastening }: LineResult): readonly Kept[] =>
  [...fastening.symbols.values()].map(
    ({ typeId, letter, shape, shade }): Kept => ({
      kind: "symbol",
      subject: typeId,
      value: `${letter} ${shape} ${shade}`,
    }),
  );

/** What is settled beside harnesses. */
export interface SettleMore {
  /** The symbols of the screws. */
  readonly symbols?: boolean;
}

/** How a book's choices change when results are settled. */
export interface Settling {
  /** All choices of the book afterwards: pinned and other ones first as they were, then settled ones by name. */
  readonly choices: readonly Choice[];
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
}

/**
 * The choices of a book with the present results of some harnesses kept, so that they hold until they are
 * infeasible. What a person pinned stays as it is; what was settled for these harnesses before and is no longer
 * true goes.
 */
export function settle(
  result: LineResult,
  harnessIds: readonly string[],
  { symbols = false }: SettleMore = {},
): Settling {
  const before = result.machine.book.tables.choices;
  const owners = [...harnessIds.map((id) => belongsTo(result, id)), ...(symbols ? [isSymbol] : [])];
  const isOwn = (choice: Choice): boolean => choice.held === "settled" && owners.some((owns) => owns(choice));
  const others = before.filter((choice) => !isOwn(choice));
  const taken = new Set(others.map(name));
  const kept = harnessIds.flatMap((id) => {
    const harness = result.harnesses.get(id);
    return harness === undefined ? [] : keptOf(result, harness);
  });
  if (symbols) kept.push(...keptSymbols(result));
  const fresh = new Map<string, Choice>();
  for (const { kind, subject, value } of kept) {
    const row: Choice = { kind, subject, value, held: "settled", by: "", reason: "", basis: "" };
    if (!taken.has(name(row))) fresh.set(name(row), row);
  }
  const old = new Map(before.filter(isOwn).map((choice) => [name(choice), choice]));
  const settled = [...fresh.values()].sort((a, b) => compareText(name(a), name(b)));
  return {
    choices: [...others, ...settled.map((row) => keepRow(old.get(name(row)), row))],
    added: settled.filter((row) => !old.has(name(row))).length,
    changed: settled.filter((row) => (old.get(name(row)) ?? row).value !== row.value).length,
    removed: [...old.keys()].filter((key) => !fresh.has(key)).length,
  };
}

/** The old row itself where it says the same, with whatever a person wrote beside it. */
const keepRow = (old: Choice | undefined, row: Choice): Choice => (old?.value === row.value ? old : row);

/** A book without what is settled for some harnesses: what the line would do if it were free to. */
export function unsettled(
  result: LineResult,
  harnessIds: readonly string[],
  { symbols = false }: SettleMore = {},
): Book {
  const { book } = result.machine;
  const owners = [...harnessIds.map((id) => belongsTo(result, id)), ...(symbols ? [isSymbol] : [])];
  const choices = book.tables.choices.filter((c) => c.held === "pinned" || !owners.some((owns) => owns(c)));
  return { ...book, tables: { ...book.tables, choices } };
}

/** What differs in one harness between two results, in the shop's figures. */
export interface HarnessChange {
  readonly harnessId: string;
  readonly minutes: readonly [before: number, after: number];
  readonly metres: readonly [before: number, after: number];
  readonly wiresGone: readonly string[];
  readonly wiresNew: readonly string[];
  readonly recoloured: readonly string[];
  readonly renumbered: readonly string[];
  readonly relengthened: readonly string[];
  readonly pegsMoved: number;
}

/** What a harness would gain and what would change in it, between two results of one machine. */
export function compareHarness(before: HarnessResult, after: HarnessResult): HarnessChange {
  const old = new Map(before.wires.map((wire) => [wire.id, wire]));
  const fresh = new Map(after.wires.map((wire) => [wire.id, wire]));
  const both = after.wires.flatMap((wire) => {
    const was = old.get(wire.id);
    return was === undefined ? [] : [{ was, wire }];
  });
  const pegs = new Map(before.pinboard.nodes.map((node) => [node.id, node.at]));
  const moved = after.pinboard.nodes.filter((node) => {
    const at = pegs.get(node.id);
    return at === undefined || at.xMm !== node.at.xMm || at.yMm !== node.at.yMm;
  });
  return {
    harnessId: after.harness.id,
    minutes: [before.route.work.minutes, after.route.work.minutes],
    metres: [before.route.work.metres, after.route.work.metres],
    wiresGone: [...old.keys()].filter((id) => !fresh.has(id)),
    wiresNew: [...fresh.keys()].filter((id) => !old.has(id)),
    recoloured: both.filter(({ was, wire }) => was.colour !== wire.colour).map(({ wire }) => wire.id),
    renumbered: both.filter(({ was, wire }) => was.number !== wire.number).map(({ wire }) => wire.id),
    relengthened: both.filter(({ was, wire }) => was.cutMm !== wire.cutMm).map(({ wire }) => wire.id),
    pegsMoved: moved.length,
  };
}
