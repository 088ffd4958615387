import type { CellTables } from "@pinwright/book";
import type { Release } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { done } from "../http/problem.ts";
import { cellsHash } from "./cells-text.ts";
import { keptShop } from "./kept-shop.ts";

/**
 * Whether a release of the book as it is now would hold the same tables of the book and of the shop as a release does,
 * whatever was changed and changed back in between.
 */
export async function isAsReleased(
  store: Store,
  { book, name }: Pick<Release, "book" | "name">,
  tables: CellTables,
  shop: CellTables,
): Promise<boolean> {
  const hashOf = async (kind: "tables" | "shop"): Promise<string | undefined> =>
    done(await store.releases.items(book, name, kind), `release ${name} of ${book}`)[0]?.hash;
  return (
    (await hashOf("shop")) === (await cellsHash(keptShop(shop))) &&
    (await hashOf("tables")) === (await cellsHash(tables))
  );
}
