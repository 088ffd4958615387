import { rowRule } from "./rule.ts";

export const elementsOneType = rowRule(
  {
    table: "elements",
    about: "An element belongs to exactly one of `device_type`, `board_type` and `mechanism_type`.",
    reads: ["device_type", "board_type", "mechanism_type"],
  },
  () => (row) => {
    const given = [row.device_type, row.board_type, row.mechanism_type].filter(
      (type) => type !== null,
    ).length;
    if (given === 1) return null;
    return {
      column: "device_type",
      expected: `exactly one of device_type, board_type and mechanism_type; found ${given === 0 ? "none" : given}`,
    };
  },
);
