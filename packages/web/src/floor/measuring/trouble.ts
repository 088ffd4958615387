import type { InstrumentTrouble } from "@pinwright/contract";
import { TESTER_ERRORS, TESTER_FAULTS } from "@pinwright/engine";
import { Refused } from "../../api/call.ts";
import { useWords } from "../../app/words.tsx";

/** Why an instrument gave nothing, in words; lines after the first say more. */
export type Trouble = readonly string[];

/** What the system says, not the instrument: only whoever set it up can do something about it. */
const OF_SYSTEM: ReadonlySet<InstrumentTrouble> = new Set(["not-reached", "ended", "not-measured", "busy"]);
/** A fault of a tester's answer as the server has it: kind, what stands there, what belongs there. */
const FAULT = /^([a-z-]+): "(.*)", expected (.*)$/u;

/** Says what an instrument or tester answered in place of a reading. */
export function useInstrumentTrouble(): (of: InstrumentTrouble, says: string, name: string) => Trouble {
  const { read, tester } = useWords().floorMeasure;
  const more = (of: InstrumentTrouble, says: string): string => {
    if (OF_SYSTEM.has(of)) return read.system(says);
    const error = TESTER_ERRORS.find((one) => says === `error ${one}`);
    if (error !== undefined) return tester.errors[error];
    const [, kind, found = "", expected = ""] = FAULT.exec(says) ?? [];
    const fault = TESTER_FAULTS.find((one) => one === kind);
    return fault === undefined ? read.says(says) : tester.answer(tester.faults[fault](found, expected));
  };
  return (of, says, name) => [read.troubles[of](name), ...(says === "" ? [] : [more(of, says)])];
}

/** Says what kept the server from being asked. */
export function useServerTrouble(): (error: unknown) => Trouble {
  const own = useWords().floorMeasure.read;
  return (error) => {
    if (!(error instanceof Refused)) return [own.away];
    const { code } = error.problem;
    if (code === "not-found") return [own.gone];
    return code === "not-allowed" ? [own.notAllowed] : [error.message];
  };
}
