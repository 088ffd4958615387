import { useCallback, useEffect, useRef, useState } from "react";
import { useTrouble } from "../trouble.ts";
import { useFactsNo } from "./live.tsx";

/** What the server answered last, and why it did not the last time that it was asked. */
export interface Asked<T> {
  readonly answer: T | undefined;
  /** Blank: it answered. */
  readonly failed: string;
  readonly again: () => void;
}

/** The server is asked again after so many times what the last answer took, and after this at the latest. */
const REST_TIMES = 10;
const LONGEST_REST_MS = 20_000;

/** Asks one thing over and over, never twice at once; what takes long is asked for less often. */
class Asker<T> {
  readonly #ask: (signal: AbortSignal) => Promise<T>;
  readonly #told: (answer: T) => void;
  readonly #failed: (error: unknown) => void;
  readonly #stop = new AbortController();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isAsking = false;
  #isWanted = false;
  #restUntilMs = 0;

  constructor(
    ask: (signal: AbortSignal) => Promise<T>,
    told: (answer: T) => void,
    failed: (error: unknown) => void,
  ) {
    this.#ask = ask;
    this.#told = told;
    this.#failed = failed;
  }

  /** Something may be new. */
  ask(): void {
    this.#isWanted = true;
    if (this.#isAsking || this.#timer !== undefined) return;
    const waitMs = Math.max(0, this.#restUntilMs - performance.now());
    this.#timer = setTimeout(() => void this.#run(), waitMs);
  }

  end(): void {
    clearTimeout(this.#timer);
    this.#stop.abort();
  }

  async #run(): Promise<void> {
    this.#timer = undefined;
    this.#isWanted = false;
    this.#isAsking = true;
    const begunMs = performance.now();
    try {
      const answer = await this.#ask(this.#stop.signal);
      if (!this.#stop.signal.aborted) this.#told(answer);
    } catch (error) {
      if (!this.#stop.signal.aborted) this.#failed(error);
    }
    const nowMs = performance.now();
    this.#restUntilMs = nowMs + Math.min(LONGEST_REST_MS, REST_TIMES * (nowMs - begunMs));
    this.#isAsking = false;
    if (this.#isWanted && !this.#stop.signal.aborted) this.ask();
  }
}

/**
 * Asks the server, and again whenever something was recorded; what it said before stays until the next answer, unless
 * `key` is another: then another thing is asked.
 * @param ask null: nothing is asked
 * @param how `once`: not again when something was recorded
 */
export function useAsked<T>(
  key: string,
  ask: ((signal: AbortSignal) => Promise<T>) | null,
  how: "live" | "once" = "live",
): Asked<T> {
  const trouble = useTrouble();
  const heard = useFactsNo();
  const [told, setTold] = useState<{ readonly key: string; readonly answer: T } | null>(null);
  const [failed, setFailed] = useState("");
  const [tries, setTries] = useState(0);
  const asker = useRef<Asker<T> | null>(null);
  const isAsked = ask !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `ask`; a try asks at once
  useEffect(() => {
    if (ask === null) return;
    const own = new Asker(
      ask,
      (answer) => {
        setTold({ key, answer });
        setFailed("");
      },
      (error) => setFailed(trouble(error)),
    );
    asker.current = own;
    own.ask();
    return () => {
      own.end();
      asker.current = null;
    };
  }, [key, tries, trouble, isAsked]);
  useEffect(() => {
    if (how === "live" && heard > 0) asker.current?.ask();
  }, [heard, how]);
  const again = useCallback(() => setTries((now) => now + 1), []);
  return { answer: told?.key === key ? told.answer : undefined, failed, again };
}
