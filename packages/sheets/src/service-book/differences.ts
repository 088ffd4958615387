import type { LineResult, SizedWire } from "@pinwright/engine";
import { wireNo } from "../facts.ts";
import type { ServiceUnit, UnitAlternate } from "./options.ts";

/** The mark beside what differs from the drawings. */
export const DIFFERS = "*";

/** One difference, with the wires that it is about. */
export interface Difference extends UnitAlternate {
  /** Numbers of wires, as on their labels. */
  readonly wires: readonly string[];
}

/** A machine as it was really built. */
export interface AsBuilt {
  /** The line with the colours that the wires really have, each with the mark. */
  readonly line: LineResult;
  readonly differences: readonly Difference[];
  /** Part that is there by the part of the drawings. */
  readonly insteadOf: ReadonlyMap<string, string>;
}

const COLOUR = /^(?:[A-Z]{2}){1,2}$/u;

/** The colour at the end of a text, `GYBK` or `wire.hu-22 GYBK`; null: there is none. */
function colourOf(text: string): string | null {
  const last = text.trim().split(/\s+/u).at(-1) ?? "";
  return COLOUR.test(last) ? last : null;
}

/** Whether an alternate speaks of a wire. */
function isOfWire({ part, instead }: UnitAlternate, wire: SizedWire, number: string): boolean {
  if (colourOf(instead) === null) return false;
  const [kind = "", colour] = part.trim().split(/\s+/u);
  if (colour === undefined) return kind === number;
  return colour === wire.colour && [wire.wireType.part, wire.wireType.id].includes(kind);
}

/** A machine with what its records say that it has instead. The line itself is left as it is. */
export function asBuilt(line: LineResult, unit: ServiceUnit | null): AsBuilt {
  const alternates = unit?.alternates ?? [];
  if (alternates.length === 0) return { line, differences: [], insteadOf: new Map() };
  const wiresOf = new Map<UnitAlternate, string[]>(alternates.map((one) => [one, []]));
  const harnesses = new Map(
    [...line.harnesses].map(([id, harness]) => [
      id,
      {
        ...harness,
        wires: harness.wires.map((wire): SizedWire => {
          const number = wireNo(harness, wire.number);
          // What was recorded last is what is there.
          const own = alternates.filter((one) => isOfWire(one, wire, number)).at(-1);
          const colour = own === undefined ? null : colourOf(own.instead);
          if (own === undefined || colour === null) return wire;
          wiresOf.get(own)?.push(number);
          return { ...wire, colour: `${colour}${DIFFERS}` };
        }),
      },
    ]),
  );
  return {
    line: { ...line, harnesses },
    differences: alternates.map((one) => ({ ...one, wires: wiresOf.get(one) ?? [] })),
    insteadOf: new Map(
      alternates.flatMap((one) =>
        (wiresOf.get(one) ?? []).length === 0 ? [[one.part, one.instead] as const] : [],
      ),
    ),
  };
}
