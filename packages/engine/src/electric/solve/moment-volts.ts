import { type IslandState, modesOf } from "./island-state.ts";

/** Volts of every node of an island at one corner while some of its units are on, by their place in the island. */
export function momentVolts(state: IslandState, units: readonly number[]): Float64Array {
  const volts = state.base.slice();
  const { modes, amps } = modesOf(state, units);
  modes.forEach((mode, k) => {
    const one = state.byMode[mode];
    for (let n = 0; n < volts.length; n++) volts[n] = (volts[n] ?? 0) + (amps[k] ?? 0) * (one?.[n] ?? 0);
  });
  return volts;
}
