import { describe, expect, it } from "vitest";
import { dotOf, netLines } from "./net-lines.ts";

describe("netLines", () => {
  it("draws a chain straight down and a branch across", () => {
    const lines = netLines([
      { parent: null, column: 0, via: null },
      { parent: 0, column: 1, via: { kind: "wire", wireId: "w" } },
      { parent: 0, column: 0, via: { kind: "through" } },
      { parent: null, column: 0, via: null },
    ]);
    const [top, side, down] = [dotOf(0, 0), dotOf(1, 1), dotOf(0, 2)];
    expect(lines).toEqual([
      { path: `M${top.x} ${top.y}V${down.y}`, kind: "through", wireId: null },
      { path: `M${top.x} ${top.y}V${side.y}H${side.x}`, kind: "wire", wireId: "w" },
    ]);
  });
});
