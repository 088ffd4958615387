import { byId, rowRule } from "./rule.ts";

export const crossingsSides = rowRule(
  {
    table: "crossings",
    about: "A hole joins the two sides of one panel; a hinge or gap joins two panels.",
    reads: ["from", "to", "kind"],
  },
  (tables) => {
    const waypoints = byId(tables.waypoints);
    return (row) => {
      const [a, b] = [waypoints.get(row.from), waypoints.get(row.to)];
      if (a === undefined || b === undefined) return null;
      const samePanel = a.panel === b.panel;
      if (row.kind === "hole" && !(samePanel && a.side !== b.side)) {
        return {
          column: "to",
          expected: `a waypoint on the other side of \`${a.panel}\`, because the kind is \`hole\`; this one is on ${b.side} of \`${b.panel}\``,
        };
      }
      if (row.kind !== "hole" && samePanel) {
        return {
          column: "to",
          expected: `a waypoint of another panel than \`${a.panel}\`, because the kind is \`${row.kind}\``,
        };
      }
      return null;
    };
  },
);
