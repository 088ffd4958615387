import type { Fact } from "@pinwright/contract";
import type { Store } from "@pinwright/store";

const PAGE = 2_000;

/** The named alternative: all facts in memory, gone through from the first to the last for every question. */
export class InMemory {
  readonly #facts: readonly Fact[];

  private constructor(facts: readonly Fact[]) {
    this.#facts = facts;
  }

  static async of({ records }: Store): Promise<InMemory> {
    const facts: Fact[] = [];
    for (let no = 0; ; ) {
      const some = await records.after(no, PAGE);
      const last = some.at(-1);
      if (last === undefined) return new InMemory(facts);
      for (const { fact } of some) facts.push(fact);
      no = last.no;
    }
  }

  history(unit: string): readonly Fact[] {
    const inside = new Set([unit]);
    // What is fitted into a unit is told of before that goes into the next, so that one way through the facts finds it all.
    for (const { body } of this.#facts.toReversed())
      if (body.kind === "fitted" && inside.has(body.into)) inside.add(body.unit);
    return this.#facts.filter(({ body }) => "unit" in body && inside.has(body.unit));
  }

  recall(holds: (fact: Fact) => boolean): ReadonlySet<string> {
    const found = new Set<string>();
    for (const fact of this.#facts) if ("unit" in fact.body && holds(fact)) found.add(fact.body.unit);
    for (const { body } of this.#facts)
      if (body.kind === "fitted" && found.has(body.unit)) found.add(body.into);
    return found;
  }

  readings(test: string): readonly Fact[] {
    return this.#facts
      .filter(({ body }) => body.kind === "reading" && body.test === test)
      .sort((a, b) => (a.at < b.at ? -1 : 1));
  }
}
