import { useCallback, useEffect, useRef, useState } from "react";
import type { AskAnswer, AskParam, ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";

type PegMove = AskParam<"pegTrial">;
type TriedPeg = NonNullable<AskAnswer<"pegTrial">>;
type BoardShape = ViewEntry<"pinboard">;

export interface PegHand {
  /** The board as it is, or as it would be with the peg that is in the hand. */
  readonly shape: BoardShape | undefined;
  readonly tried: TriedPeg | null;
  /** Carries a peg to a place; the board follows as fast as it can be laid. */
  readonly carry: (nodeId: string, xMm: number, yMm: number) => void;
  /** Pins the peg where it was carried to last. */
  readonly drop: (note: string) => Promise<void>;
  readonly letGo: () => void;
}

/** A hand that carries one peg of a pinboard at a time. */
export function usePegHand(harnessId: string): PegHand {
  const desk = useDesk();
  const { status } = useSession();
  const by = status.person?.name ?? "local";
  const shape = useOne("pinboard", harnessId);
  const [tried, setTried] = useState<TriedPeg | null>(null);
  const wanted = useRef<PegMove | null>(null);
  const asking = useRef(false);

  const carry = useCallback(
    (nodeId: string, xMm: number, yMm: number) => {
      wanted.current = { harnessId, nodeId, xMm, yMm };
      const next = async (): Promise<void> => {
        asking.current = true;
        for (let asked: PegMove | null = null; wanted.current !== null && asked !== wanted.current; ) {
          asked = wanted.current;
          const answer = await desk.ask("pegTrial", asked).catch(() => null);
          if (wanted.current !== null) setTried(answer);
        }
        asking.current = false;
      };
      if (!asking.current) void next();
    },
    [desk, harnessId],
  );
  const letGo = useCallback(() => {
    wanted.current = null;
    setTried(null);
  }, []);
  const drop = useCallback(
    async (note: string) => {
      const move = wanted.current;
      if (move === null) return;
      wanted.current = null;
      const node = shape?.nodes.find((one) => one.id === move.nodeId);
      const changes = await desk.ask("pinPeg", { move, by, reason: node?.pinned?.reason ?? "" });
      if (changes.length === 0) setTried(null);
      else await desk.edit(note, { kind: "changes", changes });
    },
    [desk, by, shape],
  );
  // What was tried stays in sight until the board itself is there, or has said no.
  // biome-ignore lint/correctness/useExhaustiveDependencies: `shape` is what is waited for
  useEffect(() => {
    if (wanted.current === null) setTried(null);
  }, [shape]);
  useEffect(() => {
    if (tried === null) return;
    const timer = setTimeout(() => {
      if (wanted.current === null) setTried(null);
    }, 8_000);
    return () => clearTimeout(timer);
  }, [tried]);
  return { shape: tried?.shape ?? shape, tried, carry, drop, letGo };
}
