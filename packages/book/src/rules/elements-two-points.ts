import { rowRule } from "./rule.ts";

export const elementsTwoPoints = rowRule(
  { table: "elements", about: "An element joins two different points.", reads: ["from", "to"] },
  () => (row) =>
    row.from === row.to
      ? { column: "to", expected: `another point than \`from\`, which is ${row.from} too` }
      : null,
);
