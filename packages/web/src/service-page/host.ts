import type { FaultAnswer, FaultFile, FaultSession } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import type { FaultWords } from "@pinwright/words/service";
import { createContext, type ReactNode, useContext } from "react";
import type { Names } from "./names.ts";

/** What fault finding stands on: a machine's file, and somebody who answers. */
export interface FaultHost {
  readonly file: FaultFile;
  readonly answer: (session: FaultSession) => Promise<FaultAnswer>;
  /** Where all about an id is told; null: nowhere here. */
  readonly thing: ((id: string, text: string) => ReactNode) | null;
}

/** Everything that the parts of fault finding share. */
export interface Faults extends FaultHost {
  readonly names: Names;
  readonly words: FaultWords["faults"];
  readonly cautions: FaultWords["cautions"];
  readonly language: Language;
}

export const FaultsContext = createContext<Faults | null>(null);

export function useFaults(): Faults {
  const faults = useContext(FaultsContext);
  if (faults === null) throw new Error("useFaults outside of fault finding");
  return faults;
}
