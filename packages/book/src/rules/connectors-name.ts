import { isId } from "../read/words.ts";
import { rowRule } from "./rule.ts";

export const connectorsName = rowRule(
  {
    table: "connectors",
    about:
      "A connector's name has no dot, is lower case, and is used once on its carrier, where no terminal has it either.",
    reads: ["name", "board_type", "device_type"],
  },
  (tables) => {
    const used = new Map<string, string>();
    for (const { device_type, terminal } of tables.terminals) {
      used.set(`device ${device_type} ${terminal}`, "a terminal of the same device type has it");
    }
    return (row) => {
      if (!isId(row.name) || row.name.includes(".")) {
        const nearest = row.name.toLowerCase().replace(/[^a-z0-9_-]+/g, "");
        return {
          column: "name",
          expected:
            "lower-case letters, digits, `-` and `_`, no dot: it stands before the pin in `item:name.pin`",
          nearest: isId(nearest) ? nearest : null,
        };
      }
      const isInline = row.board_type === null && row.device_type === null;
      if (isInline) return null;
      const key = `${row.board_type === null ? `device ${row.device_type}` : `board ${row.board_type}`} ${row.name}`;
      const before = used.get(key);
      used.set(key, `\`${row.id}\` has it`);
      return before === undefined
        ? null
        : { column: "name", expected: `a name that is free on its carrier; ${before}` };
    };
  },
);
