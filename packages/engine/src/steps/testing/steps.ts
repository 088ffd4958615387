import type { StepKind, StepsResult, WorkStep } from "../../model/index.ts";
import { NO_STEPS } from "../steps-solver.ts";

/** A step for a test of stations: what matters there, the rest as plain as can be. */
export interface TestStep {
  readonly id: string;
  readonly seconds: number;
  readonly after?: readonly string[];
  readonly skill?: string;
  readonly station?: string;
  readonly kind?: StepKind;
}

/** Steps in the order given, which must keep to what is after what. */
export function createSteps(list: readonly TestStep[]): StepsResult {
  const steps = list.map(
    ({ id, seconds, after = [], skill = "", station, kind = "own" }, i): WorkStep => ({
      id,
      number: i + 1,
      kind,
      labels: { en: id, zh: id },
      panelId: null,
      side: "top",
      itemIds: [],
      fastenerIds: [],
      recheckIds: [],
      harnessId: null,
      mechanismTypeId: null,
      times: 1,
      afterIds: after,
      motions: [],
      seconds,
      secondsFrom: "designer",
      skill,
      tools: [],
      cautions: [],
      stationId: station ?? null,
    }),
  );
  return { ...NO_STEPS, steps };
}
