import type { Subject, SubjectPlace } from "./change.ts";
import type { FactRow, MachineFacts } from "./facts.ts";

/** Tables of what stands on panels. */
export const ITEM_TABLES: readonly string[] = ["devices", "boards", "mechanisms", "fasteners", "inlines"];

/** Tables whose rows belong to a row of another table: the column that names it, and that table. */
const OWNERS: Readonly<Record<string, readonly (readonly [column: string, table: string])[]>> = {
  panel_sizes: [["panel", "panels"]],
  cutouts: [["panel", "panels"]],
  fit_terms: [["fit", "fits"]],
  pose_places: [["pose", "poses"]],
  mechanism_devices: [["mechanism_type", "mechanism_types"]],
  mechanism_fasteners: [["mechanism_type", "mechanism_types"]],
  mechanism_steps: [["mechanism_type", "mechanism_types"]],
  bodies: [
    ["device_type", "device_types"],
    ["mechanism_type", "mechanism_types"],
  ],
  elements: [
    ["device_type", "device_types"],
    ["board_type", "board_types"],
    ["mechanism_type", "mechanism_types"],
  ],
  connectors: [
    ["board_type", "board_types"],
    ["device_type", "device_types"],
  ],
  terminals: [["device_type", "device_types"]],
  cable_cores: [["cable", "cables"]],
  placements: [["board_type", "board_types"]],
  test_steps: [["test", "tests"]],
  drawings: [["part", "parts"]],
  dimensions: [["part", "parts"]],
  // What is in the machine itself is told of the part.
  bom: [
    ["parent", "parts"],
    ["part", "parts"],
  ],
  alternates: [["part", "parts"]],
};

export interface SubjectId {
  readonly table: string;
  readonly id: string;
}

/** What a row belongs to, so that what is said of it is said there. */
export function ownerOf(facts: MachineFacts, table: string, key: string, row: FactRow): SubjectId {
  if (table === "ends") return itemSubject(facts, (row.point ?? "").split(":")[0] ?? "");
  if (table === "activity" || table === "mechanism_numbers") return itemSubject(facts, row.item ?? "");
  if (table === "pins") return connectorOwner(facts, row.connector ?? "");
  if (table === "windings") {
    const element = facts.rows.elements?.[row.element ?? ""];
    return element === undefined
      ? { table, id: key }
      : ownerOf(facts, "elements", row.element ?? "", element);
  }
  for (const [column, owner] of OWNERS[table] ?? []) {
    const id = row[column] ?? "";
    if (id !== "") return { table: owner, id };
  }
  return { table, id: key };
}

function connectorOwner(facts: MachineFacts, connector: string): SubjectId {
  const row = facts.rows.connectors?.[connector];
  return row === undefined
    ? { table: "connectors", id: connector }
    : ownerOf(facts, "connectors", connector, row);
}

/** The item as people see it: a child of a mechanism is named by its own id. */
export function itemSubject(facts: MachineFacts, id: string): SubjectId {
  const table = ITEM_TABLES.find((name) => facts.rows[name]?.[id] !== undefined);
  if (table !== undefined) return { table, id };
  const kind = facts.items[id]?.kind;
  return { table: kind === undefined ? "devices" : `${kind}s`, id };
}

/** A subject with its names: as it is after, else as it was. */
export function subjectOf(before: MachineFacts, after: MachineFacts, { table, id }: SubjectId): Subject {
  const row = after.rows[table]?.[id] ?? before.rows[table]?.[id];
  const item = after.items[id] ?? before.items[id];
  const en = row?.label ?? row?.label_zh ?? item?.labels.en ?? id;
  const zh = row?.label_zh ?? row?.label ?? item?.labels.zh ?? id;
  const step = after.steps[id] ?? before.steps[id];
  const part = after.parts[id] ?? before.parts[id];
  const labels =
    row === undefined && item === undefined
      ? (step?.labels ?? part?.labels ?? { en: id, zh: id })
      : { en, zh };
  const inMechanism = row === undefined && item?.kind === "device" ? String(item.number ?? "") : "";
  const number =
    row?.number ?? row?.address ?? (table === "steps" ? String(step?.number ?? "") : inMechanism);
  const deviceClass = table === "devices" ? (classOf(after, id) ?? classOf(before, id) ?? "") : "";
  const places = placesOf(before, table, id);
  return {
    ...{ table, id, labels, number, deviceClass },
    places: places.length > 0 ? places : placesOf(after, table, id),
  };
}

const classOf = ({ items, rows }: MachineFacts, id: string): string | undefined =>
  rows.device_types?.[items[id]?.type ?? rows.devices?.[id]?.type ?? ""]?.class;

/** Where something is that people know by its place. */
function placesOf({ rows }: MachineFacts, table: string, id: string): readonly SubjectPlace[] {
  const row = rows[table]?.[id];
  const ids =
    table === "waypoints"
      ? [id]
      : table === "lanes" || table === "crossings"
        ? [row?.from ?? "", row?.to ?? ""]
        : [];
  return ids.flatMap((waypoint): SubjectPlace[] => {
    const at = rows.waypoints?.[waypoint];
    if (at === undefined) return [];
    const { panel = "", side, x_mm = "0", y_mm = "0" } = at;
    const named = rows.panels?.[panel];
    const en = named?.label ?? panel;
    return [
      {
        panel: { en, zh: named?.label_zh ?? en },
        side: side === "top" ? "top" : "under",
        ...{ xMm: Number(x_mm), yMm: Number(y_mm) },
      },
    ];
  });
}
