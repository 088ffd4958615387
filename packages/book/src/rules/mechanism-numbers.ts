import { rowRule } from "./rule.ts";

export const mechanismNumbersChild = rowRule(
  {
    table: "mechanism_numbers",
    about: "What gets a number there is a device of a mechanism.",
    reads: ["item"],
  },
  (tables) => {
    const own = new Set(tables.devices.map(({ id }) => id));
    const devices = new Set(tables.mechanism_devices.map((row) => `${row.mechanism_type}/${row.child}`));
    const typeOf = new Map(tables.mechanisms.map(({ id, type }) => [id, type]));
    return ({ item }) => {
      if (own.has(item))
        return {
          column: "item",
          expected: `a device of a mechanism, \`mechanism/child\`; \`${item}\` has its number in devices`,
        };
      const [mechanism = "", child = ""] = item.split("/");
      const isDevice = devices.has(`${typeOf.get(mechanism) ?? ""}/${child}`);
      return isDevice ? null : { column: "item", expected: "a device of a mechanism, `mechanism/child`" };
    };
  },
);
