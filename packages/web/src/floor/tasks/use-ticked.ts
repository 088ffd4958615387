import { useState } from "react";

const keyOf = (list: string): string => `pinwright.floor.ticked.${list}`;

function kept(list: string): ReadonlySet<string> {
  try {
    const found: unknown = JSON.parse(sessionStorage.getItem(keyOf(list)) ?? "[]");
    return new Set(Array.isArray(found) ? found.filter((one) => typeof one === "string") : []);
  } catch {
    return new Set();
  }
}

/** What was ticked off on a list; it stays when the page is loaded again. */
export function useTicked(list: string): {
  readonly ticked: ReadonlySet<string>;
  readonly toggle: (id: string) => void;
  readonly clear: () => void;
} {
  const [ticked, setTicked] = useState(() => kept(list));
  const toggle = (id: string): void => {
    const next = new Set(ticked);
    if (!next.delete(id)) next.add(id);
    sessionStorage.setItem(keyOf(list), JSON.stringify([...next]));
    setTicked(next);
  };
  const clear = (): void => {
    sessionStorage.removeItem(keyOf(list));
    setTicked(new Set());
  };
  return { ticked, toggle, clear };
}

const placeKey = (list: string): string => `pinwright.floor.at.${list}`;

/** How far one is in a list that is gone through one by one; it stays when the page is loaded again. */
export function useAt(list: string): readonly [number, (at: number) => void] {
  const [at, setAt] = useState(() => Number(sessionStorage.getItem(placeKey(list)) ?? "0") || 0);
  const go = (next: number): void => {
    sessionStorage.setItem(placeKey(list), String(next));
    setAt(next);
  };
  return [at, go];
}
