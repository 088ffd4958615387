import { applyChanges, type CellTables, RANK } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { putOutline } from "./put-outline.ts";

const tables: CellTables = new Map([
  [
    "outlines",
    new Map([
      [
        "old.svg",
        new Map([
          [RANK, "a0"],
          ["text", "<svg/>"],
        ]),
      ],
    ]),
  ],
  [
    "cutouts",
    new Map([
      [
        "1",
        new Map([
          [RANK, "a0"],
          ["id", "cut.a"],
          ["shape", "circle"],
        ]),
      ],
    ]),
  ],
]);

describe("putOutline", () => {
  it("adds a drawing and makes a cutout follow it", () => {
    const edit = { kind: "outline", name: "new.dxf", text: "0\nEOF", table: "cutouts", id: "cut.a" } as const;
    const after = applyChanges(tables, putOutline(tables, edit)).tables;
    expect(after?.get("outlines")?.get("new.dxf")?.get("text")).toBe("0\nEOF");
    expect((after?.get("outlines")?.get("new.dxf")?.get(RANK) ?? "") > "a0").toBe(true);
    expect(after?.get("cutouts")?.get("1")?.get("shape")).toBe("outline");
    expect(after?.get("cutouts")?.get("1")?.get("outline")).toBe("new.dxf");
  });
  it("replaces a drawing of the same name", () => {
    const edit = {
      kind: "outline",
      name: "old.svg",
      text: "<svg></svg>",
      table: "cutouts",
      id: "cut.a",
    } as const;
    const after = applyChanges(tables, putOutline(tables, edit)).tables;
    expect(after?.get("outlines")?.size).toBe(1);
    expect(after?.get("outlines")?.get("old.svg")?.get("text")).toBe("<svg></svg>");
  });
});
