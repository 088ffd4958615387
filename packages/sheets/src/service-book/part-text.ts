import type { BookContext } from "./context.ts";

/** A part's number, and what this machine has instead. */
export function partNumber({ insteadOf, words }: BookContext, partId: string): string {
  const instead = insteadOf.get(partId);
  return instead === undefined ? partId : `${partId}\n${words((w) => w.parts.instead(instead))} *`;
}
