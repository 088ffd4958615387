import { rowRule } from "./rule.ts";

export const fusesTwoPoints = rowRule(
  { table: "fuses", about: "A fuse lies between two different points.", reads: ["from", "to"] },
  () => (row) => (row.from === row.to ? { column: "to", expected: "another point than `from`" } : null),
);
