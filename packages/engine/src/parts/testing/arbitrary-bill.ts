import fc from "fast-check";
import type { SomeTables } from "../../testing/book.ts";

type Bom = NonNullable<SomeTables["bom"]>;

/** Parts `p0` … `p9`, each containing only later ones, so that there is no circle; the machine contains some. */
export const arbitraryBom: fc.Arbitrary<{
  readonly parts: NonNullable<SomeTables["parts"]>;
  readonly bom: Bom;
}> = fc
  .record({
    edges: fc.uniqueArray(
      fc.record({
        from: fc.integer({ min: -1, max: 8 }),
        step: fc.integer({ min: 1, max: 4 }),
        quantity: fc.integer({ min: 1, max: 3000 }).map((n) => (n % 3 === 0 ? n / 1000 : (n % 7) + 1)),
      }),
      { maxLength: 24, selector: ({ from, step }) => `${from} ${from + step}` },
    ),
    bought: fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
  })
  .map(({ edges, bought }) => ({
    parts: bought.map((isBought, i) => ({
      id: `p${i}`,
      unit: "each" as const,
      source: isBought ? ("buy" as const) : ("make" as const),
    })),
    bom: edges
      .filter(({ from, step }) => from + step < 10)
      .map(({ from, step, quantity }) => ({
        parent: from < 0 ? null : `p${from}`,
        part: `p${from + step}`,
        quantity,
      })),
  }));
