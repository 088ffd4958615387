import type { Fact, FactBody } from "@pinwright/contract";
import { byTime, corrected } from "./fold-units.ts";
import type { UnitState } from "./unit-state.ts";

/** A recall that has not ended. */
export interface OpenRecall {
  readonly recall: string;
  readonly part: string | null;
  readonly lot: string | null;
  readonly type: string | null;
  readonly revision: string | null;
}

const openOf = ({
  recall,
  part,
  lot,
  type,
  revision,
}: Extract<FactBody, { kind: "recall" }>): OpenRecall => ({
  recall,
  part: part ?? null,
  lot: lot ?? null,
  type: type ?? null,
  revision: revision ?? null,
});

/**
 * Recalls that have not ended, in the order in which they began. A recall ends by its name, also where its end is told
 * before its beginning; one that begins again after that is open again.
 * @param facts of the kinds `recall`, `recall-ended` and `correction`, in any order
 */
export function openRecalls(facts: readonly Fact[]): readonly OpenRecall[] {
  const gone = corrected(facts);
  const open = new Map<string, OpenRecall[]>();
  for (const { stream, seq, body } of [...facts].sort(byTime)) {
    if (gone.has(`${stream} ${seq}`)) continue;
    if (body.kind === "recall") open.set(body.recall, [...(open.get(body.recall) ?? []), openOf(body)]);
    if (body.kind === "recall-ended") open.delete(body.recall);
  }
  return [...open.values()].flat();
}

/**
 * Whether a recall speaks of a unit: of its type and revision, or of a part or lot that went into it. A part without a lot is
 * in a unit that recorded one of its lots, was made of it instead of another, has it by the book and nothing instead, or is
 * it.
 * @param parts parts that are in the unit by the book; none where nobody asked the book
 */
export function isConcerned(state: UnitState, recall: OpenRecall, parts?: ReadonlySet<string>): boolean {
  const { part, lot, type, revision } = recall;
  if (type !== null || revision !== null) {
    const isOfType = type === null || state.begun?.type === type;
    if (!isOfType || (revision !== null && state.begun?.revision !== revision)) return false;
    if (part === null && lot === null) return state.begun !== null;
  }
  if (part === null && lot === null) return false;
  const isUsed = state.lots.some(
    (used) => (part === null || used.part === part) && (lot === null || used.lot === lot),
  );
  return isUsed || (part !== null && lot === null && isIn(state, part, parts));
}

function isIn(state: UnitState, part: string, parts: ReadonlySet<string> | undefined): boolean {
  if (state.begun?.type === part || state.alternates.some(({ instead }) => instead === part)) return true;
  return parts?.has(part) === true && !state.alternates.some((alternate) => alternate.part === part);
}
