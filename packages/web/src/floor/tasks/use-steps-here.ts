import { useEffect, useMemo, useState } from "react";
import { useLooked, useView } from "../../app/book/desk.tsx";
import { stepsOfPlace, USUAL } from "../../app/steps/plan-rows.ts";
import { usePlan } from "../../app/steps/use-plan.ts";
import { useHere } from "../shell/at-place.tsx";

const KEY = "pinwright.floor.steps-here";

interface Kept {
  readonly at: string;
  readonly steps: readonly string[];
}

/** Steps of a station as they were planned last on this tablet; null: never. */
function kept(at: string): readonly string[] | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    if (typeof found !== "object" || found === null) return null;
    const { at: of, steps }: { at?: unknown; steps?: unknown } = found;
    return of === at && Array.isArray(steps) ? steps.filter((one) => typeof one === "string") : null;
  } catch {
    return null;
  }
}

/**
 * Steps that the usual plan gives a station; null: all. The plan of a whole machine takes seconds: until it is there, what
 * it gave last time stands in, so that nobody waits before the first step.
 */
export function useStepsHere(station: string): ReadonlySet<string> | null | "asking" {
  const { book } = useHere();
  const { release } = useLooked();
  const at = `${book} ${release ?? ""} ${station}`;
  const lines = useView("stepLines", null);
  const { plan, failed } = usePlan(station === "" ? null : USUAL);
  const [before] = useState(() => kept(at));
  const planned = useMemo(
    () =>
      station === "" || plan === null || lines === null
        ? null
        : stepsOfPlace(plan, lines, station).map(({ id }) => id),
    [station, plan, lines],
  );
  useEffect(() => {
    const next: Kept | null = planned === null ? null : { at, steps: planned };
    if (next !== null) localStorage.setItem(KEY, JSON.stringify(next));
  }, [planned, at]);
  const steps = planned ?? before;
  return useMemo(() => {
    if (station === "" || failed !== "") return null;
    return steps === null ? "asking" : new Set(steps);
  }, [station, failed, steps]);
}
