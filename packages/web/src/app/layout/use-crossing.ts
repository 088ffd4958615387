import { useState } from "react";
import type { Side } from "./scene.ts";

/** A waypoint at which a crossing ties, and where it is. */
export interface CrossingEnd {
  readonly id: string;
  readonly panelId: string;
  readonly side: Side;
}

/** A crossing that is being drawn; it goes from one panel or side to another, so that the page turns in between. */
export interface CrossingDraft {
  readonly from: CrossingEnd | null;
  readonly to: CrossingEnd | null;
  /** The next end; another one on the same side as the first takes its place. */
  readonly take: (end: CrossingEnd) => void;
  readonly forget: () => void;
}

export function useCrossing(): CrossingDraft {
  const [from, setFrom] = useState<CrossingEnd | null>(null);
  const [to, setTo] = useState<CrossingEnd | null>(null);
  return {
    from,
    to,
    take: (end) => {
      if (from === null || (from.panelId === end.panelId && from.side === end.side)) setFrom(end);
      else setTo(end);
    },
    forget: () => {
      setFrom(null);
      setTo(null);
    },
  };
}
