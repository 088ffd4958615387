import type { FaultLog } from "../fault-log.ts";
import { isBad, type TableRows } from "../read/table.ts";
import type { RuleBreak } from "../rules/rule.ts";

/** A rule of the book, or of the shop. */
export interface AnyRule<T> {
  readonly table: string;
  readonly reads: readonly string[];
  readonly check: (tables: T) => Iterable<RuleBreak>;
}

/** Applies rules to tables that have their types. A rule is silent about a row of which it cannot read a cell. */
export function checkRules<T>(
  rules: readonly AnyRule<T>[],
  tables: ReadonlyMap<string, TableRows>,
  breaksOf: (rule: AnyRule<T>) => Iterable<RuleBreak>,
  log: FaultLog,
): void {
  for (const rule of rules) {
    const source = tables.get(rule.table);
    if (source === undefined) continue;
    for (const { at, column, value, expected, nearest } of breaksOf(rule)) {
      const line = source.lines[at] ?? 0;
      if (rule.reads.some((name) => isBad(source, line, name))) continue;
      log.add({ code: "row-rule", file: source.file, row: line, column, value, expected, nearest });
    }
  }
}
