import { describe, expect, it } from "vitest";
import type { ViewEntry } from "../../worker/protocol.ts";
import { mountedAt, shownItems, shownMarks } from "./shown.ts";

type Step = ViewEntry<"stepLines">;

const step = (id: string, number: number, more: Partial<Step> = {}): Step => ({
  id,
  number,
  kind: "mount",
  label: id,
  labelZh: "",
  panelId: "pf",
  side: "under",
  times: 1,
  seconds: 60,
  secondsFrom: "motions",
  motions: [],
  skill: "",
  tools: [],
  stationId: null,
  chosen: { station: false, time: false },
  itemIds: [],
  fastenerIds: [],
  recheckIds: [],
  types: [],
  harnessId: null,
  mechanismTypeId: null,
  after: [],
  ...more,
});

const mark = (id: string, stepId: string | null, stepNumber: number, turn: number, typeId = "t") => ({
  id,
  typeId,
  side: "under" as const,
  xMm: 0,
  yMm: 0,
  stepId,
  stepNumber,
  turn,
});

const MARKS = new Map(
  [mark("a", "s1", 1, 1), mark("b", "s2", 2, 2, "u"), mark("c", "s2", 2, 1), mark("d", "s3", 3, 1, "u")].map(
    (one) => [one.id, one],
  ),
);
const ids = (marks: readonly { readonly id: string }[]) => marks.map(({ id }) => id).join("");

describe("shownMarks", () => {
  it("draws this step's screws in the order of the hand, earlier ones apart, later ones not", () => {
    const { before, now, sought } = shownMarks(MARKS, "under", step("s2", 2), Number.POSITIVE_INFINITY, null);
    expect([ids(before), ids(now), ids(sought)]).toEqual(["a", "cb", ""]);
  });

  it("draws as many as are driven, and nothing of the other side", () => {
    expect(ids(shownMarks(MARKS, "under", step("s2", 2), 1, null).now)).toBe("c");
    expect(ids(shownMarks(MARKS, "top", step("s2", 2), 9, null).now)).toBe("");
  });

  it("finds a type wherever it comes, and draws screws that are checked again as those of the step", () => {
    const again = step("s4", 4, { recheckIds: ["d", "a"] });
    const { before, now, sought } = shownMarks(MARKS, "under", again, 9, "u");
    expect([ids(before), ids(now), ids(sought)]).toEqual(["bc", "da", "bd"]);
  });

  it("draws all of them where there are no steps", () => {
    expect(ids(shownMarks(MARKS, "under", null, 0, null).now)).toBe("abcd");
  });
});

describe("shownItems", () => {
  const item = (id: string, parentId: string | null = null, kind: "device" | "fastener" = "device") =>
    [
      id,
      {
        id,
        kind,
        sort: "",
        label: "",
        labelZh: "",
        number: null,
        side: "under" as const,
        xMm: 0,
        yMm: 0,
        rotationDeg: 0,
        parentId,
        typeId: "t",
        ring: [],
      },
    ] as const;
  const items = new Map([
    item("m1"),
    item("m1/eos", "m1"),
    item("m2"),
    item("old"),
    item("f", null, "fastener"),
  ]);
  const first = step("s1", 1, { itemIds: ["m1"] });
  const second = step("s2", 2, { itemIds: ["m2", "m1"] });
  const mounted = mountedAt(new Map([first, second].map((one) => [one.id, one])));

  it("brings a mechanism with all that is in it, leaves out what comes later, and keeps what no step brings", () => {
    const { before, now } = shownItems(items, mounted, first);
    expect([[...before.keys()], [...now.keys()]]).toEqual([["old"], ["m1", "m1/eos"]]);
  });

  it("shows what an earlier step brought", () => {
    const third = step("s3", 3);
    expect([...shownItems(items, mounted, third).before.keys()]).toEqual(["m1", "m1/eos", "m2", "old"]);
  });
});
