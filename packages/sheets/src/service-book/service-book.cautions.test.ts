import type { Language } from "@pinwright/words";
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { anchorsOf } from "../compose/guide.ts";
import { missingCautions, neededCautions, withoutAnchor } from "../testing/book-cautions.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { HAZARDS, type HazardId } from "./hazards.ts";
import { composeServiceBook } from "./service-book.ts";

/** A hazard that a careless hand has left out of the book. */
const left = vi.hoisted((): { out: HazardId | null } => ({ out: null }));
vi.mock("./hazards.ts", async (load) => {
  const real = await load<typeof import("./hazards.ts")>();
  const hazardsOf: typeof real.hazardsOf = (...asked) =>
    real.hazardsOf(...asked).filter(({ id }) => id !== left.out);
  return { ...real, hazardsOf };
});
beforeEach(() => {
  left.out = null;
});

const line = await exampleLine("first-light");
const made = (language: Language): SheetDocument =>
  composeServiceBook(line, { ...OPTIONS, language, unit: null });
const needed = neededCautions(line, new Set(anchorsOf(made("en").pages).keys()));

describe.each(["en", "zh"] as const)("cautions of the service book in %s", (language) => {
  test("stand in every section that the machine's own tables ask for, each with who decides", () => {
    expect(needed.length).toBeGreaterThan(20);
    expect(missingCautions(made(language), needed, language)).toEqual([]);
  });

  test("are missed wherever one of them is taken away", () => {
    const document = made(language);
    for (const { hazard, place } of needed) {
      const without = withoutAnchor(document, `hazard:${hazard}@${place}`);
      expect(missingCautions(without, needed, language)).toContain(`${hazard}@${place}`);
    }
  });

  test("are missed when the book forgets a hazard", () => {
    for (const id of HAZARDS) {
      const own = needed.filter(({ hazard }) => hazard === id);
      if (own.length === 0) continue;
      left.out = id;
      const missing = missingCautions(made(language), needed, language);
      for (const { place } of own) expect(missing).toContain(`${id}@${place}`);
      expect(missing).toContain(`safety:${id}`);
    }
  });
});
