import type { BookRow } from "@pinwright/book";

/** How much of a minute of hard play a load spends in its pulse and held, and how it is held. */
export interface Usage {
  /** Share of time in a pulse, at full current; 0 to 1. */
  readonly pulseShare: number;
  /** Share of time held; 0 to 1. */
  readonly holdShare: number;
  /** Duty while held; 0 to 1. */
  readonly holdDuty: number;
}

/** Of a load that `activity` says nothing of: on all the time. */
export const ALWAYS: Usage = { pulseShare: 1, holdShare: 0, holdDuty: 1 };

/**
 * From a row of `activity`. Its duty is the share of a minute of hard play in which it is on at all; blank means 1.
 * Hard play pulses as often as `repeat_ms` lets it, so that pulse ÷ repeat of the minute is pulse, as far as the duty
 * goes, and the rest of the duty is held. Without a hold all of it is pulse. Common practice, no source.
 */
export function usageOf(row: BookRow<"activity">): Usage {
  const duty = (row.duty_pct ?? 100) / 100;
  const { pulse_ms: pulse, repeat_ms: repeat, hold_ms: hold } = row;
  const holdDuty = (row.hold_duty_pct ?? 100) / 100;
  if (hold === null || hold === 0 || pulse === null) return { pulseShare: duty, holdShare: 0, holdDuty };
  const pulseShare = Math.min(duty, pulse / Math.max(pulse, repeat ?? pulse + hold));
  return { pulseShare, holdShare: duty - pulseShare, holdDuty };
}
