import type { MachineChange } from "./change.ts";
import type { FactRow, MachineFacts } from "./facts.ts";
import type { Groups } from "./groups.ts";
import { ITEM_TABLES, ownerOf, type SubjectId } from "./subjects.ts";

/** Columns that are said together, as one move. */
const PLACE: ReadonlySet<string> = new Set(["x_mm", "y_mm"]);
const LABELS: ReadonlySet<string> = new Set(["label", "label_zh"]);
/** Tables that others speak for: what is settled shows in results, renames are told as such. */
const ELSEWHERE: ReadonlySet<string> = new Set(["renames", "choices", "ends"]);

/** Tells what is another in the definition. Ends and choices are told by those who know more. */
export function compareRows(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const tables = [...new Set([...Object.keys(before.rows), ...Object.keys(after.rows)])].filter(
    (table) => !ELSEWHERE.has(table),
  );
  const changed = tables.flatMap((table) => changedRows(before, after, table));
  // What is new or gone as a whole comes first: rows that belong to it are said with it.
  for (const one of changed) if (isOwn(one)) groups.add(one.subject, wholeChange(one));
  for (const one of changed) {
    if (isOwn(one) || groups.isWhole(one.subject)) continue;
    for (const change of changesOf(one, before, after)) groups.add(one.subject, change);
  }
}

interface ChangedRow {
  readonly table: string;
  readonly key: string;
  readonly from: FactRow | undefined;
  readonly to: FactRow | undefined;
  readonly subject: SubjectId;
}

function changedRows(before: MachineFacts, after: MachineFacts, table: string): readonly ChangedRow[] {
  const [old, now] = [before.rows[table] ?? {}, after.rows[table] ?? {}];
  const keys = new Set([...Object.keys(old), ...Object.keys(now)]);
  return [...keys].flatMap((key): ChangedRow[] => {
    const [from, to] = [old[key], now[key]];
    if (sameRow(from, to)) return [];
    const subject = ownerOf(to === undefined ? before : after, table, key, to ?? from ?? {});
    return [{ table, key, from, to, subject }];
  });
}

function sameRow(p: FactRow | undefined, q: FactRow | undefined): boolean {
  if (p === undefined || q === undefined) return p === q;
  const keys = new Set([...Object.keys(p), ...Object.keys(q)]);
  return [...keys].every((key) => p[key] === q[key]);
}

/** A row that is a subject of its own and is new or gone. */
const isOwn = ({ table, key, from, to, subject }: ChangedRow): boolean =>
  subject.table === table && subject.id === key && (from === undefined || to === undefined);

const wholeChange = ({ from, to }: ChangedRow): MachineChange => ({
  what: to === undefined ? "gone" : "new",
  values: placeOf(to ?? from ?? {}),
});

const placeOf = ({ panel = "", side = "", type = "" }: FactRow): Record<string, string> => ({
  panel,
  side,
  type,
});

/** Columns that are measured in the unit that their row names. */
const IN_UNIT: ReadonlySet<string> = new Set(["nominal", "min", "max", "minus", "plus"]);

function changesOf(one: ChangedRow, before: MachineFacts, after: MachineFacts): readonly MachineChange[] {
  const { table, key, from, to } = one;
  const rest = restOf(one, after);
  if (from === undefined || to === undefined)
    return [{ what: to === undefined ? "row-gone" : "row-new", values: { table, key: rest } }];
  const columns = [...new Set([...Object.keys(from), ...Object.keys(to)])].filter(
    (column) => from[column] !== to[column],
  );
  const isItem = ITEM_TABLES.includes(table);
  const isOwnRow = one.subject.table === table;
  const changes: MachineChange[] = isItem ? [...placeChanges(from, to)] : [...moves(from, to)];
  if (!isOwnRow)
    for (const [i, { what, values }] of changes.entries())
      changes[i] = { what, values: { ...values, table, key: rest } };
  if (isOwnRow && columns.some((column) => LABELS.has(column)))
    changes.push({
      what: "named",
      values: { from: [names(from, key)], to: [names(to, key)] },
    });
  if (isItem && columns.includes("type"))
    changes.push({ what: "type", values: { from: from.type ?? "", to: to.type ?? "" } });
  const said = (column: string): boolean =>
    (isOwnRow && LABELS.has(column)) ||
    PLACE.has(column) ||
    (isItem && ["panel", "side", "rotation_deg", "type"].includes(column)) ||
    (table === "steps" && column === "minutes" && isToldByStep(key, from, to, before, after));
  for (const column of columns) {
    if (said(column)) continue;
    if (table === "outlines") changes.push({ what: "drawn", values: {} });
    else
      changes.push({
        what: "field",
        values: {
          ...{ table, column, from: from[column] ?? "", to: to[column] ?? "", key: isOwnRow ? "" : rest },
          unit: IN_UNIT.has(column) ? (to.unit ?? from.unit ?? (table === "dimensions" ? "mm" : "")) : "",
        },
      });
  }
  return changes;
}

/** Whether the step of assembly says the same of its time. */
function isToldByStep(
  id: string,
  from: FactRow,
  to: FactRow,
  before: MachineFacts,
  after: MachineFacts,
): boolean {
  const [old, now] = [before.steps[id], after.steps[id]];
  return (
    old !== undefined &&
    now !== undefined &&
    old.minutes !== now.minutes &&
    old.minutes === Number(from.minutes) &&
    now.minutes === Number(to.minutes)
  );
}

const names = (row: FactRow, key: string) => ({
  en: row.label ?? row.label_zh ?? key,
  zh: row.label_zh ?? row.label ?? key,
});

/** What tells the row apart among those of its subject, as people say it; blank: nothing, there is only one. */
function restOf({ table, key, from, to, subject }: ChangedRow, { rows }: MachineFacts): string {
  const row = to ?? from ?? {};
  const connector = (id: string): string => (rows.connectors?.[id]?.name ?? id).toUpperCase();
  if (table === "pins") return `${connector(row.connector ?? "")}-${row.pin ?? ""}`;
  if (table === "connectors") return (row.name ?? key).toUpperCase();
  // What is in the machine itself has no parent.
  if (key === subject.id || (table === "bom" && row.parent === undefined)) return "";
  return key.startsWith(`${subject.id} `) ? key.slice(subject.id.length + 1) : key;
}

const mm = (row: FactRow, column: string): number => Number(row[column] ?? 0);

/** Where an item stands: another panel or side, how far it moved, how it is turned. */
function placeChanges(from: FactRow, to: FactRow): readonly MachineChange[] {
  const changes: MachineChange[] = [];
  if (from.panel !== to.panel || from.side !== to.side)
    changes.push({
      what: "put-on",
      values: {
        ...{ fromPanel: from.panel ?? "", fromSide: from.side ?? "" },
        ...{ panel: to.panel ?? "", side: to.side ?? "" },
      },
    });
  changes.push(...moves(from, to));
  if ((from.rotation_deg ?? "0") !== (to.rotation_deg ?? "0"))
    changes.push({ what: "turned", values: { from: mm(from, "rotation_deg"), to: mm(to, "rotation_deg") } });
  return changes;
}

/** How far something moved. */
function moves(from: FactRow, to: FactRow): readonly MachineChange[] {
  const [dx, dy] = [mm(to, "x_mm") - mm(from, "x_mm"), mm(to, "y_mm") - mm(from, "y_mm")];
  return dx === 0 && dy === 0
    ? []
    : [{ what: "moved", values: { mm: Math.hypot(dx, dy), dxMm: dx, dyMm: dy } }];
}
