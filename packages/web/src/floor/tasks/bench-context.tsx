import type { FactBody, UnitKind } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import { createContext, useContext } from "react";
import type { Work } from "./tasks.ts";

/** What is on the bench: units of one kind and type, what they take and what is known of them. */
export interface Bench {
  readonly unitIds: readonly string[];
  readonly what: UnitKind;
  readonly type: string;
  /** Name of the type in the reader's language. */
  readonly name: string;
  /** Release that the units are built to and that all of this shows; null: the book as it is now. */
  readonly release: string | null;
  readonly work: Work;
  readonly states: ReadonlyMap<string, UnitState>;
  /** Blank: all stations. */
  readonly station: string;
  /** Keeps facts; false when the device could not, which is told on the screen. */
  readonly record: (bodies: readonly FactBody[]) => Promise<boolean>;
  /** Shows the next thing that is to do. */
  readonly next: () => void;
  readonly back: (() => void) | null;
  /** Shows another screen of these units, such as `/defect`. */
  readonly show: (view: string) => void;
}

export const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === null) throw new Error("useBench outside of a work page");
  return bench;
}

/** Name of the clock of a task: each unit, or batch, has its own. */
export const clockOf = (unitIds: readonly string[], taskKey: string): string =>
  `${unitIds.join(" ")} ${taskKey}`;

/** Station of a fact: left out where the tablet stands at none. */
export const atStation = ({ station }: Bench): { readonly station?: string } =>
  station === "" ? {} : { station };
