import { type InstrumentInfo, measureFor, type Wanted } from "@pinwright/contract";
import { useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../../app/session/session.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { type Trouble, useInstrumentTrouble, useServerTrouble } from "./trouble.ts";
import { useInstruments } from "./use-instruments.ts";

/** Where a value came from; blank: it was typed. */
export interface Source {
  readonly instrument: string;
  /** What is noted on the unit beside the reading; blank: nothing. */
  readonly note: string;
}

export const TYPED: Source = { instrument: "", note: "" };

/** What is measured: a test of a book, or a step of it. */
export interface Measured {
  readonly book: string;
  readonly test: string;
  readonly step?: number;
  /** What people call it. */
  readonly name: string;
}

interface Read {
  readonly value: number;
  readonly source: Source;
}

export interface Reader {
  /** Instruments that measure this. */
  readonly offered: readonly InstrumentInfo[];
  readonly nameOf: (instrument: InstrumentInfo) => string;
  /** The one that measures now. */
  readonly busy: string | null;
  readonly trouble: Trouble;
  /** What is to be known of the last reading; blank: nothing. */
  readonly warning: string;
  readonly read: (instrument: InstrumentInfo) => Promise<Read | null>;
}

/** Reads what a test asks for from the instruments of this station. */
export function useReader({ book, test, step, name }: Measured, wanted: Wanted): Reader {
  const own = useWords().floorMeasure.read;
  const pick = usePick();
  const { status } = useSession();
  const textOf = useInstrumentTrouble();
  const serverText = useServerTrouble();
  const offered = useInstruments().filter(
    (one) => one.kind === "scpi" && measureFor(one.measures, wanted) !== undefined,
  );
  const [busy, setBusy] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble>([]);
  const [warning, setWarning] = useState("");
  const nameOf = (one: InstrumentInfo): string => pick(one.label, one.labelZh) || one.id;
  const read = async (one: InstrumentInfo): Promise<Read | null> => {
    setBusy(one.id);
    setTrouble([]);
    setWarning("");
    try {
      const answer = await call("readInstrument", {
        parts: { id: one.id },
        body: { book, test, ...(step === undefined ? {} : { step }) },
        token: status.token,
      });
      if (answer.outcome === "trouble") {
        setTrouble(textOf(answer.trouble, answer.says, nameOf(one)));
        return null;
      }
      const note = answer.isOverdue ? own.overdueNote(nameOf(one), one.calibratedUntil, name) : "";
      if (answer.isOverdue) setWarning(own.overdue(nameOf(one), one.calibratedUntil));
      return { value: answer.value, source: { instrument: one.id, note } };
    } catch (error) {
      setTrouble(serverText(error));
      return null;
    } finally {
      setBusy(null);
    }
  };
  return { offered, nameOf, busy, trouble, warning, read };
}
