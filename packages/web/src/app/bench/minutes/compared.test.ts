import type { StepMinutes } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { compared, isOff } from "./compared.ts";

const step = (over: Partial<StepMinutes>): StepMinutes => ({
  ...{ what: "machine", type: "heron", step: "st.a", count: 5 },
  ...{ medianMinutes: 10, leastMinutes: 8, mostMinutes: 14 },
  ...over,
});

describe("minutes measured beside those planned", () => {
  it("puts first what differs most, and tells by what share", () => {
    const planned = new Map([
      ["st.a", 10],
      ["st.b", 10],
      ["st.c", 40],
    ]);
    const steps = compared(
      [
        step({}),
        step({ step: "st.b", medianMinutes: 15 }),
        step({ step: "st.c", medianMinutes: 20 }),
        step({ step: "st.gone", medianMinutes: 7 }),
        step({ step: "st.b", what: "mechanism", medianMinutes: 5.2 }),
        step({ step: "st.a", what: "board", medianMinutes: 12 }),
      ],
      (id) => {
        const minutes = planned.get(id);
        return minutes === undefined ? null : { minutes, times: 2 };
      },
    );
    expect(
      steps.map(({ what, step: id, share }) => [what, id, share === null ? null : Number(share.toFixed(3))]),
    ).toEqual([
      ["machine", "st.c", -0.5],
      ["machine", "st.b", 0.5],
      ["mechanism", "st.b", 0.04],
      ["board", "st.a", null],
      ["machine", "st.a", 0],
      ["machine", "st.gone", null],
    ]);
    expect(steps.map(isOff)).toEqual([true, true, false, true, false, true]);
  });
});
