import type { FactRows, MachineFacts } from "./facts.ts";

/** An id that was given another name. */
export interface RenamedId {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** Renames that the book after notes and the one before does not, of ids that it had. */
export function newRenames(before: MachineFacts, after: MachineFacts): readonly RenamedId[] {
  const known = before.rows.renames ?? {};
  return Object.entries(after.rows.renames ?? {}).flatMap(([key, row]): RenamedId[] => {
    const { table = "", old: from = "", new: to = "" } = row;
    const wasThere = before.rows[table]?.[from] !== undefined || key in known;
    return wasThere && !(key in known) && after.rows[table]?.[to] !== undefined ? [{ table, from, to }] : [];
  });
}

/** What an id may stand beside within a text: points `item:pin`, children `mech/child`, wires `net|harness|a|b`, lists. */
const WITHIN = /[^ |:/]+/gu;

/** Facts with the ids that they will have, so that a new name is not taken for another thing. */
export function renamedFacts(facts: MachineFacts, renames: readonly RenamedId[]): MachineFacts {
  if (renames.length === 0) return facts;
  const to = new Map(renames.map((one) => [one.from, one.to]));
  const text = (value: string): string => to.get(value) ?? value.replace(WITHIN, (id) => to.get(id) ?? id);
  const deep = (value: unknown): unknown => {
    if (typeof value === "string") return text(value);
    if (Array.isArray(value)) return value.map(deep);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, held]) => [text(key), deep(held)]));
  };
  const renamed = (rows: FactRows): FactRows => deep(rows) as FactRows;
  return {
    ...facts,
    rows: Object.fromEntries(Object.entries(facts.rows).map(([table, rows]) => [table, renamed(rows)])),
    items: deep(facts.items) as MachineFacts["items"],
    wires: deep(facts.wires) as MachineFacts["wires"],
    parts: deep(facts.parts) as MachineFacts["parts"],
    steps: deep(facts.steps) as MachineFacts["steps"],
    symbols: deep(facts.symbols) as MachineFacts["symbols"],
    findings: deep(facts.findings) as MachineFacts["findings"],
  };
}
