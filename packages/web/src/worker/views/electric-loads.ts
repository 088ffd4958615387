import type { CoilRating, LampRating, LoadVolts } from "@pinwright/engine";
import { type LoadKind, loadKindOf, type Named, namedElement, namedSupply } from "../electric/naming.ts";
import { electricOf } from "../electric/of-line.ts";
import { view } from "./view.ts";

/** A load with the volts that reach it. */
export interface LoadLine extends Named {
  readonly kind: LoadKind;
  readonly supply: Named;
  readonly volts: LoadVolts;
  /** Part of its volts that is missing in its worst moment at its worst corner: 0.1 where it has 90 % of them. */
  readonly missing: number;
  readonly lamp: LampRating | null;
}

/** Every load that something feeds; those that miss most of their volts first. */
export const electricLoads = view<null, LoadLine>({
  uses: ({ line }) => [electricOf(line), line.machine.items],
  entries: ({ line }) => {
    const { solution, ratings } = electricOf(line);
    const lines = [...solution.loads.values()].map(
      (volts): LoadLine => ({
        ...namedElement(line, volts.loadId),
        kind: loadKindOf(line, volts.loadId),
        supply: namedSupply(line, volts.supplyId),
        volts,
        missing: volts.nominalV > 0 ? 1 - volts.worstV.least / volts.nominalV : 0,
        lamp: ratings.lamps.get(volts.loadId) ?? null,
      }),
    );
    return new Map(lines.sort((a, b) => b.missing - a.missing).map((one) => [one.id, one]));
  },
  restsInPreview: true,
});

/** Loads that no way leads to from a supply and back. */
export const electricUnfed = view<null, Named>({
  uses: ({ line }) => [electricOf(line), line.machine.items],
  entries: ({ line }) =>
    new Map(electricOf(line).solution.unfedIds.map((id) => [id, namedElement(line, id)] as const)),
  restsInPreview: true,
});

/** A coil with its heat, its hold and what saves it when its driver stays on. */
export interface CoilLine extends Named {
  readonly rating: CoilRating;
  /** Part of the duty that its class allows; null where its heat is not told. */
  readonly share: number | null;
}

/** Every coil, the hottest first. */
export const electricCoils = view<null, CoilLine>({
  uses: ({ line }) => [electricOf(line), line.machine.items],
  entries: ({ line }) => {
    const lines = [...(electricOf(line).ratings.coils.values() ?? [])].map(
      (rating): CoilLine => ({
        ...namedElement(line, rating.elementId),
        rating,
        share: rating.allowedDuty === null ? null : rating.duty / rating.allowedDuty,
      }),
    );
    return new Map(lines.sort((a, b) => (b.share ?? -1) - (a.share ?? -1)).map((one) => [one.id, one]));
  },
  restsInPreview: true,
});
