import type { ViewEntry } from "../../worker/protocol.ts";
import { addressOf } from "../book/place-of.ts";
import { runAddress } from "../runs/address.ts";
import { screwsAddress } from "../screws/use-screws-place.ts";

type Subject = ViewEntry<"findings">["subjects"][number];
type Fault = ViewEntry<"faults">;

/** Tables whose rows have a page of their own, by its tab in Currents. */
const CURRENTS: ReadonlyMap<string, string> = new Map([
  ["supplies", "supplies"],
  ["fuses", "fuses"],
]);

/** Where an id that a finding names is looked at; null when there is no such place. */
export function subjectAddress(bookId: string, { kind, id, table }: Subject): string | null {
  if (kind === null) return null;
  const tab = kind === "row" ? CURRENTS.get(table ?? "") : undefined;
  if (tab !== undefined) return `/b/${bookId}/wiring/currents/${tab}?id=${encodeURIComponent(id)}`;
  if (kind === "row" && table === "runs") return runAddress(bookId, id);
  if (kind === "row") return `/b/${bookId}/tables/${table}?id=${encodeURIComponent(id)}`;
  if (kind === "screw") return screwsAddress(bookId, { screwId: id });
  return addressOf(bookId, { kind, id });
}

/** The cell that a fault is about; null when it is about none. */
export function faultAddress(bookId: string, { table, rowId, column }: Fault): string | null {
  if (table === null) return null;
  const params = new URLSearchParams({
    ...(rowId === null ? {} : { id: rowId }),
    ...(column === null ? {} : { column }),
  });
  return `/b/${bookId}/tables/${table}?${params}`;
}
