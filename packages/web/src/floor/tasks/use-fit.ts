import type { KeptUnit } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import { useUnitList } from "../records/use-units.ts";
import { unitInCode } from "../shell/scan.ts";
import { useBench } from "./bench-context.tsx";
import { type Place, standingAt } from "./tasks.ts";

/** Putting units with numbers of their own into places of the machine at the bench. */
export interface Fit {
  readonly machine: string;
  readonly state: UnitState | undefined;
  readonly units: readonly KeptUnit[] | null;
  /** Why the last scan was fitted nowhere; blank: it was. */
  readonly says: string;
  /** Unit that was fitted last. */
  readonly last: string;
  readonly fit: (unit: string, place: Place) => Promise<void>;
  readonly scanned: (text: string) => Promise<void>;
}

/** @param wanted place that the next scan is for; null: the first free one of its kind */
export function useFit(places: readonly Place[], wanted: Place | null): Fit {
  const { floor } = useWords();
  const bench = useBench();
  const [machine = ""] = bench.unitIds;
  const state = bench.states.get(machine);
  const { units, look } = useUnitList();
  const [says, setSays] = useState("");
  const [last, setLast] = useState("");
  const fit = async (unit: string, place: Place): Promise<void> => {
    setSays("");
    if (await bench.record([{ kind: "fitted", unit, into: machine, place: place.id }])) setLast(unit);
  };
  const scanned = async (text: string): Promise<void> => {
    const id = unitInCode(text);
    const find = (list: readonly KeptUnit[] | null) => list?.find(({ unit }) => unit === id);
    const found = find(units) ?? find(await look());
    if (found === undefined) {
      setSays(floor.pick.unknown(text.trim().slice(0, 60)));
      return;
    }
    const kin = places.filter(({ what, type }) => what === found.what && type === found.type);
    const isIn = kin.some((place) => standingAt(state, place.id) === found.unit);
    const place =
      wanted !== null && kin.includes(wanted)
        ? wanted
        : kin.find((one) => standingAt(state, one.id) === null);
    if (kin.length === 0) setSays(floor.fit.notThisKind(found.unit));
    // The same label twice, by a trembling hand, fits it once.
    else if (isIn) setSays("");
    else if (place === undefined) setSays(floor.fit.full(found.unit));
    else await fit(found.unit, place);
  };
  return { machine, state, units, says, last, fit, scanned };
}
