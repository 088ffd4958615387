import type { BookRow } from "@pinwright/book";
import { NestedQuery, Query, SharedMemory, sameMembers } from "@pinwright/kernel";
import { groupRows, type Item, type Machine, type Solid } from "../../model/index.ts";
import { fastenerSolids } from "./fastener-solids.ts";
import { boardSolids, deviceSolids, inlineSolids, mechanismSolids } from "./item-solids.ts";
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
  readonly #items = new Query<readonly Solid[]>(Object.is);
  readonly #wholes = new Query<readonly Solid[]>(sameMembers);
  readonly #all = new Query<Solids>(Object.is);

  /** Solids of every item that has any, in the order of the machine's items. */
  solve(machine: Machine): Solids {
    const { book } = machine;
    const openings = this.#openings.of(machine);
    const { bodies } = book.tables;
    const groups = this.#groups.ask("all", [bodies], (parts) => grouped(bodies, parts));
    const parts = new Map<string, (readonly Solid[])[]>();
    for (const item of machine.items.values()) {
      const solids = this.#solidsOf(machine, item, groups, openings.get(item.place.panelId) ?? NONE);
      const id = item.kind === "fastener" ? item.id : (item.parentId ?? item.id);
      const known = parts.get(id);
      if (known === undefined) parts.set(id, [solids]);
      else known.push(solids);
    }
    const wholes = new Map<string, readonly Solid[]>();
    for (const [id, lists] of parts) {
      const first = lists[0] ?? NONE;
      wholes.set(id, lists.length === 1 ? first : this.#wholes.ask(id, lists, () => lists.flat()));
    }
    return this.#all.ask("all", [...wholes.values()], () => wholes);
  }

  /** How many items had their solids made so far, for tests of growth. */
  get computed(): number {
    return this.#items.computed;
  }

  sweep(): void {
    for (const query of [this.#openings, this.#groups, this.#items, this.#wholes, this.#all]) query.sweep();
  }

  #solidsOf(
    machine: Machine,
    item: Item,
    groups: ReadonlyMap<string, Bodies>,
    openings: readonly Opening[],
  ): readonly Solid[] {
    const { book, panels } = machine;
    const thicknessMm = panels.get(item.place.panelId)?.thickness_mm ?? 0;
    const ask = (inputs: readonly unknown[], make: () => readonly Solid[]): readonly Solid[] =>
      this.#items.ask(item.id, [item, thicknessMm, ...inputs], make);
    switch (item.kind) {
      case "fastener":
        return ask(NONE, () => fastenerSolids(item, thicknessMm));
      case "board":
        return ask([book.outlines], () =>
          boardSolids(item, { book, thicknessMm, bodies: NONE, openings: NONE }),
        );
      case "inline":
        return ask([book.tables.connector_families], () =>
          inlineSolids(item, { book, thicknessMm, bodies: NONE, openings: NONE }),
        );
      case "device":
      case "mechanism": {
        const bodies = groups.get(`${item.kind} ${item.type.id}`) ?? NONE;
        const reaching = bodies.length === 0 && item.type.reach_mm > 0 ? openings : NONE;
        return ask([book.outlines, bodies, reaching], () => {
          const source = { book, thicknessMm, bodies, openings: reaching };
          return item.kind === "device" ? deviceSolids(item, source) : mechanismSolids(item, source);
        });
      }
    }
  }
}

function grouped(rows: Bodies, parts: Query<Bodies>): ReadonlyMap<string, Bodies> {
  const groups = groupRows(rows, typeKey);
  return new Map([...groups].map(([key, own]) => [key, parts.ask(key, own, () => own)]));
}

function typeKey(row: BookRow<"bodies">): string | null {
  if (row.device_type !== null) return `device ${row.device_type}`;
  return row.mechanism_type === null ? null : `mechanism ${row.mechanism_type}`;
}

const indexes = new SharedMemory<Solids, SolidIndex>();

/** The solids by where they are; found once for as long as no solid is another. */
export const solidIndexOf = (solids: Solids): SolidIndex =>
  indexes.ask(solids, NONE, () => new SolidIndex(solids.values()));
