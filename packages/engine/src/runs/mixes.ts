import type { Book, Shop, ShopRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../model/index.ts";
import type { RunMix } from "./input.ts";

/** Name of a set of options: the ids in code-point order, one space between. */
export const optionsKey = (optionIds: Iterable<string>): string => [...optionIds].sort(compareText).join(" ");

/** Runs that are still to be planned, of the machine of this book. */
export const openRuns = (book: Book, shop: Shop): readonly ShopRow<"runs">[] =>
  shop.tables.runs.filter((run) => run.book === book.machine.id && run.state !== "done");

/** The options of a row of `run_mix`, and the usual one of each kind that it does not name. */
function fullOptions(book: Book, named: readonly string[]): readonly string[] {
  const rows = new Map(book.tables.options.map((option) => [option.id, option]));
  const kinds = new Set(named.flatMap((id) => rows.get(id)?.kind ?? []));
  const usual = book.tables.options.filter((o) => o.usual === "yes" && !(o.kind !== "" && kinds.has(o.kind)));
  return [...new Set([...named.filter((id) => rows.has(id)), ...usual.map((o) => o.id)])].sort(compareText);
}

const namesOf = (text: string): readonly string[] => text.split(/\s+/u).filter((name) => name !== "");

/**
 * The machines of each open run by their options, those that no row names with the usual ones. A row that asks for
 * more machines than the run has left gets what is left.
 */
export function runMixes(book: Book, shop: Shop): readonly RunMix[] {
  return openRuns(book, shop).flatMap((run) => {
    const byKey = new Map<string, RunMix>();
    let left = run.machines;
    const add = (named: readonly string[], wanted: number): void => {
      const machines = Math.min(left, wanted);
      if (machines <= 0) return;
      left -= machines;
      const optionIds = fullOptions(book, named);
      const key = optionsKey(optionIds);
      byKey.set(key, { runId: run.id, key, optionIds, machines: machines + (byKey.get(key)?.machines ?? 0) });
    };
    for (const row of shop.tables.run_mix) if (row.run === run.id) add(namesOf(row.options), row.machines);
    add([], left);
    return [...byKey.values()];
  });
}

/** What is wrong with the mixes: more machines than the run has, options that the book lacks or that exclude each other. */
export function mixFindings(book: Book, shop: Shop): readonly Finding[] {
  const rows = new Map(book.tables.options.map((option) => [option.id, option]));
  const runs = new Map(openRuns(book, shop).map((run) => [run.id, run]));
  const findings: Finding[] = [];
  const asked = new Map<string, number>();
  for (const { run: runId, options, machines } of shop.tables.run_mix) {
    if (!runs.has(runId)) continue;
    asked.set(runId, (asked.get(runId) ?? 0) + machines);
    const names = namesOf(options);
    const unknown = names.filter((name) => !rows.has(name));
    if (unknown.length > 0)
      findings.push(makeFinding("run-options", "error", [runId, ...unknown], { kind: "unknown" }));
    const kinds = names.map((name) => rows.get(name)?.kind ?? "").filter((kind) => kind !== "");
    const twice = kinds.find((kind, i) => kinds.indexOf(kind) !== i);
    if (twice !== undefined)
      findings.push(makeFinding("run-options", "error", [runId, ...names], { kind: "twice" }));
  }
  for (const [runId, machines] of asked) {
    const run = runs.get(runId);
    if (run !== undefined && machines > run.machines)
      findings.push(makeFinding("run-mix", "error", [runId], { asked: machines, machines: run.machines }));
  }
  return findings;
}
