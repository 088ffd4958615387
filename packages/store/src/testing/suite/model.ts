import { applyChanges, type CellChange, type CellTables, inverse } from "@pinwright/book";

/** What came of a step of the model. */
export type Step = "done" | "conflict" | "nothing";

/**
 * A book in memory, as simple as can be: tables, and for each person a stack of what they can take back and one of
 * what they can make again. It keeps no log, unlike the store.
 */
export class ModelBook {
  tables: CellTables;
  readonly #past = new Map<string, (readonly CellChange[])[]>();
  readonly #future = new Map<string, (readonly CellChange[])[]>();

  constructor(tables: CellTables) {
    this.tables = tables;
  }

  edit(person: string, changes: readonly CellChange[]): Step {
    if (!this.#apply(changes)) return "conflict";
    stack(this.#past, person).push(changes);
    this.#future.delete(person);
    return "done";
  }

  undo(person: string): Step {
    return this.#move(stack(this.#past, person), stack(this.#future, person), inverse);
  }

  redo(person: string): Step {
    return this.#move(stack(this.#future, person), stack(this.#past, person), (changes) => changes);
  }

  #move(
    from: (readonly CellChange[])[],
    to: (readonly CellChange[])[],
    how: (changes: readonly CellChange[]) => readonly CellChange[],
  ): Step {
    const changes = from.at(-1);
    if (changes === undefined) return "nothing";
    if (!this.#apply(how(changes))) return "conflict";
    from.pop();
    to.push(changes);
    return "done";
  }

  #apply(changes: readonly CellChange[]): boolean {
    const applied = applyChanges(this.tables, changes);
    if (applied.tables !== null) this.tables = applied.tables;
    return applied.tables !== null;
  }
}

function stack<T>(stacks: Map<string, T[]>, person: string): T[] {
  const own = stacks.get(person) ?? [];
  stacks.set(person, own);
  return own;
}
