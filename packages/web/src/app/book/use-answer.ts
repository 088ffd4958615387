import { useCallback, useEffect, useRef, useState } from "react";
import type { AskAnswer, AskName, AskParam } from "../../worker/protocol.ts";
import { useTrouble } from "../trouble.ts";
import { useDesk } from "./desk.tsx";

/** A moment for the words to be on the screen before the worker is busy. */
const MOMENT_MS = 30;

/** An answer of the worker, as far as it has come. */
export interface Answering<T> {
  /** The newest answer; undefined before the first, or when nothing is asked. */
  readonly answer: T | undefined;
  /** Whether it answers this question, and not the one before it. */
  readonly isCurrent: boolean;
  readonly working: boolean;
  readonly failed: string;
  /** Leaves it at the answer that is there. */
  readonly stop: () => void;
}

interface State<T> {
  readonly key: string;
  readonly answer: T | undefined;
  readonly working: boolean;
  readonly failed: string;
}

/**
 * Asks the worker, and again whenever the question or what it is about is another; until the new answer is there the
 * old one stands.
 * @param param null: nothing is asked
 * @param on what the answer is about, as the page has it: views, by identity
 */
export function useAnswer<N extends AskName>(
  ask: N,
  param: AskParam<N> | null,
  on: unknown,
): Answering<AskAnswer<N>> {
  const desk = useDesk();
  const trouble = useTrouble();
  const key = JSON.stringify(param);
  const [state, setState] = useState<State<AskAnswer<N>>>({
    key: "",
    answer: undefined,
    working: false,
    failed: "",
  });
  const running = useRef({ wanted: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `param`; the answer is of what `on` is at the moment
  useEffect(() => {
    if (param === null || on === null) return;
    const own = { wanted: true };
    running.current = own;
    setState((before) => ({ ...before, working: true, failed: "" }));
    const timer = setTimeout(() => {
      desk.ask(ask, param).then(
        (answer) => own.wanted && setState({ key, answer, working: false, failed: "" }),
        (error: unknown) =>
          own.wanted && setState({ key, answer: undefined, working: false, failed: trouble(error) }),
      );
    }, MOMENT_MS);
    return () => {
      clearTimeout(timer);
      own.wanted = false;
    };
  }, [desk, ask, key, on]);
  const stop = useCallback(() => {
    running.current.wanted = false;
    setState((before) => ({ ...before, working: false }));
  }, []);
  const asked = param !== null;
  return {
    answer: asked ? state.answer : undefined,
    isCurrent: asked && state.key === key,
    working: asked && state.working,
    failed: asked ? state.failed : "",
    stop,
  };
}
