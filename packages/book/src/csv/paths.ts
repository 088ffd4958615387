import { isDrawingName, safeDrawingName } from "../drawing/drawing-file.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import { isOutlineName } from "../read/words.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { nearest } from "../text/nearest.ts";

/** Folder of the outline drawings within a book. */
export const OUTLINE_FOLDER = "outlines";
/** Folder of the files that parts are made from, within a book. */
export const DRAWING_FOLDER = "drawings";
/** Folder of the shop's tables, within a book or beside it. */
export const SHOP_FOLDER = "shop";

/** What a path within a book's folder or ZIP is. */
export type BookPath =
  | { readonly kind: "machine" }
  | { readonly kind: "table" | "shop-table" | "outline" | "drawing"; readonly name: string }
  /** Looks as if it should be part of the book, but is not. */
  | { readonly kind: "unknown"; readonly expected: string; readonly nearest: string | null }
  /** Belongs to somebody else: notes, hidden files, other folders. */
  | { readonly kind: "other" };

const LOOKS_LIKE_TABLE = /\.(?:csv|tsv|tab|xls|xlsx|ods)$/i;

/** Tells what a path (with `/` between its parts) within a book is. */
export function bookPath(path: string): BookPath {
  if (path === MACHINE_FILE) return { kind: "machine" };
  const parts = path.split("/");
  const [first = "", second = ""] = parts;
  if (parts.some((part) => part.startsWith(".") || part.startsWith("~$"))) return { kind: "other" };
  if (parts.length === 1) return tablePath(first, "table", BOOK_TABLES);
  if (parts.length > 2) return { kind: "other" };
  if (first === SHOP_FOLDER) return tablePath(second, "shop-table", SHOP_TABLES);
  if (first === OUTLINE_FOLDER) return outlinePath(second);
  if (first === DRAWING_FOLDER) return drawingPath(second);
  return { kind: "other" };
}

function tablePath(
  file: string,
  kind: "table" | "shop-table",
  tables: Readonly<Record<string, unknown>>,
): BookPath {
  const name = file.endsWith(".csv") ? file.slice(0, -4) : null;
  if (name !== null && Object.hasOwn(tables, name)) return { kind, name };
  const other = kind === "table" ? SHOP_TABLES : BOOK_TABLES;
  if (name !== null && Object.hasOwn(other, name)) {
    const place = kind === "table" ? `${SHOP_FOLDER}/${file}` : `../${file}`;
    return {
      kind: "unknown",
      expected: `this table in ${kind === "table" ? `the folder \`${SHOP_FOLDER}\`` : "the folder of the book"}; it is not read`,
      nearest: place,
    };
  }
  if (LOOKS_LIKE_TABLE.test(file)) {
    const names = Object.keys(tables).map((table) => `${table}.csv`);
    return {
      kind: "unknown",
      expected: `a table that \`docs/book.md\` lists, as a \`.csv\` file; this file is not read`,
      nearest: nearest(file.replace(LOOKS_LIKE_TABLE, ".csv"), names),
    };
  }
  if (kind === "table" && nearest(file, [MACHINE_FILE]) !== null) {
    return { kind: "unknown", expected: `\`${MACHINE_FILE}\`; this file is not read`, nearest: MACHINE_FILE };
  }
  return { kind: "other" };
}

function outlinePath(file: string): BookPath {
  if (isOutlineName(file)) return { kind: "outline", name: file };
  if (/\.(?:md|txt)$/i.test(file)) return { kind: "other" };
  return { kind: "unknown", expected: "outlines as `.dxf` or `.svg`; this file is not read", nearest: null };
}

function drawingPath(file: string): BookPath {
  if (isDrawingName(file)) return { kind: "drawing", name: file };
  if (/\.(?:md|txt)$/i.test(file)) return { kind: "other" };
  return {
    kind: "unknown",
    expected:
      "drawings as `.pdf`, `.dxf`, `.svg`, `.step` or `.stp`, with names of letters a to z, digits, dots and hyphens; this file is not read",
    nearest: safeDrawingName(file),
  };
}
