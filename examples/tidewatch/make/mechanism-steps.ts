import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { PLAY_STEPS } from "./mechanism-steps-play.ts";
import { SHOW_STEPS } from "./mechanism-steps-show.ts";

/** What is done on the mechanism bench, in English and Chinese. */
export interface BenchLine {
  readonly kind: BookRow<"mechanism_steps">["kind"];
  readonly en: string;
  readonly zh: string;
  readonly tool?: string;
  /** Unit, lower limit, value to set, upper limit. */
  readonly gauge?: readonly [unit: string, min: number, nominal: number, max: number];
  readonly minutes?: number;
  readonly caution?: readonly [en: string, zh: string];
}

/** Lines by mechanism type. */
export type BenchSteps = Readonly<Record<string, readonly BenchLine[]>>;

/** How each mechanism is built, set, cycled and tightened again on its own bench. */
export const mechanismSteps: Topic = {
  tables: {
    mechanism_steps: rows(
      "mechanism_steps",
      [PLAY_STEPS, SHOW_STEPS].flatMap((steps) =>
        Object.entries(steps).flatMap(([mechanism_type, lines]) =>
          lines.map(({ kind, en, zh, tool, gauge, minutes, caution }, i) => ({
            mechanism_type,
            order: i + 1,
            kind,
            label: en,
            label_zh: zh,
            tool: tool ?? "",
            unit: gauge?.[0] ?? "",
            min: gauge?.[1] ?? null,
            nominal: gauge?.[2] ?? null,
            max: gauge?.[3] ?? null,
            minutes: minutes ?? null,
            caution: caution?.[0] ?? "",
            caution_zh: caution?.[1] ?? "",
          })),
        ),
      ),
    ),
  },
};
