import type { FaultAnswer, FaultSession } from "@pinwright/engine";

/** From the page to whoever finds faults beside it. */
export type ToFinder =
  | { readonly type: "open"; readonly file: unknown }
  | { readonly type: "ask"; readonly id: number; readonly session: FaultSession };

/** And back. */
export type FromFinder =
  | { readonly type: "progress"; readonly progress: number }
  | { readonly type: "opened" }
  | { readonly type: "answer"; readonly id: number; readonly answer: FaultAnswer }
  | { readonly type: "failed"; readonly message: string };
