import { join } from "node:path";
import { type CellTables, MACHINE_ROW, MACHINE_TABLE, RANK } from "@pinwright/book";
import { SHOP_ID } from "@pinwright/contract";
import type { Actor, NewFile, Store } from "@pinwright/store";
import { done } from "../http/problem.ts";
import type { Files } from "./files.ts";
import { noteOf } from "./notes.ts";

/** Example books that come with the program. */
export const EXAMPLES = ["tidewatch", "first-light"] as const;
export type ExampleName = (typeof EXAMPLES)[number];

/** Whoever puts in what comes with the program. */
const PROGRAM: Actor = { personId: "pinwright", personName: "Pinwright" };

/** The cells of an example, and the shop that comes with it. */
export async function readExample(
  files: Files,
  folder: string,
  name: ExampleName,
): Promise<{
  readonly tables: CellTables;
  readonly shop: CellTables | null;
  readonly drawings: readonly NewFile[];
}> {
  const { tables, shop, drawings } = await files.readAt(join(folder, name), name);
  if (tables === null) throw new Error(`The example ${name} is not in ${folder}.`);
  return { tables, shop, drawings };
}

/** A machine with another id and other names. */
export function renamed(tables: CellTables, id: string, label: string, labelZh: string): CellTables {
  const rows = tables.get(MACHINE_TABLE) ?? new Map<string, ReadonlyMap<string, string>>();
  const [row = MACHINE_ROW, cells = new Map([[RANK, "a0"]])] = [...rows][0] ?? [];
  const changed = new Map([
    ...cells,
    ["id", JSON.stringify(id)],
    ["label", JSON.stringify(label)],
    ["label_zh", JSON.stringify(labelZh)],
  ]);
  return new Map([...tables, [MACHINE_TABLE, new Map([...rows, [row, changed]])]]);
}

/**
 * Puts the examples and a shop into a store that has no books. The shop is Tidewatch's if it has one, else
 * First Light's.
 */
export async function firstStart(store: Store, files: Files, folder: string): Promise<void> {
  if ((await store.books.list()).length > 0) return;
  let shop: CellTables | null = null;
  for (const name of EXAMPLES) {
    const example = await readExample(files, folder, name);
    shop ??= example.shop;
    const rows = {
      id: name,
      kind: "machine",
      tables: example.tables,
      files: example.drawings,
      note: noteOf({ what: "example" }),
    } as const;
    done(await store.books.add(rows, PROGRAM), `book ${name}`);
  }
  const rows = {
    id: SHOP_ID,
    kind: "shop",
    tables: shop ?? new Map(),
    note: noteOf({ what: "example" }),
  } as const;
  done(await store.books.add(rows, PROGRAM), "shop");
}
