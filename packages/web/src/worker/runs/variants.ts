import type { Book, Shop } from "@pinwright/book";
import { Line, type MachineVariant, optionsKey, type RunMix, runMixes, variantOf } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** A machine with one set of options: its own line, which remembers, and what plans need of its last result. */
interface Kept {
  readonly line: Line;
  book: Book;
  shop: Shop;
  variant: MachineVariant;
}

/** Sets of options that are kept between plans: a line of a whole machine takes some tens of megabytes. */
const MOST_KEPT = 6;

/** The machines of the runs in all their mixes, each derived once for a book and a shop. */
export class Variants {
  readonly #kept = new Map<string, Kept>();
  #usual: { readonly line: Model["line"]; readonly variant: MachineVariant } | null = null;

  /** Sets of options that the runs ask for and that are not derived yet. */
  missing(model: Model): readonly RunMix[] {
    const found = new Map<string, RunMix>();
    for (const mix of runMixes(model.book, model.shop))
      if (this.#variantOf(model, mix.key) === null) found.set(mix.key, mix);
    return [...found.values()];
  }

  /** Derives one machine. It takes as long as opening a book does. */
  derive(model: Model, { key, optionIds }: RunMix): void {
    const { book } = model;
    const { shop } = model.line.machine;
    const line = this.#kept.get(key)?.line ?? new Line();
    const variant = variantOf(line.run(book, shop, new Set(optionIds)));
    this.#kept.delete(key);
    this.#kept.set(key, { line, book, shop, variant });
    for (const old of this.#kept.keys()) if (this.#kept.size > MOST_KEPT) this.#kept.delete(old);
  }

  /** All that are derived, by the key of their options. */
  of(model: Model): ReadonlyMap<string, MachineVariant> {
    const found = new Map<string, MachineVariant>();
    for (const { key } of runMixes(model.book, model.shop)) {
      const variant = this.#variantOf(model, key);
      if (variant !== null) found.set(key, variant);
    }
    return found;
  }

  #variantOf(model: Model, key: string): MachineVariant | null {
    if (optionsKey(model.line.machine.options) === key) return this.#usualOf(model);
    const kept = this.#kept.get(key);
    const isNow = kept?.book === model.book && kept.shop === model.line.machine.shop;
    return kept !== undefined && isNow ? kept.variant : null;
  }

  /** The machine with its usual options is the one that the page shows: it is derived already. */
  #usualOf({ line }: Model): MachineVariant {
    if (this.#usual === null || !sameMachine(this.#usual.line, line))
      this.#usual = { line, variant: variantOf(line) };
    return this.#usual.variant;
  }
}

/** Whether two results give plans the same. */
const sameMachine = (a: Model["line"], b: Model["line"]): boolean =>
  a.parts === b.parts &&
  a.steps === b.steps &&
  a.panels === b.panels &&
  a.machine.book === b.machine.book &&
  a.machine.shop === b.machine.shop;
