import type { CommandCall } from "./command.ts";
import { UsageError } from "./terminal.ts";

/**
 * A number of an option; undefined when it is not given.
 * @throws UsageError when it is no number, or not one that is allowed
 */
export function numberOption(
  call: CommandCall,
  option: string,
  is: (n: number) => boolean,
  expected: string,
): number | undefined {
  const text = call.text(option);
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!Number.isFinite(value) || !is(value))
    throw new UsageError(`--${option} ${text}: expected ${expected}`);
  return value;
}

/** A whole number of an option, from 1; undefined when it is not given. */
export const countOption = (call: CommandCall, option: string): number | undefined =>
  numberOption(call, option, (n) => Number.isInteger(n) && n >= 1 && n <= 100_000, "a whole number from 1");
