import { type BookInfo, eventSchema, pathTo } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";

/** All books, kept up to date while the page is open; null until they are known. */
export function useBooks(): {
  readonly books: readonly BookInfo[] | null;
  readonly refresh: () => Promise<void>;
} {
  const [books, setBooks] = useState<readonly BookInfo[] | null>(null);
  const { refresh: refreshSession } = useSession();
  const refresh = useCallback(
    () => call("books", { parts: {} }).then(setBooks, () => setBooks((now) => now ?? [])),
    [],
  );
  useEffect(() => {
    void refresh();
    const source = new EventSource(pathTo("events", {}));
    source.onmessage = (message: MessageEvent<string>) => {
      const event = eventSchema.safeParse(JSON.parse(message.data));
      if (!event.success) return;
      if (event.data.type === "books" || event.data.type === "change") void refresh();
      else if (event.data.type === "session") void refreshSession();
    };
    return () => source.close();
  }, [refresh, refreshSession]);
  return { books, refresh };
}
