/** Values that a test may give; null: it gives none. */
export interface Wanted {
  readonly unit: string;
  readonly nominal: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

/** What an instrument measures, and the least and greatest value that it is used for. */
export interface Measurable {
  readonly unit: string;
  readonly min: number | null;
  readonly max: number | null;
}

/** A unit in one way of writing: the sign of the ohm has two code points, and people write it out. */
const plainUnit = (unit: string): string =>
  unit
    .trim()
    .replaceAll("\u2126", "Ω")
    .replace(/ohms?$/iu, "Ω")
    .replaceAll("\u00B5", "μ");

/**
 * The first of what an instrument measures that serves a test: of the same unit, and with every value that the test gives
 * within its range, so that nobody is offered the range for 60 V where mains is measured. undefined: none serves.
 */
export function measureFor<M extends Measurable>(measures: readonly M[], wanted: Wanted): M | undefined {
  const unit = plainUnit(wanted.unit);
  if (unit === "") return undefined;
  const values = [wanted.nominal, wanted.min, wanted.max].filter((value) => value !== null);
  return measures.find(
    (measure) =>
      plainUnit(measure.unit) === unit &&
      values.every((value) => value >= (measure.min ?? -Infinity) && value <= (measure.max ?? Infinity)),
  );
}
