import type { FactBody } from "@pinwright/contract";
import { atStation, type Bench } from "../tasks/bench-context.tsx";
import { type Source, TYPED } from "./use-reader.ts";

/** What was read or judged. */
export interface Reading {
  readonly unit: string;
  readonly test: string;
  readonly good: boolean;
  readonly value?: number;
  readonly source?: Source;
}

/** A reading as facts: itself, and what is to be known of it. */
export function readingFacts(
  bench: Bench,
  { unit, test, good, value, source = TYPED }: Reading,
): readonly FactBody[] {
  return [
    {
      kind: "reading",
      unit,
      test,
      good,
      ...(value === undefined ? {} : { value }),
      ...(source.instrument === "" ? {} : { instrument: source.instrument }),
      ...atStation(bench),
    },
    ...(source.note === "" ? [] : [{ kind: "noted" as const, unit, says: source.note }]),
  ];
}
