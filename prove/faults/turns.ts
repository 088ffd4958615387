import type { PlacedElement } from "../../packages/engine/src/index.ts";

/** A thing that is tried, and what it is commanded or read by. */
export interface Tried {
  readonly f: number;
  readonly own: PlacedElement;
  /** One driver or input; a motor in a bridge has two drivers that turn it one way, and two the other. */
  readonly motions: readonly (readonly PlacedElement[])[];
}

/** Controls that work together: of several those of one motion, which is what stands before the comma of their control. */
export function motionsOf(controls: readonly PlacedElement[]): readonly (readonly PlacedElement[])[] {
  const motion = ({ row }: PlacedElement): string => row.control?.split(",")[0] ?? "";
  return [...new Set(controls.map(motion))].map((name) => controls.filter((one) => motion(one) === name));
}

/**
 * Commands that tell any two things apart: each thing that is commanded by itself has a word of bits, all with the same
 * number of ones, so that of any two each is on once while the other is not; in turn those are on whose word has the bit.
 */
export function turnsOf(tried: readonly Tried[]): readonly ((n: number) => boolean)[] {
  const commandOf = (n: number): string => {
    const one = tried[n];
    const [control] = one?.motions[0] ?? [];
    return (control?.row.kind === "driver" ? control.id : one?.own.id) ?? "";
  };
  const commands = [...new Set([...tried.keys()].map(commandOf))];
  const words: number[] = [];
  let length = 2;
  for (; words.length < commands.length; length++) {
    words.length = 0;
    for (let word = 0; word < 1 << length; word++)
      if (word.toString(2).replaceAll("0", "").length === length >> 1) words.push(word);
  }
  const wordOf = new Map(commands.map((id, n) => [id, words[n] ?? 0]));
  return Array.from(
    { length: length - 1 },
    (_, bit) =>
      (n: number): boolean =>
        (((wordOf.get(commandOf(n)) ?? 0) >> bit) & 1) === 1,
  );
}
