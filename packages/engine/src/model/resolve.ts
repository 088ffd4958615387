import type { Book, BookRow, Shop } from "@pinwright/book";
import { compareText, Query } from "@pinwright/kernel";
import { cavityGrid } from "./cavities.ts";
import {
  boardItem,
  childDevice,
  childFastener,
  deviceItem,
  fastenerItem,
  inlineItem,
  mechanismItem,
} from "./items.ts";
import { groupRows, Kits, rowsById } from "./kits.ts";
import type { Item, Landing, Machine, PlacedElement, Point } from "./machine.ts";
import { type ItemContacts, itemContacts } from "./points.ts";

type Rows<R> = ReadonlyMap<string, R>;

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

/**
 * Sets every type into every place. It remembers what it resolved, so that after an edit only what the edit
 * touched is made anew and everything else keeps its identity. Rows that refer to nothing are passed over: the
 * reader of the book has already told of them.
 */
export class Resolver {
  readonly #kits = new Kits();
  readonly #choices = new Query<Machine["choices"]>(Object.is);
  readonly #items = new Query<Item>(Object.is);
  readonly #contacts = new Query<ItemContacts>(Object.is);
  readonly #ends = new Query<readonly BookRow<"ends">[]>(
    (a, b) => a.length === b.length && a.every((row, i) => row === b[i]),
  );

  resolve(book: Book, shop: Shop, options: ReadonlySet<string> = usualOptions(book)): Machine {
    const items = new Map<string, Item>();
    this.#addItems(book, options, items);

    const kitFor = this.#kits.of(book.tables);
    const landings = new Map<string, Landing>();
    const points = new Map<string, Point>();
    const elements: PlacedElement[] = [];
    for (const item of items.values()) {
      if (item.kind === "fastener") continue;
      const carrier =
        item.kind === "device"
          ? "device_type"
          : item.kind === "board"
            ? "board_type"
            : item.kind === "mechanism"
              ? "mechanism_type"
              : "inline";
      const kit = kitFor(carrier, item.type.id);
      const contacts = this.#contacts.ask(item.id, [item, kit], () => itemContacts(item, kit));
      for (const landing of contacts.landings) landings.set(landing.id, landing);
      for (const point of contacts.points) points.set(point.id, point);
      elements.push(...contacts.elements);
    }
    const panels = rowsById(book.tables.panels.filter((p) => appliesTo(p, options)));
    const panelOutlines = new Map(
      [...panels.values()].flatMap((panel) => {
        const outline = panel.outline === null ? undefined : book.outlines.get(panel.outline);
        return outline === undefined ? [] : [[panel.id, outline] as const];
      }),
    );
    const choices = this.#choices.ask("choices", [book.tables.choices], () =>
      choicesByKind(book.tables.choices),
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
      elements,
      nets: rowsById(book.tables.nets),
      harnesses: rowsById(book.tables.harnesses.filter((h) => appliesTo(h, options))),
      ends: this.#ends.ask("ends", [book.tables.ends, options], () => sortedEnds(book, options)),
      wireTypes: rowsById(book.tables.wire_types),
      choices,
    };
  }

  /** Forgets what the last two books did not use. */
  sweep(): void {
    this.#items.sweep();
    this.#contacts.sweep();
  }

  #addItems(book: Book, options: ReadonlySet<string>, items: Map<string, Item>): void {
    const t = book.tables;
    const add = (item: Item): void => {
      if (!items.has(item.id)) items.set(item.id, item);
    };
    const deviceTypes = rowsById(t.device_types);
    const fastenerTypes = rowsById(t.fastener_types);
    const outlines = book.outlines;
    const each = <
      R extends { readonly id: string; readonly type: string; readonly options: readonly string[] },
      T,
    >(
      rows: readonly R[],
      types: Rows<T>,
      make: (row: R, type: T) => Item,
    ): void => {
      for (const row of rows) {
        const type = types.get(row.type);
        if (type === undefined || !appliesTo(row, options)) continue;
        add(this.#items.ask(row.id, [row, type, outlines], () => make(row, type)));
      }
    };
    each(t.devices, deviceTypes, (row, type) => deviceItem(book, row, type));
    each(t.boards, rowsById(t.board_types), (row, type) => boardItem(book, row, type));
    const childDevices = groupRows(t.mechanism_devices, (row) => row.mechanism_type);
    const childFasteners = groupRows(t.mechanism_fasteners, (row) => row.mechanism_type);
    each(t.mechanisms, rowsById(t.mechanism_types), (row, type) => mechanismItem(book, row, type));
    const mechanisms = [...items.values()].filter((item) => item.kind === "mechanism");
    for (const parent of mechanisms) {
      for (const row of childDevices.get(parent.type.id) ?? []) {
        const type = deviceTypes.get(row.device_type);
        if (type === undefined) continue;
        add(
          this.#items.ask(`${parent.id}/${row.child}`, [parent, row, type, outlines], () =>
            childDevice(book, parent, row, type),
          ),
        );
      }
      for (const row of childFasteners.get(parent.type.id) ?? []) {
        const type = fastenerTypes.get(row.fastener_type);
        if (type === undefined) continue;
        add(
          this.#items.ask(`${parent.id}/${row.child}`, [parent, row, type], () =>
            childFastener(parent, row, type),
          ),
        );
      }
    }
    each(t.fasteners, fastenerTypes, (row, type) => fastenerItem(row, type));
    const connectors = rowsById(t.connectors);
    const families = rowsById(t.connector_families);
    for (const row of t.inlines) {
      const type = connectors.get(row.connector);
      const family = type === undefined ? undefined : families.get(type.family);
      if (type === undefined || family === undefined || !appliesTo(row, options)) continue;
      add(
        this.#items.ask(row.id, [row, type, family], () => {
          const grid = cavityGrid(type, family);
          const widthMm = grid.columns * grid.pitchMm + INLINE_WALL_MM;
          const depthMm = Math.max(INLINE_LENGTH_MM, grid.rows * grid.rowPitchMm + INLINE_WALL_MM);
          return inlineItem(row, type, widthMm, depthMm);
        }),
      );
    }
  }
}

function choicesByKind(rows: readonly BookRow<"choices">[]): Machine["choices"] {
  const choices = new Map<string, Map<string, BookRow<"choices">>>();
  for (const choice of rows) {
    const ofKind = choices.get(choice.kind) ?? new Map<string, BookRow<"choices">>();
    ofKind.set(choice.subject, choice);
    choices.set(choice.kind, ofKind);
  }
  return choices;
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
