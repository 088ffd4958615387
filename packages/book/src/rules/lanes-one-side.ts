import { byId, rowRule } from "./rule.ts";

export const lanesOneSide = rowRule(
  {
    table: "lanes",
    about: "A lane joins two different waypoints of one panel and one side.",
    reads: ["from", "to"],
  },
  (tables) => {
    const waypoints = byId(tables.waypoints);
    return (row) => {
      if (row.from === row.to) return { column: "to", expected: "another waypoint than `from`" };
      const [a, b] = [waypoints.get(row.from), waypoints.get(row.to)];
      if (a === undefined || b === undefined || (a.panel === b.panel && a.side === b.side)) return null;
      return {
        column: "to",
        expected: `a waypoint on ${a.side} of \`${a.panel}\` like \`${row.from}\`; this one is on ${b.side} of \`${b.panel}\`. Another side or panel is reached by a crossing`,
      };
    };
  },
);
