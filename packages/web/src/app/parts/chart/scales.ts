/** A place on an axis that has a line and a figure; `minor` ones have only the line. */
interface Tick {
  readonly value: number;
  readonly isMinor: boolean;
}

/** An axis: from values to px. */
export interface Scale {
  readonly at: (value: number) => number;
  readonly ticks: readonly Tick[];
}

const LEAST = 1e-9;

/** A round step of an axis: 1, 2 or 5 times a power of ten, at most `most` of them in `span`. */
export function roundStep(span: number, most: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(span / most, LEAST)));
  return ([1, 2, 5, 10].find((digit) => span / (digit * power) <= most + LEAST) ?? 10) * power;
}

/** An axis from nothing (or from `low`, if that is below) to at least `high`, in even steps. */
export function linearScale(low: number, high: number, from: number, to: number, most = 6): Scale {
  const bottom = Math.min(0, low);
  const top = Math.max(high, bottom + LEAST);
  const step = roundStep(top - bottom, most);
  const [first, last] = [Math.floor(bottom / step + LEAST), Math.ceil(top / step - LEAST)];
  const [start, end] = [first * step, last * step];
  return {
    at: (value) => from + ((value - start) / (end - start)) * (to - from),
    ticks: Array.from({ length: last - first + 1 }, (_, i) => ({
      value: Number(((first + i) * step).toPrecision(12)),
      isMinor: false,
    })),
  };
}

/** An axis on which each power of ten takes as much room as the next. */
export function logScale(low: number, high: number, from: number, to: number): Scale {
  const bottom = Math.floor(Math.log10(Math.max(low, LEAST)) + LEAST);
  const top = Math.max(bottom + 1, Math.ceil(Math.log10(Math.max(high, LEAST)) - LEAST));
  const ticks: Tick[] = [];
  for (let power = bottom; power <= top; power++)
    for (const digit of [1, 2, 5]) {
      if (power === top && digit > 1) break;
      const value = Number((digit * 10 ** power).toPrecision(12));
      ticks.push({ value, isMinor: digit > 1 });
    }
  return {
    at: (value) => from + ((Math.log10(Math.max(value, LEAST)) - bottom) / (top - bottom)) * (to - from),
    ticks,
  };
}
