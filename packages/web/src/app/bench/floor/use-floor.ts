import { useEffect, useMemo, useState } from "react";
import { call } from "../../../api/call.ts";
import { useDesk, useOne, useView } from "../../book/desk.tsx";
import { dayStart } from "../defects/span.ts";
import { useAsked } from "../use-asked.ts";
import { type FloorNow, floorBoards, type RunBoard } from "./floor-board.ts";

const [LOOK_MS, TICK_MS] = [30_000, 5_000];
/** What was heard so long ago is no longer how things are, ms. */
const STALE_MS = 75_000;
const NO_OPTIONS: readonly string[] = [];

/** How the floor stands, and since when this is known. */
export interface FloorLooked {
  readonly floor: FloorNow | undefined;
  readonly boards: readonly RunBoard[];
  /** Why nobody answered the last time. */
  readonly failed: string;
  /** When this device heard it, ms since 1970. */
  readonly heardMs: number;
  readonly nowMs: number;
  readonly isCurrent: boolean;
}

/** Looks at the floor: at once when something is recorded, and every half minute to know that it is still so. */
export function useFloor(quietHours: number): FloorLooked {
  const { bookId } = useDesk();
  const [nowMs, setNowMs] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNowMs(Date.now()), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  const since = dayStart(nowMs).toISOString();
  const { answer, failed, again } = useAsked(`floor ${bookId} ${since}`, (signal) =>
    call("floorNow", { parts: {}, query: { book: bookId, since }, signal }),
  );
  useEffect(() => {
    const timer = setInterval(again, LOOK_MS);
    // Whether somebody answers is known at once when the network goes or comes.
    addEventListener("offline", again);
    addEventListener("online", again);
    return () => {
      clearInterval(timer);
      removeEventListener("offline", again);
      removeEventListener("online", again);
    };
  }, [again]);
  // The last one that was heard stays, also over midnight and while nobody answers.
  const [heard, setHeard] = useState<{ readonly floor: FloorNow; readonly atMs: number } | null>(null);
  useEffect(() => {
    if (answer !== undefined) setHeard({ floor: answer, atMs: Date.now() });
  }, [answer]);
  const stages = useView("floorStages", null);
  const runs = useView("runs", null);
  const ground = useOne("planGround", null);
  const work = useOne("floorWork", {
    what: "machine",
    type: ground?.machineId ?? "",
    options: NO_OPTIONS,
  });
  const boards = useMemo(
    () =>
      heard === null
        ? []
        : floorBoards(heard.floor, {
            stages: [...(stages?.values() ?? [])],
            places: work?.places ?? null,
            runOrder: [...(runs?.keys() ?? [])],
            nowMs,
            quietHours,
          }),
    [heard, stages, work, runs, nowMs, quietHours],
  );
  const heardMs = heard?.atMs ?? nowMs;
  return {
    ...{ floor: heard?.floor, boards, failed, heardMs, nowMs },
    isCurrent: failed === "" && nowMs - heardMs < STALE_MS,
  };
}
