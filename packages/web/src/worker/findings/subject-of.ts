import type { Languages } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Where an id of a finding is looked at. */
type SubjectKind =
  | "item"
  | "screw"
  | "step"
  | "panel"
  | "lane"
  | "net"
  | "wire"
  | "connector"
  | "harness"
  | "part"
  | "row"
  | "waypoint"
  | "crossing"
  | "board-type"
  | "fit";

/** One id that a finding is about: what it stands for, and what people call it. */
export interface Subject {
  readonly id: string;
  /** Null when the book has nothing of this id. */
  readonly kind: SubjectKind | null;
  /** Table of a `row`. */
  readonly table: string | null;
  readonly label: string;
  readonly labelZh: string;
}

/** Tables whose rows findings name by their ids. */
const ROW_TABLES = [
  "wire_types",
  "connector_families",
  "cables",
  "fuses",
  "supplies",
  "bonds",
  "fastener_types",
  "mechanism_types",
  "device_types",
  "tests",
  "stations",
  "step_rules",
] as const;

/** The same of the shop. */
const SHOP_TABLES = ["runs", "stages", "suppliers", "orders", "stock_sheets", "sites", "benches"] as const;

const none: Languages = { en: "", zh: "" };

const subject = (
  id: string,
  kind: SubjectKind | null,
  labels = none,
  table: string | null = null,
): Subject => ({
  id,
  kind,
  table,
  label: labels.en === id ? "" : labels.en,
  labelZh: labels.zh === id ? "" : labels.zh,
});

/** The printed number of a wire, `7-12`; null when there is no such wire. */
function wireNumber({ line }: Model, id: string): string | null {
  const harness = line.harnesses.get(id.split("|")[1] ?? "");
  const wire = harness?.wires.find((one) => one.id === id);
  return harness === undefined || wire === undefined ? null : `${harness.harness.number}-${wire.number}`;
}

/** Finds out what an id of a finding stands for. */
export function subjectOf(model: Model, id: string): Subject {
  const { machine, harnesses } = model.line;
  const item = machine.items.get(id);
  if (item !== undefined) return subject(id, item.kind === "fastener" ? "screw" : "item", item.labels);
  const tail = id.startsWith("tail:") ? id.slice("tail:".length) : id;
  const landing = machine.landings.get(machine.points.get(tail)?.landingId ?? tail);
  if (landing !== undefined)
    return { ...subject(tail, "connector", machine.items.get(landing.itemId)?.labels), id };
  const harness = harnesses.get(id);
  if (harness !== undefined) return subject(id, "harness", harness.labels);
  const step = model.line.steps.steps.find((one) => one.id === id);
  if (step !== undefined) return subject(id, "step", step.labels);
  const net = machine.nets.get(id);
  if (net !== undefined) return subject(id, "net", { en: net.label, zh: net.label_zh });
  if (id.includes("|")) {
    const number = wireNumber(model, id);
    return subject(id, number === null ? null : "wire", number === null ? none : { en: number, zh: number });
  }
  const panel = machine.panels.get(id);
  if (panel !== undefined) return subject(id, "panel", { en: panel.label, zh: panel.label_zh });
  const { lanes, crossings, waypoints, poses, fits } = model.book.tables;
  const ways = { lane: lanes, crossing: crossings, waypoint: waypoints } as const;
  for (const kind of ["lane", "crossing", "waypoint"] as const)
    if (ways[kind].some((row) => row.id === id)) return subject(id, kind);
  const board = model.line.boards.register.find(({ typeId }) => typeId === id);
  if (board !== undefined) return subject(id, "board-type", board.labels);
  const fit = fits.find((row) => row.id === id);
  if (fit !== undefined) return subject(id, "fit", { en: fit.label, zh: fit.label_zh });
  if (poses.some((row) => row.id === id)) return subject(id, "row", none, "poses");
  const table = ROW_TABLES.find((name) => model.book.tables[name].some((row) => row.id === id));
  if (table !== undefined) return subject(id, "row", none, table);
  return partOf(model, id) ?? shopRowOf(model, id) ?? subject(id, null);
}

/** Something of the bill, or a part that nothing uses. */
function partOf(model: Model, id: string): Subject | null {
  const node = model.line.parts.bill.nodes.get(id);
  if (node !== undefined) return subject(id, "part", node.labels);
  const part = model.book.tables.parts.find((row) => row.id === id);
  return part === undefined ? null : subject(id, "part", { en: part.label, zh: part.label_zh });
}

/** A row of the shop, by its name where it has one. */
function shopRowOf({ shop }: Model, id: string): Subject | null {
  for (const table of SHOP_TABLES) {
    const row = shop.tables[table].find((one) => one.id === id);
    if (row === undefined) continue;
    const labels = "label" in row ? { en: row.label, zh: row.label_zh } : none;
    return subject(id, "row", labels, table);
  }
  return null;
}
