/** A logarithmic axis of a drawing: values from `least` to `most` between two places, px. */
export interface LogAxis {
  readonly least: number;
  readonly most: number;
  /** Where a value is; values beyond the ends are put at the ends. */
  readonly at: (value: number) => number;
  /** Powers of ten within, and what lies between them at 2 and 5. */
  readonly ticks: readonly { readonly value: number; readonly major: boolean }[];
}

export function logAxis(least: number, most: number, fromPx: number, toPx: number): LogAxis {
  const [low, high] = [Math.log10(least), Math.log10(most)];
  const at = (value: number): number => {
    const along = (Math.log10(Math.max(value, Number.MIN_VALUE)) - low) / (high - low);
    return fromPx + Math.min(1, Math.max(0, along)) * (toPx - fromPx);
  };
  const ticks: { value: number; major: boolean }[] = [];
  for (let power = Math.floor(low); power <= Math.ceil(high); power++)
    for (const times of [1, 2, 5]) {
      const value = Number((times * 10 ** power).toPrecision(1));
      if (value >= least * 0.999 && value <= most * 1.001) ticks.push({ value, major: times === 1 });
    }
  return { least, most, at, ticks };
}

/** A path through points on two logarithmic axes. */
export const linePath = (points: readonly (readonly [number, number])[], x: LogAxis, y: LogAxis): string =>
  points.map(([a, b], i) => `${i === 0 ? "M" : "L"}${round(x.at(a))} ${round(y.at(b))}`).join("");

const round = (px: number): number => Math.round(px * 10) / 10;
