import { type Finding, makeFinding } from "../../../model/index.ts";
import type { ProgramFacts } from "./facts.ts";

/** A pulse that is longer than the board allows is cut short: the mechanism does not finish its stroke. */
export function pulseTimeout({ machine }: ProgramFacts): readonly Finding[] {
  return machine.book.tables.activity.flatMap(({ item, pulse_ms, timeout_ms }) =>
    pulse_ms !== null && timeout_ms !== null && pulse_ms > timeout_ms && machine.items.has(item)
      ? [makeFinding("pulse-past-timeout", "error", [item], { pulse_ms, timeout_ms })]
      : [],
  );
}
