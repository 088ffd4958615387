import { distance } from "@pinwright/kernel";
import fc from "fast-check";
import { expect, test } from "vitest";
import { woodenLine } from "../testing/first-light.ts";
import { numbersText } from "./legend.ts";
import { fittingScale, lowerEdge, panelView, scaleText } from "./panel-view.ts";

const line = await woodenLine();

const place = fc.record({
  xMm: fc.double({ min: 0, max: 400, noNaN: true }),
  yMm: fc.double({ min: 0, max: 300, noNaN: true }),
});

test("the top is seen as its frame is, the underside mirrored in x", () => {
  const top = panelView(line, "pf", "top", 1);
  const under = panelView(line, "pf", "under", 1);
  expect(top?.lying({ xMm: 24, yMm: 40 })).toEqual({ xMm: 24, yMm: 40 });
  expect(under?.lying({ xMm: 24, yMm: 40 })).toEqual({ xMm: 376, yMm: 40 });
  expect(under?.toPage({ xMm: 24, yMm: 40 })).toEqual({ xMm: 376, yMm: 260 });
  expect(panelView(line, "none", "top", 1)).toBeNull();
});

test("a view keeps distances, times its scale, and a part of it lies within the part's edges", () => {
  fc.assert(
    fc.property(
      place,
      place,
      fc.constantFrom("top" as const, "under" as const),
      fc.double({ min: 0.1, max: 1, noNaN: true }),
      (a, b, side, scale) => {
        const view = panelView(line, "pf", side, scale, { minXMm: 50, minYMm: 40, maxXMm: 250, maxYMm: 140 });
        if (view === null) throw new Error("first-light has a deck");
        expect(distance(view.toPage(a), view.toPage(b))).toBeCloseTo(distance(a, b) * scale, 6);
        const lies = view.lying(a);
        const seen = view.toPage(a);
        const isIn = lies.xMm >= 50 && lies.xMm <= 250 && lies.yMm >= 40 && lies.yMm <= 140;
        const isShown =
          seen.xMm >= 0 && seen.xMm <= view.widthMm && seen.yMm >= 0 && seen.yMm <= view.heightMm;
        expect(isShown).toBe(isIn);
      },
    ),
  );
});

test("a fitting scale fits, and the next larger one does not", () => {
  const extent = fc.record({
    widthMm: fc.double({ min: 10, max: 3000, noNaN: true }),
    heightMm: fc.double({ min: 10, max: 3000, noNaN: true }),
  });
  fc.assert(
    fc.property(extent, extent, (panel, room) => {
      const scale = fittingScale(panel, room);
      const fits = (s: number): boolean =>
        panel.widthMm * s <= room.widthMm + 1e-6 && panel.heightMm * s <= room.heightMm + 1e-6;
      expect(fits(scale)).toBe(true);
      if (scale < 1) expect(fits(10 / (10 / scale - 1.001))).toBe(false);
    }),
  );
  expect(scaleText(10 / 35)).toBe("1:3.5");
});

test("the lower edge of a deck is the player's, that of an upright side the bottom", () => {
  expect(lowerEdge(line, "pf")).toBe("player");
  const { book } = line.machine;
  const upright = {
    ...line,
    machine: {
      ...line.machine,
      book: {
        ...book,
        tables: { ...book.tables, pose_places: book.tables.pose_places.map((p) => ({ ...p, rx_deg: 90 })) },
      },
    },
  };
  expect(lowerEdge(upright, "pf")).toBe("bottom");
});

test("numbers that follow each other are drawn together", () => {
  expect(numbersText([7, 1, 3, 2, 9, 10])).toBe("1–3, 7, 9–10");
  expect(numbersText([])).toBe("");
});
