import { rowRule } from "./rule.ts";

export const connectorsOneCarrier = rowRule(
  {
    table: "connectors",
    about: "A connector belongs to a board type or a device type, not to both.",
    reads: ["board_type", "device_type"],
  },
  () => (row) =>
    row.board_type !== null && row.device_type !== null
      ? { column: "device_type", expected: "blank, because board_type is given; a connector has one carrier" }
      : null,
);
