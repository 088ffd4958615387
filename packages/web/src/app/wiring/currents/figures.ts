import type { Corner, Spread } from "@pinwright/engine";
import type { AppWords } from "@pinwright/words/app";

type Words = AppWords["electric"];

/** A number as the work can use it: a tenth from 10 up, a hundredth from 1 up, two figures below. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (size >= 100) return String(Math.round(value));
  if (size >= 10) return String(Number(value.toFixed(1)));
  return String(size >= 1 ? Number(value.toFixed(2)) : Number(value.toPrecision(2)));
}

/** Amperes, volts and ohms below it are not worth a figure: what an open driver leaks, what a short link drops. */
const NOTHING = 1e-4;

/** How a quantity is written; `exact` gives the full value, for whoever points at it. */
export type FigureText = (value: number, exact?: boolean) => string;

/** With a thousandth of the unit where it is small: `35 mA`, `1.96 A`. */
const inUnit =
  (unit: string): FigureText =>
  (value, exact = false) => {
    if (!Number.isFinite(value)) return "∞";
    if (exact) return `${Number(value.toPrecision(6))} ${unit}`;
    const size = Math.abs(value);
    if (size < NOTHING) return `0 ${unit}`;
    return size < 0.1 ? `${figure(value * 1000)} m${unit}` : `${figure(value)} ${unit}`;
  };

export const ampsText = inUnit("A");
export const voltsText = inUnit("V");
export const ohmText = inUnit("Ω");
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
  [corner.contacts[at.contacts], corner.supply[at.supply], corner.temperature[at.temperature]].join(
    corner.between,
  );

/** A figure with its least and most and where they are, in one sentence and in full. */
export const spreadText = (
  words: Words,
  { nominal, least, leastAt, most, mostAt }: Spread,
  text: FigureText,
): string =>
  words.spread(
    text(nominal, true),
    text(least, true),
    cornerText(words, leastAt),
    text(most, true),
    cornerText(words, mostAt),
  );

/** Step of the scale from far below a limit to beyond it, 0 to 4. */
export function shareStep(share: number): number {
  if (share > 1) return 4;
  return share >= 0.8 ? 3 : share >= 0.5 ? 2 : share >= 0.25 ? 1 : 0;
}
