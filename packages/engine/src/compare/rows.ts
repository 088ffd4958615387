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
    for (const change of changesOf(one)) groups.add(one.subject, change);
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

function changesOf(one: ChangedRow): readonly MachineChange[] {
  const { table, key, from, to } = one;
  if (from === undefined || to === undefined)
    return [{ what: to === undefined ? "row-gone" : "row-new", values: { table, key: restOf(one) } }];
  const columns = [...new Set([...Object.keys(from), ...Object.keys(to)])].filter(
    (column) => from[column] !== to[column],
  );
  const isItem = ITEM_TABLES.includes(table);
  const isOwnRow = one.subject.table === table;
  const changes: MachineChange[] = [];
  if (isItem) changes.push(...placeChanges(from, to));
  if (isOwnRow && columns.some((column) => LABELS.has(column)))
    changes.push({
      what: "named",
      values: { from: [names(from, key)], to: [names(to, key)] },
    });
  if (isItem && columns.includes("type"))
    changes.push({ what: "type", values: { from: from.type ?? "", to: to.type ?? "" } });
  const said = (column: string): boolean =>
    (isOwnRow && LABELS.has(column)) ||
    (isItem && (PLACE.has(column) || ["panel", "side", "rotation_deg", "type"].includes(column)));
  for (const column of columns) {
    if (said(column)) continue;
    if (table === "outlines") changes.push({ what: "drawn", values: {} });
    else
      changes.push({
        what: "field",
        values: {
          ...{ table, column, from: from[column] ?? "", to: to[column] ?? "" },
          key: isOwnRow ? "" : restOf(one),
        },
      });
  }
  return changes;
}

const names = (row: FactRow, key: string) => ({
  en: row.label ?? row.label_zh ?? key,
  zh: row.label_zh ?? row.label ?? key,
});

/** What tells the row apart among those of its subject. */
function restOf({ key, subject }: ChangedRow): string {
  const rest = key.startsWith(`${subject.id} `) ? key.slice(subject.id.length + 1) : key;
  return rest;
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
  const [dx, dy] = [mm(to, "x_mm") - mm(from, "x_mm"), mm(to, "y_mm") - mm(from, "y_mm")];
  if (dx !== 0 || dy !== 0)
    changes.push({ what: "moved", values: { mm: Math.hypot(dx, dy), dxMm: dx, dyMm: dy } });
  if ((from.rotation_deg ?? "0") !== (to.rotation_deg ?? "0"))
    changes.push({ what: "turned", values: { from: mm(from, "rotation_deg"), to: mm(to, "rotation_deg") } });
  return changes;
}
