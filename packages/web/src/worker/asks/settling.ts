import { type BookRow, type CellChange, withRows } from "@pinwright/book";
import {
  compareHarness,
  type HarnessChange,
  Line,
  type LineResult,
  settle,
  unsettled,
} from "@pinwright/engine";
import { choiceChanges, type WantedChoice } from "../edits/choices.ts";
import type { Model } from "../model.ts";

type Choice = BookRow<"choices">;

/** What would be written so that a harness stays as it is. */
export interface Keeping {
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
  readonly changes: readonly CellChange[];
}

/** What a harness would gain if it were done anew, and what would be written. */
export interface Better {
  readonly change: HarnessChange;
  readonly changes: readonly CellChange[];
}

const nameOf = ({ kind, subject }: Pick<Choice, "kind" | "subject">): string => `${kind} ${subject}`;

/** The changes that lead from some choices to others. */
function changesTo({ tables, book }: Model, after: readonly Choice[]): readonly CellChange[] {
  const before = book.tables.choices;
  const old = new Map(before.map((choice) => [nameOf(choice), choice]));
  const fresh = new Set(after.map(nameOf));
  const wanted = [
    ...before
      .filter((choice) => !fresh.has(nameOf(choice)))
      .map(({ kind, subject }) => ({ kind, subject, row: null })),
    ...after
      .filter((choice) => old.get(nameOf(choice)) !== choice)
      .map(({ kind, subject, ...row }): WantedChoice => ({ kind, subject, row })),
  ];
  return choiceChanges(tables, wanted);
}

/** What keeping the present result of a harness writes. */
export function keepHarness(model: Model, harnessId: string): Keeping {
  const { choices, added, changed, removed } = settle(model.line, [harnessId]);
  return { added, changed, removed, changes: changesTo(model, choices) };
}

/**
 * A harness, and the earlier ones whose colours it may have to follow because they share a net with it, or with one
 * that does: all that its own result depends on.
 */
function dependsOn(line: LineResult, harnessId: string): ReadonlySet<string> {
  const nets = new Map<string, Set<string>>();
  for (const { harness, net } of line.machine.ends) {
    const own = nets.get(harness);
    if (own === undefined) nets.set(harness, new Set([net]));
    else own.add(net);
  }
  const ids = [...line.harnesses.keys()];
  const earlier = ids.slice(0, ids.indexOf(harnessId)).reverse();
  const needed = new Set([harnessId]);
  const shared = new Set(nets.get(harnessId));
  for (const id of earlier) {
    const own = nets.get(id) ?? new Set<string>();
    if (![...own].some((net) => shared.has(net))) continue;
    needed.add(id);
    for (const net of own) shared.add(net);
  }
  return needed;
}

/** What a harness would be if nothing were kept of it but what a person pinned; null when there is none. */
export function betterHarness(model: Model, harnessId: string): Better | null {
  const before = model.line.harnesses.get(harnessId);
  const needed = dependsOn(model.line, harnessId);
  const free = unsettled(model.line, [harnessId]);
  const harnesses = free.tables.harnesses.filter(({ id }) => needed.has(id));
  const anew: LineResult = new Line().run(withRows(free, "harnesses", harnesses), model.shop);
  const after = anew.harnesses.get(harnessId);
  if (before === undefined || after === undefined) return null;
  const settling = settle({ ...anew, machine: { ...anew.machine, book: model.book } }, [harnessId]);
  return { change: compareHarness(before, after), changes: changesTo(model, settling.choices) };
}
