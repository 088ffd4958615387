import { byId, rowRule } from "./rule.ts";

export const endsNotInKey = rowRule(
  { table: "ends", about: "No wire ends in a cavity that is a key.", reads: ["point"] },
  (tables) => {
    const keys = new Set<string>();
    const connectors = byId(tables.connectors);
    const inlineTypes = new Map<string, string[]>();
    for (const pin of tables.pins) {
      if (pin.use !== "key") continue;
      const connector = connectors.get(pin.connector);
      if (connector === undefined) continue;
      const { board_type, device_type, name } = connector;
      if (board_type !== null || device_type !== null) {
        keys.add(
          `${board_type === null ? `device ${device_type}` : `board ${board_type}`}:${name}.${pin.pin}`,
        );
      } else inlineTypes.set(pin.connector, [...(inlineTypes.get(pin.connector) ?? []), String(pin.pin)]);
    }
    const carrier = new Map<string, string>();
    for (const { id, type } of tables.boards) carrier.set(id, `board ${type}`);
    for (const { id, type } of tables.devices) carrier.set(id, `device ${type}`);
    for (const { id, connector } of tables.inlines) {
      carrier.set(id, `inline ${connector}`);
      for (const pin of inlineTypes.get(connector) ?? []) {
        keys.add(`inline ${connector}:a.${pin}`).add(`inline ${connector}:b.${pin}`);
      }
    }
    return (row) => {
      const colon = row.point.indexOf(":");
      const type = carrier.get(row.point.slice(0, colon));
      if (type === undefined || !keys.has(type + row.point.slice(colon))) return null;
      return {
        column: "point",
        expected: "a cavity that is not blocked; `pins` says that this one is a key",
      };
    };
  },
);
