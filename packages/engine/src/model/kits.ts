import type { BookRow, BookTables } from "@pinwright/book";
import { Query, sameMembers } from "@pinwright/kernel";

/** A connector of a type with its family and what is said of its cavities. */
export interface ConnectorKit {
  readonly connector: BookRow<"connectors">;
  readonly family: BookRow<"connector_families">;
  readonly pins: readonly BookRow<"pins">[];
}

/** A terminal of a device type with its family. */
interface TerminalKit {
  readonly terminal: BookRow<"terminals">;
  readonly family: BookRow<"connector_families">;
}

/** Everything electrical that a device type, board type, mechanism type or in-line type brings with it. */
export interface Kit {
  readonly connectors: readonly ConnectorKit[];
  readonly terminals: readonly TerminalKit[];
  readonly elements: readonly BookRow<"elements">[];
}

export type Carrier = "device_type" | "board_type" | "mechanism_type" | "inline";

/** Rows of one table by a text of theirs; rows for which `by` is null are left out. */
export function groupRows<R>(
  rows: readonly R[],
  by: (row: R) => string | null,
): ReadonlyMap<string, readonly R[]> {
  const groups = new Map<string, R[]>();
  for (const row of rows) {
    const key = by(row);
    if (key === null) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

/** Rows by their `id`; of two rows with one id the first counts. */
export function rowsById<R extends { readonly id: string }>(rows: readonly R[]): ReadonlyMap<string, R> {
  const map = new Map<string, R>();
  for (const row of rows) if (!map.has(row.id)) map.set(row.id, row);
  return map;
}

const sameKits = (a: Kit, b: Kit): boolean =>
  sameMembers(a.terminals.flatMap(terminalMembers), b.terminals.flatMap(terminalMembers)) &&
  sameMembers(a.elements, b.elements) &&
  sameMembers(a.connectors.flatMap(connectorMembers), b.connectors.flatMap(connectorMembers));

const terminalMembers = (t: TerminalKit): readonly unknown[] => [t.terminal, t.family];
const connectorMembers = (c: ConnectorKit): readonly unknown[] => [c.connector, c.family, ...c.pins];

interface Grouped {
  readonly families: ReadonlyMap<string, BookRow<"connector_families">>;
  readonly connectors: Readonly<Record<Carrier, ReadonlyMap<string, readonly BookRow<"connectors">[]>>>;
  readonly pins: ReadonlyMap<string, readonly BookRow<"pins">[]>;
  readonly terminals: ReadonlyMap<string, readonly BookRow<"terminals">[]>;
  readonly elements: Readonly<Record<Carrier, ReadonlyMap<string, readonly BookRow<"elements">[]>>>;
}

function group(tables: BookTables): Grouped {
  const none: ReadonlyMap<string, readonly BookRow<"elements">[]> = new Map();
  return {
    families: rowsById(tables.connector_families),
    connectors: {
      device_type: groupRows(tables.connectors, (c) => c.device_type),
      board_type: groupRows(tables.connectors, (c) => c.board_type),
      mechanism_type: new Map(),
      inline: groupRows(tables.connectors, (c) => c.id),
    },
    pins: groupRows(tables.pins, (p) => p.connector),
    terminals: groupRows(tables.terminals, (t) => t.device_type),
    elements: {
      device_type: groupRows(tables.elements, (e) => e.device_type),
      board_type: groupRows(tables.elements, (e) => e.board_type),
      mechanism_type: groupRows(tables.elements, (e) => e.mechanism_type),
      inline: none,
    },
  };
}

function kitOf(grouped: Grouped, carrier: Carrier, typeId: string): Kit {
  const connectors = (grouped.connectors[carrier].get(typeId) ?? []).flatMap((connector) => {
    const family = grouped.families.get(connector.family);
    return family === undefined ? [] : [{ connector, family, pins: grouped.pins.get(connector.id) ?? [] }];
  });
  const terminals = (carrier === "device_type" ? (grouped.terminals.get(typeId) ?? []) : []).flatMap(
    (terminal) => {
      const family = grouped.families.get(terminal.family);
      return family === undefined ? [] : [{ terminal, family }];
    },
  );
  return { connectors, terminals, elements: grouped.elements[carrier].get(typeId) ?? [] };
}

/** The kits of one book: each keeps its identity until one of its own rows is edited. */
export class Kits {
  readonly #groups = new Query<Grouped>(Object.is);
  readonly #kits = new Query<Kit>(sameKits);

  /** A function that gives the kit of a type in this book. */
  of(tables: BookTables): (carrier: Carrier, typeId: string) => Kit {
    const { connector_families, connectors, pins, terminals, elements } = tables;
    const grouped = this.#groups.ask("all", [connector_families, connectors, pins, terminals, elements], () =>
      group(tables),
    );
    const inputs = [grouped];
    return (carrier, typeId) =>
      this.#kits.ask(`${carrier}:${typeId}`, inputs, () => kitOf(grouped, carrier, typeId));
  }
}
