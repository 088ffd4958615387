import type { FactBody } from "@pinwright/contract";
import { useMemo, useState } from "react";
import { useBench } from "../tasks/bench-context.tsx";
import { draftLots, forgetDraft, keepDraft, keepLast, type Lots, lastLots } from "./kept-lots.ts";

/** Something that comes in lots and goes into the units at the bench. */
export interface LotPart {
  /** What the lot is of, each once on a list: the part, with its colour where reels have colours. */
  readonly of: string;
  readonly partId: string;
  /** Of one unit; absent where nobody counts. */
  readonly quantity?: number;
}

export interface TaskLots {
  /** Lot of a part: said just now, or recorded on all units at the bench. */
  readonly lotOf: (part: LotPart) => string | null;
  /** Lot that was used last at this tablet. */
  readonly lastOf: (part: LotPart) => string | null;
  /** Takes a lot: it is recorded with the step; at once when the step is done already, as when a reel runs out. */
  readonly take: (part: LotPart, lot: string) => Promise<void>;
  /** What is to be recorded with the step. */
  readonly facts: () => readonly FactBody[];
  /** The step and its lots are recorded. */
  readonly recorded: () => void;
}

/**
 * Lots of what goes into the units at the bench.
 * @param list name of the task, with its units: what is said stays when the page is loaded again
 */
export function useLots(list: string, step: string, parts: readonly LotPart[]): TaskLots {
  const { unitIds, states, record } = useBench();
  const [draft, setDraft] = useState(() => draftLots(list));
  const isDone = unitIds.every((unit) => states.get(unit)?.steps.has(step) === true);
  const recorded = useMemo(() => {
    const found = new Map<string, string>();
    for (const { of, partId } of parts) {
      const lots = unitIds.map((unit) => states.get(unit)?.lots.findLast(({ part }) => part === partId)?.lot);
      if (lots[0] !== undefined && lots.every((lot) => lot === lots[0])) found.set(of, lots[0]);
    }
    return found;
  }, [parts, unitIds, states]);
  const factsOf = (lots: Lots): readonly FactBody[] =>
    parts.flatMap(({ of, partId, quantity }) => {
      const lot = lots.get(of);
      return lot === undefined
        ? []
        : unitIds.map(
            (unit): FactBody => ({
              ...{ kind: "lot-used", unit, part: partId, lot },
              ...(quantity === undefined ? {} : { quantity }),
            }),
          );
    });
  return {
    lotOf: ({ of }) => draft.get(of) ?? recorded.get(of) ?? null,
    lastOf: ({ of }) => lastLots().get(of) ?? null,
    take: async (part, lot) => {
      keepLast(part.of, lot);
      if (isDone) {
        await record(factsOf(new Map([[part.of, lot]])));
        return;
      }
      const next = new Map(draft).set(part.of, lot);
      keepDraft(list, next);
      setDraft(next);
    },
    facts: () => factsOf(draft),
    recorded: () => {
      forgetDraft(list);
      setDraft(new Map());
    },
  };
}
