import { compareText } from "@pinwright/kernel";
import type { ChangeGroup, MachineChange } from "./change.ts";
import type { MachineFacts } from "./facts.ts";
import { type SubjectId, subjectOf } from "./subjects.ts";

/** Order of the tables: what stands in the machine first, what follows from it last. */
const ORDER: readonly string[] = [
  "machine",
  "panels",
  "devices",
  "mechanisms",
  "boards",
  "inlines",
  "fasteners",
  "harnesses",
  "nets",
];
const LAST: readonly string[] = ["steps", "symbols", "bill", "choices", "findings"];

const rank = (table: string): number => {
  const first = ORDER.indexOf(table);
  if (first >= 0) return first;
  const last = LAST.indexOf(table);
  return last < 0 ? ORDER.length : ORDER.length + 1 + last;
};

/** Changes by what they are about. */
export class Groups {
  readonly #groups = new Map<string, { readonly subject: SubjectId; readonly changes: MachineChange[] }>();

  add(subject: SubjectId, change: MachineChange): void {
    const key = `${subject.table} ${subject.id}`;
    const group = this.#groups.get(key) ?? { subject, changes: [] };
    this.#groups.set(key, group);
    group.changes.push(change);
  }

  has({ table, id }: SubjectId): boolean {
    return this.#groups.has(`${table} ${id}`);
  }

  /** Whether something is all new or gone: what belongs to it is said with that. */
  isWhole({ table, id }: SubjectId): boolean {
    const group = this.#groups.get(`${table} ${id}`);
    return group?.changes.some(({ what }) => what === "new" || what === "gone") === true;
  }

  list(before: MachineFacts, after: MachineFacts): readonly ChangeGroup[] {
    return [...this.#groups.values()]
      .map(({ subject, changes }) => ({ subject: subjectOf(before, after, subject), changes }))
      .sort(
        ({ subject: p }, { subject: q }) =>
          rank(p.table) - rank(q.table) || compareText(p.table, q.table) || compareText(p.id, q.id),
      );
  }
}
