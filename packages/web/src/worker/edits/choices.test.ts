import { applyChanges, type CellTables, RANK, rowOrder } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { choiceChanges, type WantedChoice } from "./choices.ts";

const row = { value: "1,2", held: "settled", by: "", reason: "", basis: "" } as const;
const wanted = (subject: string, more: Partial<WantedChoice["row"]> | null = {}): WantedChoice => ({
  kind: "peg",
  subject,
  row: more === null ? null : { ...row, ...more },
});
const put = (tables: CellTables, ...list: readonly WantedChoice[]): CellTables => {
  const applied = applyChanges(tables, choiceChanges(tables, list));
  expect(applied.conflicts).toEqual([]);
  return applied.tables ?? tables;
};
const read = (tables: CellTables) => {
  const rows = tables.get("choices") ?? new Map<string, ReadonlyMap<string, string>>();
  return rowOrder(rows).map((id) =>
    Object.fromEntries([...(rows.get(id) ?? [])].filter(([column]) => column !== RANK)),
  );
};

describe("choiceChanges", () => {
  it("makes rows in the order that they are wanted in, and changes those that are there", () => {
    const made = put(new Map(), wanted("h|a"), wanted("h|b"));
    expect(read(made)).toEqual([
      { kind: "peg", subject: "h|a", value: "1,2", held: "settled" },
      { kind: "peg", subject: "h|b", value: "1,2", held: "settled" },
    ]);
    const changed = put(made, wanted("h|c"), wanted("h|a", { held: "pinned", by: "Mara", value: "3,4" }));
    expect(read(changed)).toEqual([
      { kind: "peg", subject: "h|a", value: "3,4", by: "Mara" },
      { kind: "peg", subject: "h|b", value: "1,2", held: "settled" },
      { kind: "peg", subject: "h|c", value: "1,2", held: "settled" },
    ]);
  });

  it("takes rows away whole, and changes nothing that says the same already", () => {
    const made = put(new Map(), wanted("h|a"), wanted("h|b"));
    expect(choiceChanges(made, [wanted("h|a"), wanted("h|none", null)])).toEqual([]);
    expect(read(put(made, wanted("h|a", null))).map((one) => one.subject)).toEqual(["h|b"]);
  });
});
