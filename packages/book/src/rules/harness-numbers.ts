import { rowRule } from "./rule.ts";

export const harnessNumbers = rowRule(
  { table: "harnesses", about: "Every harness has a number of its own.", reads: ["number"] },
  (tables) => {
    const first = new Map<number, string>();
    for (const { id, number } of tables.harnesses) if (!first.has(number)) first.set(number, id);
    return (row) => {
      const other = first.get(row.number);
      return other === undefined || other === row.id
        ? null
        : { column: "number", expected: `a number of its own; \`${other}\` has ${row.number}` };
    };
  },
);
