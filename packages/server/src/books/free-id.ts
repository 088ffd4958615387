import { type CellTables, MACHINE_TABLE } from "@pinwright/book";
import { bookId, SHOP_ID } from "@pinwright/contract";

const isBookId = (text: unknown): text is string => bookId.safeParse(text).success && text !== SHOP_ID;

/** Value of a key of `machine.json`; undefined when it is not there or no JSON. */
function machineValue(tables: CellTables, key: string): unknown {
  const [cells] = [...(tables.get(MACHINE_TABLE)?.values() ?? [])];
  try {
    return JSON.parse(cells?.get(key) ?? "");
  } catch {
    return undefined;
  }
}

/** The name of a file as an id: `Tide Watch (2).xlsx` is `tide-watch-2`. */
const idOfName = (name: string): string =>
  name
    .replace(/\.[^.]*$/, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");

/** An id for a book that comes from a file: that of its machine, else that of its file, numbered if it is taken. */
export function freeId(tables: CellTables, name: string, taken: ReadonlySet<string>): string {
  const own = machineValue(tables, "id");
  const wanted = [own, idOfName(name)].find(isBookId) ?? "book";
  const base = wanted.slice(0, 70).replace(/[.-]+$/, "");
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  return id;
}
