import { useCallback, useEffect, useState } from "react";

export const SPEEDS = [0.5, 1, 2, 4, 8] as const;
type Speed = (typeof SPEEDS)[number];

/** How long a step stays at usual speed, and how long each screw takes to appear in it. */
const STEP_MS = 1_600;
const SCREW_MS = 120;

/** The play-through of the order of assembly. */
export interface Play {
  readonly playing: boolean;
  readonly speed: Speed;
  /** How many screws of the step are in; all of them while nothing plays. */
  readonly driven: number;
  readonly toggle: () => void;
  readonly setSpeed: (speed: Speed) => void;
  /** Goes to a step by its place in the order, and stops there. */
  readonly to: (index: number) => void;
}

/**
 * @param index step that is shown, by its place in the order
 * @param screws how many screws each step drives
 */
export function usePlay(index: number, screws: readonly number[], go: (index: number) => void): Play {
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState<Speed>(1);
  const [at, setAt] = useState({ index, driven: 0 });
  const all = screws[index] ?? 0;
  const driven = playing ? (at.index === index ? at.driven : 0) : Number.POSITIVE_INFINITY;
  const last = screws.length - 1;
  useEffect(() => {
    if (!playing) return;
    if (driven < all) {
      const timer = setTimeout(() => setAt({ index, driven: driven + 1 }), SCREW_MS / speed);
      return () => clearTimeout(timer);
    }
    const timer = setTimeout(() => {
      if (index >= last) setPlaying(false);
      else {
        setAt({ index: index + 1, driven: 0 });
        go(index + 1);
      }
    }, STEP_MS / speed);
    return () => clearTimeout(timer);
  }, [playing, driven, all, index, last, speed, go]);
  const toggle = useCallback(() => {
    setPlaying(!playing);
    if (playing) return;
    // From the end it begins again.
    const from = index >= last ? 0 : index;
    setAt({ index: from, driven: 0 });
    if (from !== index) go(from);
  }, [playing, index, last, go]);
  const to = useCallback(
    (next: number) => {
      setPlaying(false);
      if (next >= 0 && next <= last) go(next);
    },
    [go, last],
  );
  return { playing, speed, driven, toggle, setSpeed, to };
}
