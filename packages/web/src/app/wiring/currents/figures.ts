import type { Corner, Spread } from "@pinwright/engine";
import type { AppWords } from "@pinwright/words/app";

type Words = AppWords["electric"];

/** Amperes or volts that no instrument of a bench would show; they come from how the circuit is solved. */
const NOTHING = 1e-6;

/** A number as the work can use it: a tenth from 10 up, a hundredth from 1 up, two figures below. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (size < NOTHING) return "0";
  if (size >= 100) return String(Math.round(value));
  if (size >= 10) return String(Number(value.toFixed(1)));
  return String(size >= 1 ? Number(value.toFixed(2)) : Number(value.toPrecision(2)));
}

/** With a thousandth of the unit where it is small: `350 mA`, `1.96 A`. */
const small = (value: number, unit: string): string =>
  Math.abs(value) < 0.1 && Math.abs(value) >= NOTHING
    ? `${figure(value * 1000)} m${unit}`
    : `${figure(value)} ${unit}`;

export const ampsText = (amps: number): string => (Number.isFinite(amps) ? small(amps, "A") : "∞");
export const voltsText = (volts: number): string => small(volts, "V");
export const ohmText = (ohm: number): string => small(ohm, "Ω");
export const a2sText = (a2s: number): string => `${figure(a2s)} A²s`;

/** Seconds, in milliseconds below a second and in hours from an hour on; ∞ for ever. */
export function secondsText(seconds: number): string {
  if (!Number.isFinite(seconds)) return "∞";
  if (seconds >= 3600) return `${figure(seconds / 3600)} h`;
  if (seconds >= 60) return `${figure(seconds / 60)} min`;
  return seconds < 1 ? `${figure(seconds * 1000)} ms` : `${figure(seconds)} s`;
}

/** A share in percent: whole from 10 % up, a tenth below. */
export function percentText(share: number): string {
  if (!Number.isFinite(share)) return "∞";
  const percent = share * 100;
  return `${Math.abs(percent) >= 10 ? Math.round(percent) : Number(percent.toFixed(1))} %`;
}

/** Where a corner is: `contacts worn, supply low, hot`. */
export const cornerText = ({ corner }: Words, at: Corner): string =>
  [corner.contacts[at.contacts], corner.supply[at.supply], corner.temperature[at.temperature]].join(", ");

/** A figure with its least and most and where they are, in one sentence. */
export const spreadText = (
  words: Words,
  { nominal, least, leastAt, most, mostAt }: Spread,
  text: (value: number) => string,
): string =>
  words.spread(text(nominal), text(least), cornerText(words, leastAt), text(most), cornerText(words, mostAt));

/** Step of the scale from far below a limit to beyond it, 0 to 4. */
export function shareStep(share: number): number {
  if (share > 1) return 4;
  return share >= 0.8 ? 3 : share >= 0.5 ? 2 : share >= 0.25 ? 1 : 0;
}
