import { byId, rowRule } from "./rule.ts";

export const inlinesConnector = rowRule(
  {
    table: "inlines",
    about: "An in-line connector is of an in-line type: a connector without board type and device type.",
    reads: ["connector"],
  },
  (tables) => {
    const connectors = byId(tables.connectors);
    return (row) => {
      const type = connectors.get(row.connector);
      if (type === undefined || (type.board_type === null && type.device_type === null)) return null;
      return {
        column: "connector",
        expected: `a connector with blank board_type and device_type; this one is on \`${type.board_type ?? type.device_type}\``,
      };
    };
  },
);
