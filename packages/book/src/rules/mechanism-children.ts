import { rowRule } from "./rule.ts";

export const mechanismChildren = rowRule(
  {
    table: "mechanism_fasteners",
    about: "Devices and fasteners of one mechanism type have different names.",
    reads: ["mechanism_type", "child"],
  },
  (tables) => {
    const devices = new Set(tables.mechanism_devices.map((row) => `${row.mechanism_type}/${row.child}`));
    return (row) =>
      devices.has(`${row.mechanism_type}/${row.child}`)
        ? {
            column: "child",
            expected: `another name; a device of \`${row.mechanism_type}\` has it in mechanism_devices`,
          }
        : null;
  },
);
