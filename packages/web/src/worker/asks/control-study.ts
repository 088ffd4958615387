import { type ControlStudy, type StudyReading, controlStudy as study } from "@pinwright/engine";
import type { Model } from "../model.ts";

/**
 * Control charts and capability of a test by its readings, within the limits that the book gives it; null: there are too
 * few readings, or no such test.
 */
export function controlStudy(
  { book }: Model,
  {
    testId,
    readings,
    calibratedUntil,
    sampleSize,
  }: {
    readonly testId: string;
    /** Oldest first. */
    readonly readings: readonly StudyReading[];
    /** Last good day of instruments. */
    readonly calibratedUntil: readonly (readonly [string, string])[];
    readonly sampleSize: number;
  },
): ControlStudy | null {
  const test = book.tables.tests.find(({ id }) => id === testId);
  if (test === undefined) return null;
  return study(readings, { lower: test.min, upper: test.max }, new Map(calibratedUntil), sampleSize);
}
