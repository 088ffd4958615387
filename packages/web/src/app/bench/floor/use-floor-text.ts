import { useMemo } from "react";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { useDefectWords } from "../unit/unit-defects.tsx";
import type { Stuck } from "./floor-board.ts";

const MINUTE_MS = 60_000;

/** What stands on the floor's page, in words. */
export function useFloorText(): {
  readonly why: (stuck: Stuck) => string;
  readonly stage: (id: string) => string;
  readonly ago: (at: string, nowMs: number) => string;
  readonly run: (id: string) => string;
} {
  const { benchFloor: own } = useWords();
  const names = useNames();
  const says = useDefectWords();
  return useMemo(
    () => ({
      why: ({ why, of }) => {
        switch (why) {
          case "defect":
            return own.why.defect(says.what(of));
          case "test":
            return own.why.test(names.test(of));
          case "way":
            return own.why.way(names.site(of));
          case "quiet":
            return own.why.quiet;
        }
      },
      stage: (id) => (id === "" ? own.begun : names.stage(id)),
      ago: (at, nowMs) => own.since(Math.max(0, Math.floor((nowMs - Date.parse(at)) / MINUTE_MS))),
      run: (id) => (id === "" ? own.noRun : names.run(id)),
    }),
    [own, names, says],
  );
}
