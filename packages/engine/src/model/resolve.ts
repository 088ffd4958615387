import type { Book, BookRow, Shop } from "@pinwright/book";
import { compareText, NestedQuery, Query, sameMembers } from "@pinwright/kernel";
import { cavityGrid } from "./cavities.ts";
import {
  boardItem,
  childDevice,
  childFastener,
  deviceItem,
  type FastenerTypes,
  fastenerItem,
  inlineItem,
  mechanismItem,
} from "./items.ts";
import { type Carrier, groupRows, Kits, rowsById } from "./kits.ts";
import type { Item, Landing, Machine, MechanismItem, PlacedElement, Point } from "./machine.ts";
import { type ItemContacts, itemContacts, itemElements } from "./points.ts";

/** Walls of an in-line housing beyond its cavities, for drawing: common practice, no source. */
const INLINE_WALL_MM = 4;
const INLINE_LENGTH_MM = 30;

/** Whether a row with an applicability column belongs to a machine with these options. */
export function appliesTo(
  row: { readonly options: readonly string[] },
  options: ReadonlySet<string>,
): boolean {
  return row.options.length === 0 || row.options.some((option) => options.has(option));
}

/** The options that a machine has when nobody says otherwise. */
export function usualOptions(book: Book): ReadonlySet<string> {
  return new Set(book.tables.options.filter((o) => o.usual === "yes").map((o) => o.id));
}

/** Which kind of type each kind of item has; a fastener brings nothing electrical. */
const CARRIERS = {
  device: "device_type",
  board: "board_type",
  mechanism: "mechanism_type",
  inline: "inline",
} as const satisfies Record<Exclude<Item["kind"], "fastener">, Carrier>;

/**
 * Sets every type into every place. It remembers what it resolved, so that after an edit only what the edit
 * touched is made anew and everything else keeps its identity. Rows that refer to nothing are passed over: the
 * reader of the book has already told of them.
 */
export class Resolver {
  readonly #kits = new Kits();
  readonly #choices = new NestedQuery<Machine["choices"], ChoicesOfKind>(Object.is, sameChoices);
  readonly #items = new NestedQuery<readonly Item[], Item>(sameMembers, Object.is);
  readonly #contacts = new Query<ItemContacts>(Object.is);
  readonly #elementsOf = new Query<readonly PlacedElement[]>(Object.is);
  readonly #elements = new Query<readonly PlacedElement[]>(Object.is);
  readonly #ends = new Query<readonly BookRow<"ends">[]>(sameMembers);
  readonly #panels = new Query<Machine["panels"]>(Object.is);
  readonly #nets = new Query<Machine["nets"]>(Object.is);
  readonly #harnesses = new Query<Machine["harnesses"]>(Object.is);
  readonly #wireTypes = new Query<Machine["wireTypes"]>(Object.is);

  resolve(book: Book, shop: Shop, options: ReadonlySet<string> = usualOptions(book)): Machine {
    const t = book.tables;
    const items = this.#itemsOf(book, options);
    const kitOf = this.#kits.of(t);
    const landings = new Map<string, Landing>();
    const points = new Map<string, Point>();
    const elements: (readonly PlacedElement[])[] = [];
    for (const item of items.values()) {
      if (item.kind === "fastener") continue;
      const kit = kitOf(CARRIERS[item.kind], item.type.id);
      const contacts = this.#contacts.ask(item.id, [item, kit], () => itemContacts(item, kit));
      for (const landing of contacts.landings) landings.set(landing.id, landing);
      for (const point of contacts.points) points.set(point.id, point);
      elements.push(this.#elementsOf.ask(item.id, [item.kind, kit], () => itemElements(item, kit)));
    }
    const panels = this.#panels.ask("all", [t.panels, ...options], () =>
      rowsById(t.panels.filter((p) => appliesTo(p, options))),
    );
    const panelOutlines = new Map(
      [...panels.values()].flatMap((panel) => {
        const outline = panel.outline === null ? undefined : book.outlines.get(panel.outline);
        return outline === undefined ? [] : [[panel.id, outline] as const];
      }),
    );
    return {
      book,
      shop,
      options,
      panels,
      panelOutlines,
      items,
      landings,
      points,
      elements: this.#elements.ask("all", elements, () => elements.flat()),
      nets: this.#nets.ask("all", [t.nets], () => rowsById(t.nets)),
      harnesses: this.#harnesses.ask("all", [t.harnesses, ...options], () =>
        rowsById(t.harnesses.filter((h) => appliesTo(h, options))),
      ),
      ends: this.#ends.ask("all", [t.ends, ...options], () => sortedEnds(book, options)),
      wireTypes: this.#wireTypes.ask("all", [t.wire_types], () => rowsById(t.wire_types)),
      choices: this.#choices.ask("all", [t.choices], (kinds) => choicesByKind(t.choices, kinds)),
    };
  }

  /** Forgets what the last book did not use. */
  sweep(): void {
    this.#choices.sweep();
    this.#items.sweep();
    this.#contacts.sweep();
    this.#elementsOf.sweep();
  }

  /** How many items had to be placed so far, for tests of growth. */
  get placed(): number {
    return this.#items.computedParts;
  }

  #itemsOf(book: Book, options: ReadonlySet<string>): ReadonlyMap<string, Item> {
    const t = book.tables;
    const { outlines } = book;
    const items = new Map<string, Item>();
    const add = (list: readonly Item[]): void => {
      for (const item of list) if (!items.has(item.id)) items.set(item.id, item);
    };
    /** Items of one table with their types; they are gone through only when that table or the types were edited. */
    const each = <
      R extends { readonly id: string; readonly type: string; readonly options: readonly string[] },
      T extends { readonly id: string },
    >(
      name: string,
      rows: readonly R[],
      typeRows: readonly T[],
      make: (row: R, type: T) => Item,
    ): readonly Item[] =>
      this.#items.ask(name, [rows, typeRows, outlines, ...options], (parts) => {
        const types = rowsById(typeRows);
        return rows.flatMap((row) => {
          const type = types.get(row.type);
          if (type === undefined || !appliesTo(row, options)) return [];
          return [parts.ask(row.id, [row, type, outlines], () => make(row, type))];
        });
      });
    add(each("devices", t.devices, t.device_types, (row, type) => deviceItem(book, row, type)));
    add(each("boards", t.boards, t.board_types, (row, type) => boardItem(book, row, type)));
    add(each("mechanisms", t.mechanisms, t.mechanism_types, (row, type) => mechanismItem(book, row, type)));
    const parents = [...items.values()].filter((item) => item.kind === "mechanism");
    add(this.#childrenOf(book, parents));
    add(this.#fastenersOf(book, options));
    add(this.#inlinesOf(book, options));
    return items;
  }

  #childrenOf(book: Book, parents: readonly MechanismItem[]): readonly Item[] {
    const { mechanism_devices, mechanism_numbers, mechanism_fasteners, device_types, fastener_types } =
      book.tables;
    const { outlines } = book;
    const inputs = [
      mechanism_devices,
      mechanism_numbers,
      mechanism_fasteners,
      device_types,
      fastener_types,
      outlines,
      ...parents,
    ];
    return this.#items.ask("children", inputs, (parts) => {
      const deviceTypes = rowsById(device_types);
      const fastenerTypes = rowsById(fastener_types);
      const numbers = new Map(mechanism_numbers.map(({ item, number }) => [item, number]));
      const devices = groupRows(mechanism_devices, (row) => row.mechanism_type);
      const fasteners = groupRows(mechanism_fasteners, (row) => row.mechanism_type);
      return parents.flatMap((parent) => [
        ...(devices.get(parent.type.id) ?? []).flatMap((row) => {
          const type = deviceTypes.get(row.device_type);
          if (type === undefined) return [];
          const id = `${parent.id}/${row.child}`;
          const number = numbers.get(id) ?? null;
          const make = (): Item => childDevice(book, parent, row, type, number);
          return [parts.ask(id, [parent, row, type, outlines, number], make)];
        }),
        ...(fasteners.get(parent.type.id) ?? []).flatMap((row) => {
          const types = fastenerTypesOf(fastenerTypes, row.fastener_type, row);
          if (types === null) return [];
          const make = (): Item => childFastener(parent, row, types);
          const inputs = [parent, row, types.type, types.washer, types.nut];
          return [parts.ask(`${parent.id}/${row.child}`, inputs, make)];
        }),
      ]);
    });
  }

  #fastenersOf({ tables }: Book, options: ReadonlySet<string>): readonly Item[] {
    const { fasteners, fastener_types } = tables;
    return this.#items.ask("fasteners", [fasteners, fastener_types, ...options], (parts) => {
      const byId = rowsById(fastener_types);
      return fasteners.flatMap((row) => {
        const types = fastenerTypesOf(byId, row.type, row);
        if (types === null || !appliesTo(row, options)) return [];
        const inputs = [row, types.type, types.washer, types.nut];
        return [parts.ask(row.id, inputs, (): Item => fastenerItem(row, types))];
      });
    });
  }

  #inlinesOf(book: Book, options: ReadonlySet<string>): readonly Item[] {
    const { inlines, connectors, connector_families } = book.tables;
    return this.#items.ask("inlines", [inlines, connectors, connector_families, ...options], (parts) => {
      const types = rowsById(connectors);
      const families = rowsById(connector_families);
      return inlines.flatMap((row) => {
        const type = types.get(row.connector);
        const family = type === undefined ? undefined : families.get(type.family);
        if (type === undefined || family === undefined || !appliesTo(row, options)) return [];
        const make = (): Item => {
          const grid = cavityGrid(type, family);
          const widthMm = grid.columns * grid.pitchMm + INLINE_WALL_MM;
          const depthMm = Math.max(INLINE_LENGTH_MM, grid.rows * grid.rowPitchMm + INLINE_WALL_MM);
          return inlineItem(row, type, widthMm, depthMm);
        };
        return [parts.ask(row.id, [row, type, family], make)];
      });
    });
  }
}

/** The types of a fastener and of what goes on with it; null when its own is not known. */
function fastenerTypesOf(
  byId: ReadonlyMap<string, BookRow<"fastener_types">>,
  typeId: string,
  { washer, nut }: { readonly washer: string | null; readonly nut: string | null },
): FastenerTypes | null {
  const type = byId.get(typeId);
  const named = (id: string | null) => (id === null ? null : (byId.get(id) ?? null));
  return type === undefined ? null : { type, washer: named(washer), nut: named(nut) };
}

type ChoicesOfKind = ReadonlyMap<string, BookRow<"choices">>;

const sameChoices = (a: ChoicesOfKind, b: ChoicesOfKind): boolean =>
  sameMembers([...a.values()], [...b.values()]);

/** Choices by kind and subject. A kind of which no row is another keeps its map, so that nothing else is made anew. */
function choicesByKind(rows: readonly BookRow<"choices">[], kinds: Query<ChoicesOfKind>): Machine["choices"] {
  const choices = new Map<string, Map<string, BookRow<"choices">>>();
  for (const choice of rows) {
    const ofKind = choices.get(choice.kind) ?? new Map<string, BookRow<"choices">>();
    ofKind.set(choice.subject, choice);
    choices.set(choice.kind, ofKind);
  }
  return new Map([...choices].map(([kind, own]) => [kind, kinds.ask(kind, [own], () => own)]));
}

function sortedEnds(book: Book, options: ReadonlySet<string>): readonly BookRow<"ends">[] {
  return book.tables.ends
    .filter((end) => appliesTo(end, options))
    .sort(
      (a, b) =>
        compareText(a.net, b.net) || compareText(a.harness, b.harness) || compareText(a.point, b.point),
    );
}

/** Resolves a book once, from scratch. */
export function resolveMachine(book: Book, shop: Shop, options?: ReadonlySet<string>): Machine {
  return new Resolver().resolve(book, shop, options ?? usualOptions(book));
}
