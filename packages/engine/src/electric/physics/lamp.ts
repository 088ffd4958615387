/** E24 series of preferred values. Source: IEC 60063, from memory. */
const E24 = [
  10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
] as const;

/** The lowest value of the E24 series that is at least `ohm`; `ohm` is above zero. */
export function e24AtLeast(ohm: number): number {
  const decade = Math.floor(Math.log10(ohm)) - 1;
  for (const d of [decade, decade + 1]) {
    for (const value of E24) {
      const found = Number((value * 10 ** d).toPrecision(2));
      if (found >= ohm * (1 - 1e-9)) return found;
    }
  }
  return Number((E24[0] * 10 ** (decade + 2)).toPrecision(2));
}

/** A resistor in series with an LED. */
export interface SeriesResistor {
  readonly ohm: number;
  /** Current with it, and its heat. */
  readonly amps: number;
  readonly watts: number;
}

/** Current of an LED behind a resistor, A: what the supply has above its forward voltage, over the resistance. */
export const ledA = (volts: number, forwardV: number, ohm: number): number =>
  ohm > 0 ? Math.max(0, volts - forwardV) / ohm : 0;

/** The resistor of the E24 series that lets at most `amps` through; null when the supply is below the LED's voltage. */
export function seriesResistor(volts: number, forwardV: number, amps: number): SeriesResistor | null {
  if (!(volts > forwardV && amps > 0)) return null;
  const ohm = e24AtLeast((volts - forwardV) / amps);
  const withIt = ledA(volts, forwardV, ohm);
  return { ohm, amps: withIt, watts: withIt ** 2 * ohm };
}

/** Current in its own share of the time that gives a lamp a mean current, A: mean ÷ duty, of a multiplex of n lines 1 ÷ n. */
export const multiplexedA = (meanA: number, duty: number): number => meanA / duty;
