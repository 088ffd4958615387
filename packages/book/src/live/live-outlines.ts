import { type CellRows, NO_ROWS } from "../changes/cell-tables.ts";
import { outlineTextsOf } from "../changes/raw-book.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import type { Outline } from "../outline/outline.ts";
import { readOutline } from "../outline/read.ts";

interface Drawn {
  readonly text: string;
  readonly outline: Outline | null;
  readonly faults: readonly Fault[];
}

/** The drawings of a book with memory: only one whose text changed is read again. */
export class LiveOutlines {
  #cells: CellRows = NO_ROWS;
  #drawn: ReadonlyMap<string, Drawn> = new Map();
  /** Names of all drawings, readable or not; the same object as long as they are the same. */
  names: ReadonlySet<string> = new Set();
  /** What could be read, in order; the same object as long as no drawing differs. */
  outlines: ReadonlyMap<string, Outline> = new Map();

  update(cells: CellRows): void {
    if (cells === this.#cells) return;
    this.#cells = cells;
    const before = this.#drawn;
    const drawn = new Map<string, Drawn>();
    for (const [name, text] of outlineTextsOf(cells)) {
      const known = before.get(name);
      drawn.set(name, known?.text === text ? known : draw(name, text));
    }
    const names = [...drawn.keys()];
    const old = [...before.keys()];
    const sameNames = names.length === old.length && names.every((name, i) => name === old[i]);
    if (sameNames && names.every((name) => drawn.get(name) === before.get(name))) return;
    this.#drawn = drawn;
    if (!sameNames) this.names = new Set(names);
    this.outlines = new Map(
      [...drawn].flatMap(([name, { outline }]) => (outline === null ? [] : [[name, outline] as const])),
    );
  }

  /** What is wrong with the drawings. */
  faults(log: FaultLog): void {
    for (const { faults } of this.#drawn.values()) for (const fault of faults) log.add(fault);
  }
}

function draw(name: string, text: string): Drawn {
  const log = new FaultLog();
  const outline = readOutline(name, text, log);
  return { text, outline, faults: log.list() };
}
