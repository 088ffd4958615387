import { type BookInfo, eventSchema, pathTo } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";

/** All books, kept up to date while the page is open; null until they are known. */
export function useBooks(): {
  readonly books: readonly BookInfo[] | null;
  readonly refresh: () => Promise<void>;
} {
  const [books, setBooks] = useState<readonly BookInfo[] | null>(null);
  const refresh = useCallback(
    () => call("books", { parts: {} }).then(setBooks, () => setBooks((now) => now ?? [])),
    [],
  );
  useEffect(() => {
    void refresh();
    const source = new EventSource(pathTo("events", {}));
    source.onmessage = (message: MessageEvent<string>) => {
      const event = eventSchema.safeParse(JSON.parse(message.data));
      if (event.success && (event.data.type === "books" || event.data.type === "change")) void refresh();
    };
    return () => source.close();
  }, [refresh]);
  return { books, refresh };
}
