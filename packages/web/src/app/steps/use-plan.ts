import { useCallback, useEffect, useRef, useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";
import type { Plan, Question } from "./plan-rows.ts";

/**
 * Counted steps of the search, round by round: a first plan is there soon, and each further round looks longer until
 * the plan is proven. Between rounds the person can call it off, and edits are heard.
 */
const ROUNDS = [4_000, 40_000, 200_000] as const;
/** A moment for the words to be on the screen before the worker is busy. */
const MOMENT_MS = 30;

/** A balance, as far as it has come. */
export interface Planning {
  /** The newest plan; null before the first, or when the question has nobody. */
  readonly plan: Plan | null;
  /** Whether the plan answers this question, and not the one before it. */
  readonly isCurrent: boolean;
  /** Round that is being looked at, from 1; null when it looks no more. */
  readonly round: number | null;
  readonly rounds: number;
  readonly failed: string;
  /** Leaves it at the plan that is there. */
  readonly stop: () => void;
}

interface State {
  readonly key: string;
  readonly plan: Plan | null;
  readonly round: number | null;
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
  const [state, setState] = useState<State>({ key: "", plan: null, round: null, failed: "" });
  const running = useRef({ wanted: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `question`; a plan is of the steps and stations of its moment
  useEffect(() => {
    if (question === null || steps === null || stations === null) return;
    const own = { wanted: true };
    running.current = own;
    const run = async (): Promise<void> => {
      for (const [i, effort] of ROUNDS.entries()) {
        setState((before) => ({ ...before, round: i + 1, failed: "" }));
        await new Promise((done) => setTimeout(done, MOMENT_MS));
        if (!own.wanted) return;
        const plan = await desk.ask("stationPlan", { question, effort });
        if (!own.wanted) return;
        setState({ key, plan, round: i + 1, failed: "" });
        if (plan === null || plan.isProven) break;
      }
      setState((before) => ({ ...before, round: null }));
    };
    run().catch((error: unknown) => {
      if (own.wanted) setState({ key, plan: null, round: null, failed: trouble(error) });
    });
    return () => {
      own.wanted = false;
    };
  }, [desk, key, steps, stations]);
  const stop = useCallback(() => {
    running.current.wanted = false;
    setState((before) => ({ ...before, round: null }));
  }, []);
  const asked = question !== null;
  return {
    plan: asked ? state.plan : null,
    isCurrent: asked && state.key === key,
    round: asked ? state.round : null,
    rounds: ROUNDS.length,
    failed: asked ? state.failed : "",
    stop,
  };
}
