import { expect, it } from "vitest";
import { axisStep } from "./learning-chart.tsx";

it.each([
  [10, 5, 2],
  [48, 5, 10],
  [100, 8, 20],
  [0.9, 5, 0.2],
  [7, 8, 1],
])("an axis up to %d with at most %d parts goes by %d", (top, most, step) => {
  expect(axisStep(top, most)).toBeCloseTo(step);
});
