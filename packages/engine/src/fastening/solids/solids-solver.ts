import type { BookRow } from "@pinwright/book";
import { compareText, NestedQuery, Query, SharedMemory, sameMembers } from "@pinwright/kernel";
import { groupRows, type Item, type Machine, type Solid } from "../../model/index.ts";
import { fastenerSolids } from "./fastener-solids.ts";
import { boardSolids, deviceSolids, inlineSolids, mechanismSolids, type SolidSource } from "./item-solids.ts";
import { type Opening, Openings } from "./openings.ts";
import { SolidIndex } from "./solid-index.ts";

/** What fills space, by the item that is put in as a whole. */
export type Solids = ReadonlyMap<string, readonly Solid[]>;

type Bodies = readonly BookRow<"bodies">[];

const NONE: readonly never[] = [];

/** Makes the solids of a machine, and remembers them: after an edit only those of the items that it touched are new. */
export class SolidsSolver {
  readonly #openings = new Openings();
  readonly #groups = new NestedQuery<ReadonlyMap<string, Bodies>, Bodies>(Object.is, sameMembers);
  /** By item, for an item that is another object is another one. */
  readonly #items = new SharedMemory<Item, readonly Solid[]>();
  readonly #wholes = new Query<readonly Solid[]>(sameMembers);
  readonly #all = new Query<Solids>(Object.is);
  #computed = 0;

  /** Solids of every item that has any, in the order of the machine's items. */
  solve(machine: Machine): Solids {
    const { book } = machine;
    const { bodies } = book.tables;
    const groups = this.#groups.ask("all", [bodies], (parts) => grouped(bodies, parts));
    const sources = new Sources(machine, groups, this.#openings.of(machine));
    const wholes = new Map<string, readonly Solid[]>();
    const mechanisms = new Map<string, (readonly Solid[])[]>();
    for (const item of machine.items.values()) {
      const { source, inputs } = sources.of(item);
      const solids = this.#items.ask(item, inputs, () => {
        this.#computed++;
        return solidsOf(item, source);
      });
      if (item.kind === "device" && item.parentId !== null) {
        mechanisms.get(item.parentId)?.push(solids);
        continue;
      }
      wholes.set(item.id, solids);
      if (item.kind === "mechanism") mechanisms.set(item.id, [solids]);
    }
    for (const [id, lists] of mechanisms)
      wholes.set(
        id,
        this.#wholes.ask(id, lists, () => lists.flat().sort((a, b) => compareText(a.id, b.id))),
      );
    return this.#all.ask("all", [...wholes.values()], () => wholes);
  }

  /** How many items had their solids made so far, for tests of growth. */
  get computed(): number {
    return this.#computed;
  }

  sweep(): void {
    for (const query of [this.#openings, this.#groups, this.#wholes, this.#all]) query.sweep();
  }
}

function solidsOf(item: Item, source: SolidSource): readonly Solid[] {
  switch (item.kind) {
    case "fastener":
      return fastenerSolids(item, source.thicknessMm);
    case "board":
      return boardSolids(item, source);
    case "inline":
      return inlineSolids(item, source);
    case "device":
      return deviceSolids(item, source);
    case "mechanism":
      return mechanismSolids(item, source);
  }
}

interface Sourced {
  readonly source: SolidSource;
  readonly inputs: readonly unknown[];
}

/** What solids follow from beside their item; found once for all items of one type on one panel. */
class Sources {
  readonly #machine: Machine;
  readonly #groups: ReadonlyMap<string, Bodies>;
  readonly #openings: ReadonlyMap<string, readonly Opening[]>;
  readonly #known = new Map<object, Map<string, Sourced>>();

  constructor(
    machine: Machine,
    groups: ReadonlyMap<string, Bodies>,
    openings: ReadonlyMap<string, readonly Opening[]>,
  ) {
    this.#machine = machine;
    this.#groups = groups;
    this.#openings = openings;
  }

  of(item: Item): Sourced {
    let known = this.#known.get(item.type);
    if (known === undefined) {
      known = new Map();
      this.#known.set(item.type, known);
    }
    const { panelId } = item.place;
    let sourced = known.get(panelId);
    if (sourced === undefined) {
      sourced = this.#source(item, panelId);
      known.set(panelId, sourced);
    }
    return sourced;
  }

  #source(item: Item, panelId: string): Sourced {
    const { book, panels } = this.#machine;
    const thicknessMm = panels.get(panelId)?.thickness_mm ?? 0;
    const made = item.kind === "device" || item.kind === "mechanism";
    const bodies = made ? (this.#groups.get(`${item.kind} ${item.type.id}`) ?? NONE) : NONE;
    const reaches = made && bodies.length === 0 && item.type.reach_mm > 0;
    const openings = reaches ? (this.#openings.get(panelId) ?? NONE) : NONE;
    const families = item.kind === "inline" ? book.tables.connector_families : null;
    return {
      source: { book, thicknessMm, bodies, openings },
      inputs: [thicknessMm, bodies, openings, book.outlines, families],
    };
  }
}

function grouped(rows: Bodies, parts: Query<Bodies>): ReadonlyMap<string, Bodies> {
  const groups = groupRows(rows, typeKey);
  return new Map(
    [...groups].map(([key, own]) => {
      const sorted = own.toSorted((a, b) => compareText(a.id, b.id));
      return [key, parts.ask(key, sorted, () => sorted)];
    }),
  );
}

function typeKey(row: BookRow<"bodies">): string | null {
  if (row.device_type !== null) return `device ${row.device_type}`;
  return row.mechanism_type === null ? null : `mechanism ${row.mechanism_type}`;
}

const indexes = new SharedMemory<Solids, SolidIndex>();

/** The solids by where they are; found once for as long as no solid is another. */
export const solidIndexOf = (solids: Solids): SolidIndex =>
  indexes.ask(solids, NONE, () => new SolidIndex(solids.values()));
