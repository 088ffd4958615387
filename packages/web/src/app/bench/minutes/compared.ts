import type { StepMinutes } from "@pinwright/contract";

/** A step with the minutes that it was planned with and those that it took. */
export interface ComparedStep extends StepMinutes {
  /** On one unit; null: the plan has no such step. */
  readonly plannedMinutes: number | null;
  /** How often the step is done for one machine: so many times the minutes are the plan's. */
  readonly times: number;
  /** How much more the median is than the plan, as a share of the plan; null: nothing to compare with. */
  readonly share: number | null;
}

/** Less than this is as planned; a choice, no source. */
const ALIKE_SHARE = 0.1;

/** Whether a step takes something other than what is planned. */
export const isOff = ({ share }: ComparedStep): boolean => share === null || Math.abs(share) >= ALIKE_SHARE;

/**
 * Measured minutes beside planned ones: those that differ most in minutes over all units first.
 * @param plannedOf minutes of a step in the plan of a machine, and how often it is done for one; a mechanism type may be
 * in it several times
 */
export function compared(
  measured: readonly StepMinutes[],
  plannedOf: (step: string) => { readonly minutes: number; readonly times: number } | null,
): readonly ComparedStep[] {
  const weight = ({ medianMinutes, plannedMinutes }: ComparedStep): number =>
    Math.abs(medianMinutes - (plannedMinutes ?? medianMinutes));
  return measured
    .map((step) => {
      // Steps at the bench of boards and harnesses have no row in the plan of the machine.
      const planned = step.what === "board" || step.what === "harness" ? null : plannedOf(step.step);
      const times = step.what === "mechanism" ? Math.max(1, planned?.times ?? 1) : 1;
      const plannedMinutes = planned === null ? null : planned.minutes / times;
      const share =
        plannedMinutes === null || plannedMinutes <= 0 ? null : step.medianMinutes / plannedMinutes - 1;
      return { ...step, plannedMinutes, times, share };
    })
    .sort((a, b) => weight(b) - weight(a) || b.medianMinutes - a.medianMinutes);
}
