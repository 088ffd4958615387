import { useCallback, useEffect, useRef, useState } from "react";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";

export type Cutting = NonNullable<AskAnswer<"cuttingOfSheet">>;

/** A moment for the words to be on the screen before the worker is busy. */
const MOMENT_MS = 30;

/** The cutting of all kinds of sheet, as far as it has come. */
export interface CuttingWork {
  /** Plans of the kinds that are done, by sheet goods. */
  readonly done: ReadonlyMap<string, Cutting>;
  /** Whether these are of the number of machines that is asked for, and of the panels as they are. */
  readonly isCurrent: boolean;
  readonly working: boolean;
  readonly stopped: boolean;
  readonly failed: string;
  readonly stop: () => void;
  readonly again: () => void;
}

interface State {
  readonly key: string;
  readonly done: ReadonlyMap<string, Cutting>;
  readonly doing: "working" | "stopped" | "over";
  readonly failed: string;
}

/**
 * Plans the cutting one kind of sheet after the other, so that it can be stopped in between; until the first is there
 * the old plans stand.
 * @param partIds sheet goods
 * @param on what the plans are about, as the page has it
 */
export function useCutting(partIds: readonly string[], machines: number, on: unknown): CuttingWork {
  const desk = useDesk();
  const trouble = useTrouble();
  const key = JSON.stringify([machines, partIds]);
  const [round, setRound] = useState(0);
  const [state, setState] = useState<State>({ key: "", done: new Map(), doing: "over", failed: "" });
  const running = useRef({ wanted: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for the question; plans are of what `on` is at the moment
  useEffect(() => {
    const own = { wanted: true };
    running.current = own;
    const plan = async (): Promise<void> => {
      const done = new Map<string, Cutting>();
      try {
        for (const partId of partIds) {
          await new Promise((after) => setTimeout(after, MOMENT_MS));
          if (!own.wanted) return;
          const cutting = await desk.ask("cuttingOfSheet", { partId, machines });
          if (!own.wanted) return;
          if (cutting !== null) done.set(partId, cutting);
          setState({ key, done: new Map(done), doing: "working", failed: "" });
        }
        setState({ key, done, doing: "over", failed: "" });
      } catch (error) {
        if (own.wanted) setState({ key, done, doing: "over", failed: trouble(error) });
      }
    };
    setState((before) => ({ ...before, doing: "working", failed: "" }));
    void plan();
    return () => {
      own.wanted = false;
    };
  }, [desk, key, on, round]);
  const stop = useCallback(() => {
    running.current.wanted = false;
    setState((before) => ({
      ...before,
      key,
      doing: "stopped",
      done: before.key === key ? before.done : new Map(),
    }));
  }, [key]);
  const again = useCallback(() => setRound((before) => before + 1), []);
  return {
    done: state.done,
    isCurrent: state.key === key,
    working: state.doing === "working",
    stopped: state.doing === "stopped",
    failed: state.failed,
    stop,
    again,
  };
}
