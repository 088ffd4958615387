import type { ArrivedFact, Recall } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { RecordStore } from "@pinwright/store";
import type { UnitStanding } from "./standing.ts";

/** A recall, and the units that it concerns. */
export interface ConcernedUnits {
  readonly recall: Omit<Recall, "units" | "released">;
  /** Units that it speaks of, and those that they are in now. */
  readonly units: ReadonlySet<string>;
}

/** Recalls as they were called and ended: open ones first, then the newest. */
export function recallsOf(facts: readonly ArrivedFact[]): readonly ConcernedUnits["recall"][] {
  const gone = new Set(
    facts.flatMap(({ fact: { body } }) => (body.kind === "correction" ? [`${body.stream} ${body.seq}`] : [])),
  );
  const recalls = new Map<string, ConcernedUnits["recall"]>();
  const ended = new Map<string, NonNullable<Recall["ended"]>>();
  for (const { fact } of facts) {
    const { stream, seq, at, person, body } = fact;
    if (gone.has(`${stream} ${seq}`)) continue;
    if (body.kind === "recall-ended") ended.set(body.recall, { at, person, why: body.why });
    else if (body.kind === "recall" && !recalls.has(body.recall))
      recalls.set(body.recall, {
        recall: body.recall,
        part: body.part ?? null,
        lot: body.lot ?? null,
        type: body.type ?? null,
        revision: body.revision ?? null,
        begun: { at, person, why: body.why },
        ended: null,
      });
  }
  return [...recalls.values()]
    .map((recall) => ({ ...recall, ended: ended.get(recall.recall) ?? null }))
    .sort(
      (a, b) =>
        Number(a.ended !== null) - Number(b.ended !== null) ||
        compareText(b.begun.at, a.begun.at) ||
        compareText(a.recall, b.recall),
    );
}

/**
 * Units that a recall speaks of, and all that they are in now.
 * @param typesWith types that have a part by the book: a part without a lot is in all units of them
 * @param unlessLifted a recall: units for which somebody lifted it are left out; blank: none are
 */
export async function concernedUnits(
  records: Pick<RecordStore, "trace">,
  units: ReadonlyMap<string, UnitStanding>,
  { part, lot, type, revision }: Pick<Recall, "part" | "lot" | "type" | "revision">,
  typesWith: (part: string) => Promise<readonly string[]>,
  unlessLifted = "",
): Promise<ReadonlySet<string>> {
  const traced = await records.trace({
    ...(part === null ? {} : { part }),
    ...(part === null || lot !== null ? {} : { types: await typesWith(part) }),
    ...(lot === null ? {} : { lot }),
    ...(type === null ? {} : { type }),
    ...(revision === null ? {} : { revision }),
  });
  const found = new Set<string>();
  for (const { unit, isDirect } of traced)
    if (isDirect && units.get(unit)?.liftedRecalls.includes(unlessLifted) !== true)
      for (
        let at: string | undefined = unit;
        at !== undefined && !found.has(at);
        at = units.get(at)?.within?.unit
      )
        found.add(at);
  return found;
}
