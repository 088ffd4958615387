import { useCallback, useEffect, useRef, useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";
import type { Plan, Question } from "./plan-rows.ts";

/** A moment for the words to be on the screen before the worker is busy. */
const MOMENT_MS = 30;

/** A balance, as far as it has come. */
export interface Planning {
  /** The newest plan; null before the first, or when the question has nobody. */
  readonly plan: Plan | null;
  /** Whether the plan answers this question, and not the one before it. */
  readonly isCurrent: boolean;
  readonly working: boolean;
  readonly failed: string;
  /** Leaves it at the plan that is there. */
  readonly stop: () => void;
}

interface State {
  readonly key: string;
  readonly plan: Plan | null;
  readonly working: boolean;
  readonly failed: string;
}

/**
 * Asks for a balance, and again whenever steps or stations are others; until the new one is there the old one stands.
 * @param question null: nothing is asked
 */
export function usePlan(question: Question | null): Planning {
  const desk = useDesk();
  const trouble = useTrouble();
  const steps = useView("stepLines", null);
  const stations = useView("stations", null);
  const key = JSON.stringify(question);
  const [state, setState] = useState<State>({ key: "", plan: null, working: false, failed: "" });
  const running = useRef({ wanted: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `question`; a plan is of the steps and stations of its moment
  useEffect(() => {
    if (question === null || steps === null || stations === null) return;
    const own = { wanted: true };
    running.current = own;
    setState((before) => ({ ...before, working: true, failed: "" }));
    const answered = (plan: Plan | null, failed: string): void => {
      if (own.wanted) setState({ key, plan, working: false, failed });
    };
    const timer = setTimeout(() => {
      desk.ask("stationPlan", question).then(
        (plan) => answered(plan, ""),
        (error: unknown) => answered(null, trouble(error)),
      );
    }, MOMENT_MS);
    return () => {
      clearTimeout(timer);
      own.wanted = false;
    };
  }, [desk, key, steps, stations]);
  const stop = useCallback(() => {
    running.current.wanted = false;
    setState((before) => ({ ...before, working: false }));
  }, []);
  const asked = question !== null;
  return {
    plan: asked ? state.plan : null,
    isCurrent: asked && state.key === key,
    working: asked && state.working,
    failed: asked ? state.failed : "",
    stop,
  };
}
