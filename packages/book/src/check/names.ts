import type { AnyRow } from "../read/raw.ts";
import type { TableRows } from "../read/table.ts";
import { hasPoint, type Interior, interiors, listPoints, nearestPoint } from "./interior.ts";
import { Renamed } from "./renamed.ts";
import type { Suggest } from "./suggest.ts";

/** Tables whose rows are items; an id is used once in all of them. */
export const ITEM_TABLES = ["devices", "boards", "mechanisms", "fasteners", "inlines"] as const;

/** Tables that decide which points exist. */
const POINT_TABLES = [
  "terminals",
  "connectors",
  "device_types",
  "board_types",
  "mechanism_types",
  "mechanism_devices",
];

/** What would have led somewhere, and the name that was probably meant. */
interface Missing {
  readonly expected: string;
  readonly nearest: string | null;
}

/** A name that leads somewhere (perhaps under a new id), or why it does not, which takes longer to find out. */
export type Resolved =
  | { readonly ok: true; readonly id: string }
  | { readonly ok: false; readonly why: (suggest: Suggest) => Missing };

const found = (id: string): Resolved => ({ ok: true, id });
const missing = (why: (suggest: Suggest) => Missing): Resolved => ({ ok: false, why });

/** A named thing of a mechanism type. */
type Child = { readonly kind: "device"; readonly type: string } | { readonly kind: "fastener" };

/** What names need to know of a table. */
export type NamedRows = Pick<TableRows, "table" | "rows" | "usable">;

/** Every name of a book, for resolving references, items and points. */
export class Names {
  readonly #tables: ReadonlyMap<string, NamedRows>;
  readonly #renamed: Renamed;
  readonly #ids = new Map<string, ReadonlySet<string>>();
  readonly #items = new Map<string, { readonly table: string; readonly row: AnyRow }>();
  readonly #itemIds: ReadonlySet<string>;
  readonly #children = new Map<string, Map<string, Child>>();
  readonly #interiors: ReturnType<typeof interiors>;
  readonly #itemsUsable: boolean;
  readonly #pointsUsable: boolean;

  constructor(tables: ReadonlyMap<string, NamedRows>) {
    this.#tables = tables;
    this.#renamed = new Renamed(tables.get("renames"));
    for (const table of ITEM_TABLES) {
      for (const row of tables.get(table)?.rows ?? []) {
        if (!this.#items.has(String(row.id))) this.#items.set(String(row.id), { table, row });
      }
    }
    this.#itemIds = new Set(this.#items.keys());
    this.#addChildren("mechanism_devices", (row) => ({ kind: "device", type: String(row.device_type) }));
    this.#addChildren("mechanism_fasteners", () => ({ kind: "fastener" }));
    this.#interiors = interiors(tables, (table, id) => this.present(table, id));
    const usable = (table: string): boolean => tables.get(table)?.usable ?? false;
    this.#itemsUsable = ITEM_TABLES.every(usable);
    this.#pointsUsable = this.#itemsUsable && POINT_TABLES.every(usable);
  }

  #addChildren(table: string, child: (row: AnyRow) => Child): void {
    for (const row of this.#tables.get(table)?.rows ?? []) {
      const type = this.present("mechanism_types", String(row.mechanism_type));
      const children = this.#children.get(type) ?? new Map<string, Child>();
      if (!children.has(String(row.child))) children.set(String(row.child), child(row));
      this.#children.set(type, children);
    }
  }

  /** The ids of a table that is named by one column. */
  ids(table: string): ReadonlySet<string> {
    const known = this.#ids.get(table);
    if (known !== undefined) return known;
    const source = this.#tables.get(table);
    const key = source?.table.key[0] ?? "id";
    const ids = new Set((source?.rows ?? []).map((row) => String(row[key])));
    this.#ids.set(table, ids);
    return ids;
  }

  /** The id under which a row is known now: itself if it exists, else where its renames lead. */
  present(table: string, id: string): string {
    return this.ids(table).has(id) ? id : (this.#renamed.follow(table, id) ?? id);
  }

  /** Resolves a reference into one table. When that table could not be read, everything resolves. */
  ref(table: string, id: string): Resolved {
    const ids = this.ids(table);
    if (ids.has(id)) return found(id);
    const renamed = this.#renamed.follow(table, id);
    if (renamed !== null && ids.has(renamed)) return found(renamed);
    if (this.#tables.get(table)?.usable !== true) return found(id);
    const expected = ids.size === 0 ? `an id of \`${table}\`, which has no rows` : `an id of \`${table}\``;
    return missing((suggest) => ({ expected, nearest: suggest.near(table, id, ids) }));
  }

  /** Resolves an item: a device, board, mechanism, fastener, in-line connector, or `mechanism/child`. */
  item(id: string): Resolved {
    if (this.#items.has(id)) return found(id);
    const slash = id.indexOf("/");
    if (slash > 0) return this.#child(id.slice(0, slash), id.slice(slash + 1));
    for (const table of ITEM_TABLES) {
      const renamed = this.#renamed.follow(table, id);
      if (renamed !== null && this.#items.has(renamed)) return found(renamed);
    }
    if (!this.#itemsUsable) return found(id);
    return missing((suggest) => ({
      expected:
        "an item: an id of `devices`, `boards`, `mechanisms`, `fasteners` or `inlines`, or `mechanism/child`",
      nearest: suggest.near("item", id, this.#itemIds),
    }));
  }

  #child(mechanism: string, child: string): Resolved {
    const owner = this.ref("mechanisms", mechanism);
    if (!owner.ok) {
      return missing((suggest) => {
        const { expected, nearest } = owner.why(suggest);
        return {
          expected: `an item \`mechanism/child\`; ${expected}`,
          nearest: nearest === null ? null : `${nearest}/${child}`,
        };
      });
    }
    const row = this.#items.get(owner.id)?.row;
    const type = row === undefined ? null : this.present("mechanism_types", String(row.type));
    const children = type === null ? undefined : this.#children.get(type);
    if (children?.has(child) === true || !this.#pointsUsable) return found(`${owner.id}/${child}`);
    const names = new Set(children?.keys() ?? []);
    return missing((suggest) => {
      const near = suggest.near(`child ${type}`, child, names);
      return {
        expected: `a device or fastener of the mechanism type \`${type}\`: ${listNames(names)}`,
        nearest: near === null ? null : `${owner.id}/${near}`,
      };
    });
  }

  /** Points inside an item; null when it cannot be told because its type is unknown. */
  interior(itemId: string): Interior | null {
    const { deviceTypes, boardTypes, inlineTypes } = this.#interiors;
    const slash = itemId.indexOf("/");
    const owner = this.#items.get(slash < 0 ? itemId : itemId.slice(0, slash));
    if (owner === undefined) return null;
    const { table, row } = owner;
    if (slash >= 0) {
      const child = this.#children
        .get(this.present("mechanism_types", String(row.type)))
        ?.get(itemId.slice(slash + 1));
      if (child?.kind === "fastener") return pointless(`fastener \`${itemId}\``);
      return child === undefined ? null : (deviceTypes.get(this.present("device_types", child.type)) ?? null);
    }
    if (table === "devices") return deviceTypes.get(this.present("device_types", String(row.type))) ?? null;
    if (table === "boards") return boardTypes.get(this.present("board_types", String(row.type))) ?? null;
    if (table === "inlines")
      return inlineTypes.get(this.present("connectors", String(row.connector))) ?? null;
    return pointless(
      table === "mechanisms"
        ? `mechanism \`${itemId}\` itself (its devices are \`mechanism/child\`)`
        : `fastener \`${itemId}\``,
    );
  }

  /** Resolves a point of the machine: `item:connector.pin` or `item:terminal`. */
  point(text: string): Resolved {
    const colon = text.indexOf(":");
    const local = text.slice(colon + 1);
    const item = this.item(text.slice(0, colon));
    if (!item.ok)
      return missing((suggest) => {
        const { expected, nearest } = item.why(suggest);
        return {
          expected: `a point; ${expected}`,
          nearest: nearest === null ? null : `${nearest}:${local}`,
        };
      });
    const interior = this.interior(item.id);
    if (interior === null || !this.#pointsUsable || hasPoint(interior, local))
      return found(`${item.id}:${local}`);
    return missing(() => noPoint(interior, local, `${item.id}:`));
  }

  /** Resolves a point inside the type that a row of `elements` belongs to. */
  localPoint(row: AnyRow, text: string): Resolved {
    const mechanismType = row.mechanism_type;
    if (typeof mechanismType === "string")
      return this.#childPoint(this.present("mechanism_types", mechanismType), text);
    const interior =
      typeof row.device_type === "string"
        ? this.#interiors.deviceTypes.get(this.present("device_types", row.device_type))
        : typeof row.board_type === "string"
          ? this.#interiors.boardTypes.get(this.present("board_types", row.board_type))
          : undefined;
    if (interior === undefined || !this.#pointsUsable || hasPoint(interior, text)) return found(text);
    return missing(() => noPoint(interior, text, ""));
  }

  #childPoint(mechanismType: string, text: string): Resolved {
    if (!this.#pointsUsable || !this.ids("mechanism_types").has(mechanismType)) return found(text);
    const colon = text.indexOf(":");
    const name = colon < 0 ? text : text.slice(0, colon);
    const local = text.slice(colon + 1);
    const children = this.#children.get(mechanismType) ?? new Map<string, Child>();
    const child = children.get(name);
    if (colon < 0 || child === undefined || child.kind === "fastener") {
      const devices = new Set([...children].filter(([, c]) => c.kind === "device").map(([n]) => n));
      return missing((suggest) => {
        const near = suggest.near(`child ${mechanismType}`, name, devices);
        return {
          expected: `\`child:terminal\` with a child of \`${mechanismType}\`: ${listNames(devices)}`,
          nearest: near === null || colon < 0 ? null : `${near}:${local}`,
        };
      });
    }
    const interior = this.#interiors.deviceTypes.get(this.present("device_types", child.type));
    if (interior === undefined || hasPoint(interior, local)) return found(text);
    return missing(() => noPoint(interior, local, `${name}:`));
  }
}

const pointless = (about: string): Interior => ({ about, terminals: new Set(), connectors: new Map() });

const listNames = (names: ReadonlySet<string>): string =>
  names.size === 0 ? "it has none" : [...names].sort().slice(0, 12).join(", ");

/** That an interior has no such point; the nearest one is named after `owner`. */
function noPoint(interior: Interior, local: string, owner: string): Missing {
  const near = nearestPoint(interior, local);
  return {
    expected: `a point of ${interior.about}: ${listPoints(interior)}`,
    nearest: near === null ? null : owner + near,
  };
}
