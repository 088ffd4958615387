import { useEffect, useState } from "react";
import { call, Unreachable } from "../../api/call.ts";

/** The server is asked for a sign of life so often while the page is looked at. */
const EVERY_MS = 15_000;
/** No fact has this number: the answer is empty, and the device keeps no old one in its place. */
const NOTHING_AFTER = 2 ** 31 - 1;

/**
 * Since when nobody answers, as ms since 1970; null: the server is there. It is asked again and again, for a network can
 * be there and the server not.
 * @param back called when it is there again
 */
export function useReach(back: () => void): number | null {
  const [awaySince, setAwaySince] = useState<number | null>(null);
  useEffect(() => {
    const away = (): void => setAwaySince((before) => before ?? Date.now());
    const there = (): void =>
      setAwaySince((before) => {
        if (before !== null) back();
        return null;
      });
    const look = (): void => {
      if (document.visibilityState !== "visible") return;
      call("facts", { parts: {}, query: { after: NOTHING_AFTER, limit: 1 } }).then(there, (error: unknown) =>
        error instanceof Unreachable ? away() : there(),
      );
    };
    look();
    const timer = setInterval(look, EVERY_MS);
    addEventListener("online", look);
    addEventListener("offline", away);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      removeEventListener("online", look);
      removeEventListener("offline", away);
      document.removeEventListener("visibilitychange", look);
    };
  }, [back]);
  return awaySince;
}
