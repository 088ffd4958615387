import type { AnyRule } from "../check/rules.ts";
import type { RuleBreak } from "../rules/rule.ts";

type Rows = readonly unknown[];

interface Judged {
  /** The rows of every table that the rule looked at. */
  readonly read: ReadonlyMap<string, Rows>;
  readonly breaks: readonly RuleBreak[];
}

/** Rules that are checked again only when a table differs that they looked at. */
export class LiveRules<T extends Readonly<Record<string, Rows>>> {
  readonly #judged = new Map<AnyRule<T>, Judged>();

  /** What a rule says of the tables. */
  breaks(rule: AnyRule<T>, tables: T): readonly RuleBreak[] {
    const known = this.#judged.get(rule);
    if (known !== undefined && [...known.read].every(([name, rows]) => tables[name] === rows))
      return known.breaks;
    const read = new Map<string, Rows>();
    const watched = new Proxy(tables, {
      get(target, name) {
        const rows: unknown = Reflect.get(target, name);
        if (typeof name === "string" && Array.isArray(rows)) read.set(name, rows);
        return rows;
      },
    });
    const breaks = [...rule.check(watched)];
    this.#judged.set(rule, { read, breaks });
    return breaks;
  }
}
