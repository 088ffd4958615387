import type { Decimal } from "@pinwright/kernel";
import type { NeedingRun } from "./demand.ts";

/** What one stage of one run wants of something. */
export interface Group {
  /** Place of the run. */
  readonly run: number;
  /** Place of the stage; −1: it leaves with the run. */
  readonly stage: number;
  /** For the field, or within what is for the field. */
  readonly isSpare: boolean;
  /** In the machines of each variant, or in what is made for them. */
  readonly byVariant: Decimal[];
  /** Of `byVariant`, what is kitted with boards, and what gets lost of it. */
  placed: Decimal;
  lost: Decimal;
}

/** What is wanted of everything, by key, as far as it is known. */
export class Groups {
  readonly #byKey = new Map<string, Map<string, Group>>();
  readonly #variants: number;

  constructor(variants: number) {
    this.#variants = variants;
  }

  /** The group of a stage of a run, made when it is new. */
  at(key: string, run: number, stage: number, isSpare: boolean): Group {
    const own = this.#byKey.get(key) ?? new Map<string, Group>();
    this.#byKey.set(key, own);
    const name = `${run} ${stage} ${isSpare}`;
    const found = own.get(name);
    if (found !== undefined) return found;
    const byVariant = Array.from({ length: this.#variants }, () => 0n);
    const group: Group = { run, stage, isSpare, byVariant, placed: 0n, lost: 0n };
    own.set(name, group);
    return group;
  }

  of(key: string): readonly Group[] {
    return [...(this.#byKey.get(key)?.values() ?? [])];
  }
}

export const buildOf = ({ byVariant }: Group): Decimal => byVariant.reduce((sum, q) => sum + q, 0n);

/** Place of the variant that most machines of a run have: what is made for the field is of that. */
export const mainVariant = ({ counts }: NeedingRun): number =>
  counts.reduce((best, count, v) => (count > (counts[best] ?? 0) ? v : best), 0);
