import type { HarnessFault, TestBench } from "@pinwright/engine";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useBench } from "../tasks/bench-context.tsx";

export type Housing = ViewEntry<"housings">;

/** How a place of a harness is called at the bench. */
export interface PlaceName {
  readonly landingId: string;
  /** What the housing is at, in the reader's language. */
  readonly housing: string;
  /** Number of the cavity, or name of the terminal. */
  readonly cavity: string;
  /** Numbers of its wires as they are printed; blank: none belongs there. */
  readonly wires: string;
  readonly pointId: string;
  readonly isLoose: boolean;
}

/** What stands behind the item in the id of a landing: `j3` of a board, `a` of an in-line connector. */
const connectorOf = (landingId: string): string => /:([^:]+)$/u.exec(landingId)?.[1]?.toUpperCase() ?? "";

/** Name of a housing, in the reader's language: its item, and the connector as it is printed there. */
export function useHousingName(): (housing: Pick<Housing, "landingId" | "item">) => string {
  const pick = usePick();
  return ({ landingId, item }) => {
    const name = pick(item.en, item.zh);
    return name === "" ? landingId : `${name} ${connectorOf(landingId)}`.trimEnd();
  };
}

/** Names the places of the harness at the bench. */
export function usePlaceNames(bench: TestBench | undefined): (placeId: string) => PlaceName {
  const { type } = useBench();
  const housings = useView("housings", { of: "harness", id: type });
  const nameOf = useHousingName();
  return (placeId) => {
    const place = bench?.places.find(({ id }) => id === placeId);
    const landingId = place?.landingId ?? "";
    const housing = housings?.get(landingId);
    const cavity = housing?.cavities.find(({ pointId }) => pointId === place?.pointId);
    const wires = (place?.wires ?? []).map(
      (number) =>
        cavity?.wires.find((wire) => wire.harnessId === type && wire.number === number)?.printed ??
        String(number),
    );
    return {
      landingId,
      housing: housing === undefined ? landingId : nameOf(housing),
      cavity: cavity?.name ?? placeId,
      wires: wires.join(", "),
      pointId: place?.pointId ?? "",
      isLoose: place?.loose ?? true,
    };
  };
}

/** A place in one line, as faults name it. */
export function usePlaceText(bench: TestBench | undefined): (placeId: string) => string {
  const { continuity } = useWords().floor;
  const nameOf = usePlaceNames(bench);
  return (placeId) => {
    const { landingId, housing, cavity } = nameOf(placeId);
    // A splice has neither housing nor cavity.
    return landingId === "" ? placeId : continuity.placeOf(housing, cavity);
  };
}

/** Places at which somebody looks for a fault. */
export function placesOfFault(bench: TestBench, fault: HarnessFault): readonly string[] {
  switch (fault.kind) {
    case "missing-wire": {
      const wire = bench.wires.find(({ id }) => id === fault.wireId);
      return wire === undefined ? [] : [wire.a, wire.b];
    }
    case "open":
    case "contact-out":
      return [fault.at];
    case "short":
    case "swapped":
      return [fault.a, fault.b];
    case "wrong-cavity":
      return [fault.contact, fault.cavity];
  }
}
