import { LIMITS } from "@pinwright/book";
import { type BodyOf, type QueryOf, SHOP_ID } from "@pinwright/contract";
import { actorOf } from "../accounts/caller.ts";
import { partDrawings } from "../books/drawings.ts";
import type { Handlers } from "../http/bind.ts";
import { fileResponse, savedResponse } from "../http/file-response.ts";
import { done, Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

type Names = "bookFiles" | "bookFile" | "putBookFile" | "deleteBookFile" | "sendOut" | "checkSheet";

/** Files that parts are made from, and what is sent out to be made. */
export function fileHandlers({ deps, shelf, files, announcer }: ServerParts): Pick<Handlers, Names> {
  const { store } = deps;

  /** The files that a book has; refuses the shop, whose parts are in the books. */
  const filesOf = async (book: string) => {
    const info = await store.books.info(book);
    if (info?.kind === "shop")
      throw new Refused("bad-request", "The shop has no drawings: they belong to the parts of a book.");
    return done(await store.files.list(book), `book ${book}`);
  };

  return {
    bookFiles: async ({ parts: { book } }) => [...(await filesOf(book))],
    bookFile: async ({ parts: { book, file }, query: { sha256 } }) => {
      const found = done(await store.files.get(book, file, sha256), `file ${file} in this book`);
      return savedResponse(found.bytes, found.file.name);
    },
    putBookFile: async ({ parts: { book, file }, request, caller }) => {
      const others = (await filesOf(book)).filter(({ name }) => name !== file);
      if (others.length >= LIMITS.drawingFiles)
        throw new Refused("too-large", `A book has at most ${LIMITS.drawingFiles} files. Delete some first.`);
      const bytes = await files.takeDrawing(request, file);
      const total = others.reduce((sum, other) => sum + other.bytes, bytes.byteLength);
      if (total > LIMITS.drawingsBytes)
        throw new Refused(
          "too-large",
          `All files of a book have at most ${LIMITS.drawingsBytes} bytes together. Delete some first.`,
        );
      const [put] = done(
        await store.files.put(book, [{ name: file, bytes }], actorOf(caller)),
        `book ${book}`,
      );
      announcer.files(book);
      if (put === undefined) throw new Error(`${file} was put into ${book} and is not there.`);
      return put;
    },
    deleteBookFile: async ({ parts: { book, file } }) => {
      const gone = done(await store.files.remove(book, file), `file ${file} in this book`);
      announcer.files(book);
      return gone;
    },
    checkSheet: async ({ parts: { book }, query, caller }) => {
      await filesOf(book);
      const sheet: QueryOf<"checkSheet"> = query;
      const path = await files.checkSheet({
        tables: shelf.jsonOf((await shelf.now(book)).tables),
        shop: shelf.jsonOf((await shelf.now(SHOP_ID)).tables),
        sheet,
        creator: caller.sessionHash === null ? "" : caller.person.name,
      });
      const name = `first-article-${sheet.sample ?? sheet.part}`.replace(/[^a-z0-9.-]/gi, "-");
      return fileResponse(path, `${name}.pdf`, true);
    },
    sendOut: async ({ parts: { book }, body, caller }) => {
      await filesOf(book);
      const order: BodyOf<"sendOut"> = body;
      const held = await shelf.now(book);
      const shop = await shelf.now(SHOP_ID);
      const wanted = new Set(order.parts.map(({ part }) => part));
      const path = await files.sendOut({
        tables: shelf.jsonOf(held.tables),
        shop: shelf.jsonOf(shop.tables),
        order,
        creator: caller.sessionHash === null ? "" : caller.person.name,
        drawings: await partDrawings(store, book, held.tables, wanted),
      });
      const [first] = order.parts;
      const what =
        order.parts.length === 1 && first !== undefined ? first.part : `${order.parts.length}-parts`;
      return fileResponse(
        path,
        `${held.info.id}-${what.replace(/[^a-z0-9.-]/gi, "-")}-${order.date}.zip`,
        true,
      );
    },
  };
}
