import { byId, rowRule } from "./rule.ts";

export const pinsWithinWays = rowRule(
  {
    table: "pins",
    about: "A cavity's number is at most the `ways` of its connector.",
    reads: ["connector", "pin"],
  },
  (tables) => {
    const connectors = byId(tables.connectors);
    return (row) => {
      const ways = connectors.get(row.connector)?.ways;
      if (ways === undefined || row.pin <= ways) return null;
      return {
        column: "pin",
        expected: `from 1 to ${ways}, the ways of \`${row.connector}\``,
        nearest: String(ways),
      };
    };
  },
);
