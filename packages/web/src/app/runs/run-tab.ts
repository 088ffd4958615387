import type { AskAnswer, ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import type { Preparing } from "./use-prepared.ts";

export type Run = ViewEntry<"runs">;
export type Plan = AskAnswer<"runPlan">;

/** What every tab of a run's page is given. */
export interface RunTab {
  readonly run: Run;
  readonly runs: Entries<"runs">;
  readonly ground: ViewEntry<"planGround">;
  /** Null: the run is not planned. */
  readonly plan: Plan | null;
  /** Today, as year-month-day. */
  readonly day: string;
  readonly preparing: Preparing;
}
