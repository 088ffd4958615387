import type { BookFile } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";

/** Files of the open book by name, kept up to date by the server; null until it answered. */
export function useBookFiles(): {
  readonly files: ReadonlyMap<string, BookFile> | null;
  readonly refresh: () => Promise<void>;
} {
  const desk = useDesk();
  const { bookId } = desk;
  const [files, setFiles] = useState<ReadonlyMap<string, BookFile> | null>(null);
  const refresh = useCallback(async () => {
    const list = await call("bookFiles", { parts: { book: bookId } }).catch(() => null);
    if (list !== null) setFiles(new Map(list.map((file) => [file.name, file])));
  }, [bookId]);
  useEffect(() => {
    void refresh();
    const stop = desk.onServer((event) => {
      if (event.type === "files" && event.book === bookId) void refresh();
    });
    // Whoever comes back to the page may have missed what another server on the same store was told.
    const again = (): void => void refresh();
    addEventListener("focus", again);
    return () => {
      stop();
      removeEventListener("focus", again);
    };
  }, [desk, bookId, refresh]);
  return { files, refresh };
}
