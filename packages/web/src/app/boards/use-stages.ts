import { useEffect, useState } from "react";

/** How long a stage stays while they are played through. */
const STAGE_MS = 2_000;

/** Plays stages through from one to the last, and stops there. */
export function useStages(
  stage: number,
  count: number,
  go: (stage: number) => void,
): { readonly playing: boolean; readonly toggle: () => void; readonly to: (stage: number) => void } {
  const [playing, setPlaying] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `go` is another function at each drawing and does the same
  useEffect(() => {
    if (!playing) return;
    const timer = setTimeout(() => {
      if (stage >= count) setPlaying(false);
      else go(stage + 1);
    }, STAGE_MS);
    return () => clearTimeout(timer);
  }, [playing, stage, count]);
  return {
    playing,
    toggle: () => {
      setPlaying(!playing);
      // From the end it begins again.
      if (!playing && stage >= count) go(1);
    },
    to: (next) => {
      setPlaying(false);
      if (next >= 1 && next <= count) go(next);
    },
  };
}
