import { decimal } from "@pinwright/kernel";
import { expect, it } from "vitest";
import { dayOf } from "./days.ts";
import { placedOrder } from "./place-order.ts";

const line = (partId: string, colour: string, quantity: number) => ({
  partId,
  colour,
  revision: "",
  quantity: decimal(quantity),
  pack: decimal(100),
  packs: quantity / 100,
  price: decimal("0.138"),
  amount: 0n,
  dueDay: 0,
  runIds: ["spring"],
  shares: [],
});
const ORDER = {
  id: "wire 1",
  supplierId: "wire",
  currency: "EUR",
  orderDay: dayOf("2026-12-01") ?? 0,
  dueDay: dayOf("2026-12-11") ?? 0,
  lines: [line("wire.hu-24", "RD", 300), line("wire.hu-24", "BU", 100), line("tie", "", 500)],
  shipping: 0n,
  total: { value: 0n, missing: [] },
  ownTotal: { value: 0n, missing: [] },
};

it("writes an order with a line for each part, and the colours of wires in words", () => {
  const rows = placedOrder(ORDER, "2026-11-30", "spring", (colours) => `Colours: ${colours}`, "po.1");
  expect(rows).toEqual([
    {
      table: "orders",
      key: { id: "po.1" },
      cells: {
        supplier: "wire",
        day: "2026-11-30",
        due: "2026-12-11",
        run: "spring",
        state: "sent",
        remark: "Colours: wire.hu-24 RD 300, BU 100",
      },
    },
    {
      table: "order_lines",
      key: { order: "po.1", part: "wire.hu-24" },
      cells: { revision: "", quantity: "400", price: "0.138" },
    },
    {
      table: "order_lines",
      key: { order: "po.1", part: "tie" },
      cells: { revision: "", quantity: "500", price: "0.138" },
    },
  ]);
});

it("is for no run in particular when several share it", () => {
  const shared = { ...ORDER, lines: [{ ...line("tie", "", 100), runIds: ["spring", "autumn"] }] };
  expect(placedOrder(shared, "2026-11-30", "spring", String, "po.2")[0]?.cells.run).toBe("");
});
