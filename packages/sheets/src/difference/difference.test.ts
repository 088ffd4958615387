import fc from "fast-check";
import { expect, test } from "vitest";
import { at, group, line, write } from "../compose/draw.ts";
import type { Mark, Page } from "../compose/mark.ts";
import { composeHarnessSheets } from "../harness-sheets.ts";
import { overlaySvg } from "../svg/svg.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { pageDifference } from "./difference.ts";

const page = (marks: readonly Mark[]): Page => ({ widthMm: 100, heightMm: 50, marks });
const mark = (n: number): Mark => line(at(n, 0), at(n, 10));
const numbers = fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 12 });

test("what is common, old and new add up to both sides, however often a mark stands there", () => {
  fc.assert(
    fc.property(numbers, numbers, (before, after) => {
      const { same, old, fresh } = pageDifference(page(before.map(mark)), page(after.map(mark)));
      expect(same.length + old.length).toBe(before.length);
      expect(same.length + fresh.length).toBe(after.length);
      const count = (list: readonly number[], n: number): number => list.filter((one) => one === n).length;
      const shared = [0, 1, 2, 3, 4, 5, 6].reduce(
        (sum, n) => sum + Math.min(count(before, n), count(after, n)),
        0,
      );
      expect(same.length).toBe(shared);
    }),
    { seed: 84 },
  );
});

test("a mark is where its groups put it, and a page that is not there has nothing", () => {
  const moved = page([group([mark(1)], 2, 0)]);
  expect(pageDifference(page([mark(3)]), moved)).toMatchObject({ old: [], fresh: [] });
  expect(pageDifference(null, moved)).toMatchObject({ same: [], old: [], widthMm: 100 });
});

test("a print of a later revision that says the same has no difference; the overlay is in one colour", async () => {
  const first = await exampleLine("first-light");
  const made = (revision: string) => [
    ...composeHarnessSheets(first, { ...OPTIONS, revision }, { kinds: ["pinboard"] }),
  ];
  const [a, b] = [made("A"), made("B")];
  a.forEach((document, i) => {
    document.pages.forEach((one, n) => {
      const { old, fresh } = pageDifference(one, b[i]?.pages[n] ?? null);
      expect([old.length, fresh.length], `${document.id} ${n}`).toEqual([0, 0]);
    });
  });
  const [sheet] = a;
  const all = pageDifference(null, sheet?.pages[0] ?? null).fresh;
  const svg = overlaySvg(all, { colour: "#0072b2", dashMm: [1, 1], leastMm: 0.3 }, "n");
  const colours = new Set([...svg.matchAll(/ (?:fill|stroke)="(#[^"]+)"/gu)].map(([, colour]) => colour));
  expect([...colours]).toEqual(["#0072b2"]);
  const text = overlaySvg(
    pageDifference(null, page([write("J3-5 <", at(1, 9))])).fresh,
    { colour: "#d55e00", dashMm: null, leastMm: 0 },
    "o",
  );
  expect(text).toContain('fill="#d55e00"');
  expect(text).toContain("J3-5 &lt;");
});
