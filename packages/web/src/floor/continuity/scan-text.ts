import type { AdapterFault, TesterFault } from "@pinwright/engine";
import { useWords } from "../../app/words.tsx";
import type { ScanReading } from "./scan.ts";

/** Faults that are named; what is beyond is counted. */
const MOST_NAMED = 6;

/** Says why a scan cannot be used; nothing when it can. */
export function useScanTrouble(unit: string): (reading: ScanReading) => readonly string[] {
  const own = useWords().floorMeasure.tester;
  const line = ({ kind, found, expected }: TesterFault): string => own.faults[kind](found, expected);
  const entry = ({ kind, of }: AdapterFault): string => own.adapterFaults[kind](of);
  const listed = (texts: readonly string[]): readonly string[] => [
    own.wrong,
    ...texts.slice(0, MOST_NAMED),
    ...(texts.length > MOST_NAMED ? [own.more(texts.length - MOST_NAMED)] : []),
  ];
  return (reading) => {
    switch (reading.kind) {
      case "read":
        return [];
      case "faulty":
        return listed(reading.faults.map((one) => own.line(one.line, line(one.fault))));
      case "adapter":
        return listed(reading.faults.map((one) => own.line(one.line, entry(one))));
      case "too-few":
        return [own.tooFew(reading.points, reading.places)];
      case "other-unit":
        return [own.otherUnit(reading.unit, unit)];
    }
  };
}

/** Says what is to be known of a scan that is used. */
export function useScanWarnings(): (reading: Extract<ScanReading, { kind: "read" }>) => readonly string[] {
  const own = useWords().floorMeasure.tester;
  return ({ strays, oneSided }) => [
    ...(strays.length === 0 ? [] : [own.strays(strays.join(", "))]),
    ...(oneSided.length === 0 ? [] : [own.oneSided(oneSided.map((pair) => pair.join("–")).join(", "))]),
  ];
}
