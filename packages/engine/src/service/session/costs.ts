import type { SessionLook } from "./session.ts";

/** What a look costs whoever does it. */
export interface LookCost {
  readonly minutes: number;
  /** 0: none; 1: the machine is open and off; 2: it is open and on. */
  readonly danger: 0 | 1 | 2;
}

/** Minutes and danger of each kind of look (common practice, no source). */
const COSTS: Readonly<Record<SessionLook["kind"], LookCost>> = {
  try: { minutes: 0.5, danger: 0 },
  inspect: { minutes: 1, danger: 1 },
  reseat: { minutes: 1.5, danger: 1 },
  ohms: { minutes: 2, danger: 1 },
  part: { minutes: 2, danger: 1 },
  volts: { minutes: 2, danger: 2 },
};

/** Each plug beyond the first that is reseated in one go (common practice, no source). */
const ANOTHER_PLUG_MINUTES = 0.5;

/** Minutes and danger of a look. */
export function lookCost(look: SessionLook): LookCost {
  const cost = COSTS[look.kind];
  if (look.kind !== "reseat") return cost;
  return { ...cost, minutes: cost.minutes + ANOTHER_PLUG_MINUTES * (look.ids.length - 1) };
}
