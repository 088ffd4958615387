import type { Book } from "../../packages/book/src/index.ts";
import type { Row } from "./script.ts";

/** What things are called in the sentences that are expected: from the rows alone. */
const CLASSES: Readonly<Record<string, string>> = {
  switch: "Switch",
  lamp: "Lamp",
  coil: "Coil",
  motor: "Motor",
  sensor: "Sensor",
  button: "Button",
  speaker: "Loudspeaker",
  display: "Display",
  supply: "Supply unit",
};

interface Labelled {
  readonly id: string;
  readonly label: string;
}

/** Name of a row of a list. */
export const labelOf = (rows: readonly Labelled[], id: string | null): string =>
  rows.find((row) => row.id === id)?.label ?? String(id);

const classOf = (book: Book, type: string): string =>
  CLASSES[book.tables.device_types.find(({ id }) => id === type)?.class ?? ""] ?? "Device";

/** `Switch 31, Left outlane`. */
export const device = (book: Book, { number, label, type }: Row<"devices">): string =>
  `${classOf(book, type)}${number === null ? "" : ` ${number}`}, ${label}`;

export const board = ({ address, label }: Row<"boards">): string =>
  address === null ? `Board, ${label}` : `Board ${address}, ${label}`;

export const fastener = (book: Book, { id, type }: Row<"fasteners">): string =>
  `Fastener, ${labelOf(book.tables.fastener_types, type)} (${id})`;

/**
 * A device, or the child of a mechanism: `Coil 1, Left flipper: coil`.
 * @param renumbered number that it has now, where that is not the book's
 */
export function itemOf(book: Book, id: string, renumbered?: number): string {
  const own = book.tables.devices.find((row) => row.id === id);
  if (own !== undefined) return device(book, own);
  const [mechanism = "", child = ""] = id.split("/");
  const at = book.tables.mechanisms.find((row) => row.id === mechanism);
  const of = book.tables.mechanism_devices.find(
    (row) => row.mechanism_type === at?.type && row.child === child,
  );
  const number = renumbered ?? book.tables.mechanism_numbers.find(({ item }) => item === id)?.number;
  const name = `${at?.label ?? ""}: ${of?.label ?? ""}`;
  return `${classOf(book, of?.device_type ?? "")}${number === undefined ? "" : ` ${number}`}, ${name}`;
}

const SIDES = { top: "top side", under: "underside" } as const;

/** `underside of Playfield`. */
export const sideOf = (book: Book, { panel, side }: Pick<Row<"devices">, "panel" | "side">): string =>
  `${SIDES[side]} of ${labelOf(book.tables.panels, panel)}`;

/** `underside of Playfield, x 122, y 1050 mm`: where a waypoint is. */
export function spotOf(book: Book, id: string): string {
  const row = book.tables.waypoints.find((one) => one.id === id);
  if (row === undefined) throw new Error(`no waypoint ${id}`);
  return `${sideOf(book, row)}, x ${row.x_mm}, y ${row.y_mm} mm`;
}

/** `Lane ln.a (underside of Playfield, x 1, y 2 mm to underside of Playfield, x 3, y 4 mm)`. */
export const wayOf = (
  book: Book,
  what: "Lane" | "Crossing",
  { id, from, to }: { readonly id: string; readonly from: string; readonly to: string },
): string => `${what} ${id} (${spotOf(book, from)} to ${spotOf(book, to)})`;

/** A cell that may be blank. */
export const orBlank = (value: string | number | null, unit = ""): string =>
  value === null || value === "" ? "not set" : `${value}${unit === "" ? "" : ` ${unit}`}`;
