import { useCallback, useEffect, useRef, useState } from "react";
import type { AskAnswer, AskName, AskParam } from "../../worker/protocol.ts";
import { useDesk, useOne } from "../book/desk.tsx";
import { type Answering, useAnswer } from "../book/use-answer.ts";
import { useTrouble } from "../trouble.ts";

/** How far the machines of the runs are derived. */
export interface Preparing {
  /** Number of the moment for which they all are; null: never yet. */
  readonly at: number | null;
  readonly working: boolean;
  /** Sets of options that are still to come. */
  readonly left: number;
  readonly failed: string;
  readonly stop: () => void;
  readonly goOn: () => void;
}

interface State {
  readonly at: number | null;
  readonly working: boolean;
  readonly left: number;
  readonly failed: string;
}

/**
 * Has the machines of all runs derived, one set of options after the other, and again after each change of book or
 * shop. Between two of them the worker hears others, so that whoever waits can stop.
 */
export function usePrepared(): Preparing {
  const desk = useDesk();
  const trouble = useTrouble();
  const moment = useOne("planMoment", null)?.count ?? null;
  const [state, setState] = useState<State>({ at: null, working: true, left: 0, failed: "" });
  const [again, setAgain] = useState(0);
  const running = useRef({ wanted: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `again` is a wish to go on
  useEffect(() => {
    if (moment === null) return;
    const own = { wanted: true };
    running.current = own;
    setState((before) => ({ ...before, working: true, failed: "" }));
    const go = async (): Promise<void> => {
      for (;;) {
        const { left } = await desk.ask("prepareRuns", null);
        if (!own.wanted) return;
        setState((before) => ({ ...before, left, ...(left === 0 ? { at: moment, working: false } : {}) }));
        if (left === 0) return;
      }
    };
    go().catch((error: unknown) => {
      if (own.wanted) setState((before) => ({ ...before, working: false, failed: trouble(error) }));
    });
    return () => {
      own.wanted = false;
    };
  }, [desk, moment, again]);
  const stop = useCallback(() => {
    running.current.wanted = false;
    setState((before) => ({ ...before, working: false, failed: "" }));
  }, []);
  const goOn = useCallback(() => setAgain((n) => n + 1), []);
  return { ...state, stop, goOn };
}

/** An answer about plans: asked when the machines are derived, and again when they were derived anew. */
export const usePlanAnswer = <N extends AskName>(
  ask: N,
  param: AskParam<N> | null,
  preparing: Preparing,
): Answering<AskAnswer<N>> => useAnswer(ask, param, preparing.at);
