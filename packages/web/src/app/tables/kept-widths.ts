import { useState } from "react";

type Widths = Readonly<Record<string, number>>;

const keyOf = (table: string): string => `pinwright.widths.${table}`;

function kept(table: string): Widths {
  try {
    const parsed: unknown = JSON.parse(localStorage.getItem(keyOf(table)) ?? "{}");
    if (typeof parsed !== "object" || parsed === null) return {};
    return Object.fromEntries(
      Object.entries(parsed).flatMap(([name, px]) => (typeof px === "number" ? [[name, px] as const] : [])),
    );
  } catch {
    return {};
  }
}

/** Widths of the columns of a table that the person chose, kept in this browser. */
export function useKeptWidths(table: string) {
  const [widths, setWidths] = useState(() => kept(table));
  const keep = (next: Widths): void => {
    setWidths(next);
    localStorage.setItem(keyOf(table), JSON.stringify(next));
  };
  const setWidth = (column: string, px: number | null): void => {
    const { [column]: _, ...others } = widths;
    keep(px === null ? others : { ...others, [column]: px });
  };
  return { widths, setWidth, fitAll: () => keep({}) };
}
