import { describe, expect, it } from "vitest";
import { cutGroups, layGroups, type WireGroup, wiresOf } from "./wire-groups.ts";

const ids = (from: number, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `w${from + i}`);
const sizes = (groups: readonly WireGroup[]): readonly number[] =>
  groups.map((group) => wiresOf(group).length);

describe("wires that are ticked together", () => {
  it("are those of a reel, and of a long reel about equally many a time", () => {
    const reel = (from: number, count: number, colour: string) => ({
      wireIds: ids(from, count),
      partId: "wire.05",
      colour,
    });
    const groups = cutGroups({ cut: [reel(1, 3, "RD"), reel(4, 2, "YE"), reel(10, 17, "BK")] });
    expect(sizes(groups)).toEqual([5, 6, 6, 5]);
    expect(groups[0]?.sections.map(({ reel: own }) => own?.colour)).toEqual(["RD", "YE"]);
    expect(groups.flatMap(wiresOf)).toEqual([...ids(1, 5), ...ids(10, 17)]);
    expect(new Set(groups.map(({ key }) => key)).size).toBe(groups.length);
  });

  it("are laid in their order, with holders of few wires together", () => {
    const lay = [ids(1, 2), ids(3, 2), ids(5, 12), ids(17, 1)].map((step) =>
      step.map((wireId) => ({ wireId, from: "a", to: "b" })),
    );
    const groups = layGroups({ lay });
    expect(groups.flatMap(wiresOf)).toEqual(ids(1, 17));
    expect(sizes(groups)).toEqual([4, 6, 7]);
  });
});
