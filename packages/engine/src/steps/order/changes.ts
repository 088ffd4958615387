/** What a step takes into the hand, as numbers in the order of use. */
export interface Handled {
  readonly boxes: readonly number[];
  readonly bits: readonly number[];
}

/** Changes of boxes and of bits. */
export interface ChangeCount {
  readonly boxes: number;
  readonly bits: number;
}

const NOTHING: readonly number[] = [];

/** Changes within a list, and from what was in the hand before it; the first to be taken up is no change. */
function changesIn(list: readonly number[], before: number): number {
  let count = 0;
  let last = before;
  for (const one of list) {
    if (last !== -1 && one !== last) count++;
    last = one;
  }
  return count;
}

/** Changes over steps done one after the other on one panel. */
export function countChanges(steps: Iterable<Handled>): ChangeCount {
  let boxes = 0;
  let bits = 0;
  let box = -1;
  let bit = -1;
  for (const step of steps) {
    boxes += changesIn(step.boxes, box);
    bits += changesIn(step.bits, bit);
    box = step.boxes.at(-1) ?? box;
    bit = step.bits.at(-1) ?? bit;
  }
  return { boxes, bits };
}

/** Numbers for names, from 0 in the order in which they are met. */
export class Numbering {
  readonly #numbers = new Map<string, number>();

  of(name: string): number {
    const known = this.#numbers.get(name) ?? this.#numbers.size;
    this.#numbers.set(name, known);
    return known;
  }

  /** Numbers of a list without repeats beside each other. */
  listOf(names: readonly string[]): readonly number[] {
    if (names.length === 0) return NOTHING;
    const numbers = names.map((name) => this.of(name));
    return numbers.filter((number, i) => i === 0 || number !== numbers[i - 1]);
  }
}
