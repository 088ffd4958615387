import { applyChanges, type CellChange, type CellTables } from "@pinwright/book";

/** A change set that this browser made and that is not yet part of what the server said. */
export interface PendingSet {
  readonly id: string;
  readonly note: string;
  readonly changes: readonly CellChange[];
}

/** What the server says of a change set that happened. */
export interface HappenedSet {
  readonly no: number;
  readonly id: string;
  readonly changes: readonly CellChange[];
}

/**
 * One book as this browser sees it: what the server confirmed, and on top of it what was done here and is still
 * on its way. Every change set of the server is taken in by its number; whatever stands on top is laid anew.
 */
export class Sync {
  #confirmed: CellTables;
  #changeNo: number;
  #pending: readonly PendingSet[] = [];
  #tables: CellTables;

  constructor(tables: CellTables, changeNo: number) {
    this.#confirmed = tables;
    this.#tables = tables;
    this.#changeNo = changeNo;
  }

  /** What the person sees. */
  get tables(): CellTables {
    return this.#tables;
  }

  /** Number of the last change set that the server confirmed. */
  get changeNo(): number {
    return this.#changeNo;
  }

  get pending(): readonly PendingSet[] {
    return this.#pending;
  }

  /** Does an edit here, before the server knows of it. False when it does not fit what is on the screen. */
  edit(set: PendingSet): boolean {
    const applied = applyChanges(this.#tables, set.changes);
    if (applied.tables === null) return false;
    this.#tables = applied.tables;
    this.#pending = [...this.#pending, set];
    return true;
  }

  /** Takes in a set of the server: `late` when it was known, `gap` when sets before it are missing. */
  take(set: HappenedSet): "taken" | "late" | "gap" {
    if (set.no <= this.#changeNo) return "late";
    if (set.no > this.#changeNo + 1) return "gap";
    const applied = applyChanges(this.#confirmed, set.changes);
    if (applied.tables === null) return "gap";
    this.#confirmed = applied.tables;
    this.#changeNo = set.no;
    const first = this.#pending[0];
    if (first?.id === set.id) {
      this.#pending = this.#pending.slice(1);
      if (this.#pending.length === 0 && first.changes.length === set.changes.length) {
        // Alone and in turn: what is on the screen is what the server has, row objects included.
        this.#confirmed = this.#tables;
        return "taken";
      }
    }
    this.#lay();
    return "taken";
  }

  /** Forgets an edit that the server refused. */
  drop(id: string): void {
    this.#pending = this.#pending.filter((set) => set.id !== id);
    this.#lay();
  }

  /** Starts again from what the server says the whole book is. */
  reset(tables: CellTables, changeNo: number): void {
    this.#confirmed = tables;
    this.#changeNo = changeNo;
    this.#lay();
  }

  /** An edit that no longer fits is left out of the picture; the server will refuse it and say why. */
  #lay(): void {
    let tables = this.#confirmed;
    for (const set of this.#pending) tables = applyChanges(tables, set.changes).tables ?? tables;
    this.#tables = tables;
  }
}
