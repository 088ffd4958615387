import type { Book, BookRow, BookTables, Shop, ShopTables } from "@pinwright/book";
import { rows } from "../author.ts";
import { CABINET_BOM } from "./cabinet-bom.ts";
import { CABINET_PARTS } from "./cabinet-parts.ts";
import { COIL_PARTS } from "./coil-parts.ts";
import { COMMON_PARTS } from "./common-parts.ts";
import { DEVICE_PARTS } from "./device-parts.ts";
import { knownOf, READY_BOARDS } from "./known-parts.ts";
import { FLIP_CONTENTS, FLIP_PARTS } from "./mechanism-parts-flip.ts";
import { SHOW_CONTENTS, SHOW_PARTS } from "./mechanism-parts-show.ts";
import { TARGET_CONTENTS, TARGET_PARTS } from "./mechanism-parts-targets.ts";
import type { Item, Part } from "./part-kit.ts";
import { pricesOf } from "./prices.ts";
import { PRINT_BOM, PRINT_PARTS } from "./print-parts.ts";
import { tooling } from "./tools.ts";
import { TOP_PARTS } from "./top-parts.ts";
import { waysOf } from "./ways.ts";

const ITEMS: readonly Item[] = [
  ...COMMON_PARTS,
  ...COIL_PARTS,
  ...DEVICE_PARTS,
  ...FLIP_PARTS,
  ...TARGET_PARTS,
  ...SHOW_PARTS,
  ...TOP_PARTS,
  ...CABINET_PARTS,
  ...PRINT_PARTS,
];
const ITEM_OF: ReadonlyMap<string, Item> = new Map(ITEMS.map((item) => [item.part.id, item]));
if (ITEM_OF.size < ITEMS.length) {
  const ids = ITEMS.map(({ part }) => part.id);
  throw new Error(`Parts are written twice: ${ids.filter((id, i) => ids.indexOf(id) !== i).join(" ")}`);
}

const CONTENTS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  ...FLIP_CONTENTS,
  ...TARGET_CONTENTS,
  ...SHOW_CONTENTS,
};

/** Types that share a part, or have one of another name. */
const SHARED: Readonly<Record<string, string>> = {
  "dt.top-rubber-sling-left": "rubber.ring-sling",
  "dt.top-rubber-sling-right": "rubber.ring-sling",
  "dt.top-rubber-wing-left": "rubber.ring-wing",
  "dt.top-rubber-wing-right": "rubber.ring-wing",
  "dt.top-rubber-wall-left": "rubber.wall",
  "dt.top-captive-ball": "hw.ball",
};

const devicePart = (type: string): string =>
  SHARED[type] ?? type.replace(/^dt\.(top-|coil-|)/, (_, group) => DEVICE_GROUPS[String(group)] ?? "dev.");
const DEVICE_GROUPS: Readonly<Record<string, string>> = { "top-": "top.", "coil-": "coil." };
const mechanismPart = (type: string): string => type.replace("mt.", "asm.");
const boardPart = (type: string): string => type.replace("bt.", "board.");

/** Assemblies that the book describes itself: mechanisms and boards, each with a number under which it is stocked. */
function assemblies({ mechanism_types, board_types }: BookTables): readonly Part[] {
  return [
    ...mechanism_types.map(
      ({ id, label, label_zh }): Part => ({
        id: mechanismPart(id),
        label,
        label_zh,
        kind: "mechanism",
        source: "make",
        revision: "A",
      }),
    ),
    ...board_types.map(({ id, label, label_zh, revision }): Part => {
      const part = boardPart(id);
      return {
        id: part,
        label,
        label_zh,
        kind: "board",
        source: READY_BOARDS.has(part) ? "have-made" : "make",
        revision,
      };
    }),
  ];
}

type BomRow = Partial<BookRow<"bom">>;

/** A hole of the playfield for an insert is as wide as its insert. */
function inserts({ cutouts }: BookTables): readonly BomRow[] {
  const counts = new Map<number, number>();
  for (const { purpose, width_mm } of cutouts)
    if (purpose === "insert" && width_mm !== null) counts.set(width_mm, (counts.get(width_mm) ?? 0) + 1);
  return [...counts].map(([mm, quantity]) => ({
    part: `insert.round-${mm}`,
    quantity,
    remark: `one in each hole of ${mm} mm`,
  }));
}

/** What lies in the crate beside the machine. */
const LOOSE = /^(hw\.(ball|leg|leveller|leg-bolt)|cord\.\d+|bk\.service-\w+|asm\.spares-bag)$/;

const travels = (part: string): BookRow<"bom">["travels"] =>
  part.startsWith("pk.") ? "packing" : LOOSE.test(part) ? "loose" : "in";

function bom(tables: BookTables): BookRow<"bom">[] {
  return rows("bom", [
    ...Object.entries(CABINET_BOM).map(
      ([part, quantity]): BomRow => ({ part, quantity, travels: travels(part) }),
    ),
    ...inserts(tables),
    ...PRINT_BOM.map(
      ([part, quantity, options = []]): BomRow => ({ part, quantity, travels: travels(part), options }),
    ),
    ...tables.mechanism_types.flatMap(({ id }) =>
      Object.entries(CONTENTS[id] ?? {}).map(
        ([part, quantity]): BomRow => ({ parent: mechanismPart(id), part, quantity }),
      ),
    ),
    ...ITEMS.flatMap(({ part: { id }, contains }) =>
      Object.entries(contains).map(([part, quantity]): BomRow => ({ parent: id, part, quantity })),
    ),
  ]);
}

/** The book's own parts with what else is known of them, and after them all that is made or bought besides. */
function partRows(tables: BookTables): BookRow<"parts">[] {
  const own = tables.parts.map((part) => ({ ...part, ...knownOf(part)?.cells }));
  const has = new Set(own.map(({ id }) => id));
  const more = [...ITEMS.map(({ part }) => part), ...assemblies(tables)].filter(({ id }) => !has.has(id));
  return [
    ...own,
    ...rows(
      "parts",
      more.map((part) => ({ ...part, ...knownOf({ value: "", ...part })?.cells })),
    ),
  ];
}

/** Every type names its part, and every part says what it costs and what is in it. */
export function withParts(book: Book, shop: Shop): { readonly book: Book; readonly shop: Shop } {
  const t = book.tables;
  const parts = partRows(t);
  const known = new Set(parts.map(({ id }) => id));
  const sure = (part: string): string => {
    if (!known.has(part)) throw new Error(`No part ${part} is written.`);
    return part;
  };
  const tables: BookTables = {
    ...t,
    parts,
    tooling,
    bom: bom(t),
    device_types: t.device_types.map((type) => ({ ...type, part: sure(devicePart(type.id)) })),
    mechanism_types: t.mechanism_types.map((type) => ({ ...type, part: sure(mechanismPart(type.id)) })),
    board_types: t.board_types.map((type) => ({
      ...type,
      part: READY_BOARDS.has(boardPart(type.id)) ? null : type.part,
      stuffed_part: sure(boardPart(type.id)),
    })),
  };
  for (const { part } of tables.bom) sure(part);
  const offers = new Map(
    parts.flatMap((part) => {
      const given = ITEM_OF.get(part.id)?.offers ?? knownOf(part)?.offers;
      return given === undefined ? [] : [[part.id, given] as const];
    }),
  );
  const shopTables: ShopTables = { ...shop.tables, prices: pricesOf(parts, offers), ways: waysOf(ITEMS) };
  return { book: { ...book, tables }, shop: { ...shop, tables: shopTables } };
}
