import type { AnyRow } from "../read/raw.ts";
import { nearest } from "../text/nearest.ts";

/** The points inside a type: its terminals, and its connectors with their number of cavities. */
export interface Interior {
  /** The type as a reader would say it: `device type \`microswitch\``. */
  readonly about: string;
  readonly terminals: Set<string>;
  readonly connectors: Map<string, number>;
}

const PIN = /^(.+)\.([1-9]\d{0,3})$/;

/** Whether a local point (`connector.pin` or `terminal`) exists. */
export function hasPoint(interior: Interior, local: string): boolean {
  if (interior.terminals.has(local)) return true;
  const parts = PIN.exec(local);
  if (parts === null) return false;
  const ways = interior.connectors.get(parts[1] ?? "");
  return ways !== undefined && Number(parts[2]) <= ways;
}

/** The existing local point that was probably meant. */
export function nearestPoint(interior: Interior, local: string): string | null {
  const parts = PIN.exec(local);
  const pin = Number(parts?.[2] ?? 1);
  const candidates = new Set(interior.terminals);
  for (const [name, ways] of interior.connectors) candidates.add(`${name}.${Math.min(pin, ways)}`);
  const ways = interior.connectors.get(parts?.[1] ?? "");
  return ways === undefined ? nearest(local, candidates) : `${parts?.[1]}.${Math.min(pin, ways)}`;
}

const FEW = 12;

/** What the interior offers, in words. */
export function listPoints(interior: Interior): string {
  const names = [
    ...interior.terminals,
    ...[...interior.connectors].map(([name, ways]) =>
      ways === 1 ? `${name}.1` : `${name}.1…${name}.${ways}`,
    ),
  ].sort();
  if (names.length === 0) return "it has no points";
  return `it has ${names.slice(0, FEW).join(", ")}${names.length > FEW ? ", …" : ""}`;
}

/** Interiors of all device types, board types and in-line connector types, by id. */
export interface Interiors {
  readonly deviceTypes: ReadonlyMap<string, Interior>;
  readonly boardTypes: ReadonlyMap<string, Interior>;
  /** Halves `a` and `b` of an in-line connector of this connector type. */
  readonly inlineTypes: ReadonlyMap<string, Interior>;
}

function emptyInteriors(rows: readonly AnyRow[], kind: string): Map<string, Interior> {
  return new Map(
    rows.map((row) => [
      String(row.id),
      { about: `${kind} \`${String(row.id)}\``, terminals: new Set(), connectors: new Map() },
    ]),
  );
}

/** Gathers the points of every type. `follow` leads an old id of a table to the present one. */
export function interiors(
  tables: ReadonlyMap<string, { readonly rows: readonly Readonly<AnyRow>[] }>,
  follow: (table: string, id: string) => string,
): Interiors {
  const rows = (name: string): readonly AnyRow[] => tables.get(name)?.rows ?? [];
  const deviceTypes = emptyInteriors(rows("device_types"), "device type");
  const boardTypes = emptyInteriors(rows("board_types"), "board type");
  const inlineTypes = new Map<string, Interior>();
  for (const row of rows("terminals")) {
    deviceTypes.get(follow("device_types", String(row.device_type)))?.terminals.add(String(row.terminal));
  }
  for (const row of rows("connectors")) {
    const ways = Number(row.ways);
    const name = String(row.name);
    if (row.board_type !== null)
      boardTypes.get(follow("board_types", String(row.board_type)))?.connectors.set(name, ways);
    else if (row.device_type !== null)
      deviceTypes.get(follow("device_types", String(row.device_type)))?.connectors.set(name, ways);
    else {
      inlineTypes.set(String(row.id), {
        about: `in-line connector of type \`${String(row.id)}\``,
        terminals: new Set(),
        connectors: new Map([
          ["a", ways],
          ["b", ways],
        ]),
      });
    }
  }
  return { deviceTypes, boardTypes, inlineTypes };
}
