import type { BookRow } from "@pinwright/book";
import type { Machine } from "./machine.ts";

type Choice = BookRow<"choices">;
type Choices = ReadonlyMap<string, Choice>;

interface Sorted {
  readonly byHarness: ReadonlyMap<string, Choices>;
  readonly general: Choices;
}

const sorted = new WeakMap<Choices, Sorted>();

function sort(choices: Choices): Sorted {
  const byHarness = new Map<string, Map<string, Choice>>();
  const general = new Map<string, Choice>();
  for (const [subject, choice] of choices) {
    const bar = subject.indexOf("|");
    if (bar < 0) general.set(subject, choice);
    else {
      const harnessId = subject.slice(0, bar);
      const own = byHarness.get(harnessId) ?? new Map<string, Choice>();
      own.set(subject, choice);
      byHarness.set(harnessId, own);
    }
  }
  return { byHarness, general };
}

const NONE: Choices = new Map();

/**
 * Choices of one kind whose subject begins with a harness (`harness|…`), and those that name no harness, by
 * subject. They are sorted once for a table of choices, however many harnesses ask.
 */
export function choicesOf(
  choices: Choices | undefined,
  harnessId: string,
): { readonly own: Choices; readonly general: Choices } {
  if (choices === undefined) return { own: NONE, general: NONE };
  const known = sorted.get(choices) ?? sort(choices);
  sorted.set(choices, known);
  return { own: known.byHarness.get(harnessId) ?? NONE, general: known.general };
}

/** Choices of some kinds, to be compared by identity: what a computation that reads no other choices depends on. */
export const choicesOfKinds = (
  machine: Pick<Machine, "choices">,
  kinds: readonly Choice["kind"][],
): readonly (Choices | undefined)[] => kinds.map((kind) => machine.choices.get(kind));
