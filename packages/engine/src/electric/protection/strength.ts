import type { ShortRating, SizedWire, WeakWire, WireRating } from "../../model/index.ts";
import { adiabaticA2s, adiabaticK, harmS, shortCircuitC, type WireStrength } from "../physics/adiabatic.ts";
import type { Opening, ShortCurrent } from "../physics/short-circuit.ts";

interface Known extends WireStrength {
  readonly areaMm2: number;
  readonly k: number;
}

/** What each wire stands in a short circuit; worked out once for each. */
export class Strengths {
  readonly #wires: ReadonlyMap<string, SizedWire>;
  readonly #ratings: ReadonlyMap<string, WireRating>;
  readonly #airC: number;
  readonly #known = new Map<string, Known | null>();

  constructor(wires: ReadonlyMap<string, SizedWire>, ratings: ReadonlyMap<string, WireRating>, airC: number) {
    this.#wires = wires;
    this.#ratings = ratings;
    this.#airC = airC;
  }

  #of(wireId: string): Known | null {
    let known = this.#known.get(wireId);
    if (known === undefined) {
      known = this.#find(wireId);
      this.#known.set(wireId, known);
    }
    return known;
  }

  #find(wireId: string): Known | null {
    const [wire, rating] = [this.#wires.get(wireId), this.#ratings.get(wireId)];
    if (wire === undefined || rating === undefined) return null;
    const { area_mm2: areaMm2, temperature_c: insulationC, insulation } = wire.wireType;
    const k = adiabaticK(insulation, insulationC);
    return {
      areaMm2,
      k,
      limitA: rating.limitA,
      adiabaticA2s: adiabaticA2s(k, areaMm2),
      insulationC,
      shortC: shortCircuitC(insulation),
      airC: this.#airC,
    };
  }

  /**
   * Part of what a wire stands that a short circuit uses: the I²t of the stored energy over k²S², and how long the held
   * current lasts over how long the wire stands it. A current that nothing ever ends heats like any other: then it is
   * held against the wire's lasting limit, both squared, for the limit of a short circuit is one for seconds. From 1 on
   * its insulation is harmed. Null for a wire not known.
   */
  used(wireId: string, { storedA2s, heldA, heldS }: ShortCurrent, { opensS }: Opening): number | null {
    const known = this.#of(wireId);
    if (known === null) return null;
    const stored = storedA2s / known.adiabaticA2s;
    if (heldA === 0) return stored;
    const lastsS = Math.min(opensS, heldS);
    if (lastsS === Number.POSITIVE_INFINITY) return stored + (heldA / known.limitA) ** 2;
    return stored + lastsS / harmS(known, heldA);
  }

  weak(wireId: string, { heldA }: ShortCurrent, used: number, short: ShortRating): WeakWire | null {
    const known = this.#of(wireId);
    if (known === null) return null;
    const { areaMm2, k, adiabaticA2s: stands, limitA } = known;
    return { wireId, areaMm2, k, adiabaticA2s: stands, limitA, harmS: harmS(known, heldA), used, short };
  }
}
