import { Button, NativeSelect } from "@mantine/core";
import { textOfDecimal } from "@pinwright/kernel";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { moneyText, priceText, quantityText } from "../parts/amounts.ts";
import { NodeName } from "../parts/node-name.tsx";
import { TableScroll } from "../parts/table-scroll.tsx";
import { useMay, useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";

type Placed = ViewEntry<"placedOrders">;

const STATES = ["draft", "sent", "confirmed", "received", "cancelled"] as const;

/** Orders of the shop's table: how far each is, and taking in what came. */
export function PlacedOrders({ orders, day }: { readonly orders: readonly Placed[]; readonly day: string }) {
  const words = useWords();
  const { bookId } = useDesk();
  if (orders.length === 0)
    return (
      <p className="dim">
        {words.runs.orders.noPlaced}{" "}
        <Link href={`/b/${bookId}/tables/orders`}>{words.tableNames.tables.orders}</Link>
      </p>
    );
  return orders.map((order) => <OneOrder key={order.id} order={order} day={day} />);
}

function OneOrder({ order, day }: { readonly order: Placed; readonly day: string }) {
  const words = useWords();
  const own = words.runs.orders;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const { status } = useSession();
  const mayEdit = useMay("designer");
  const [failed, setFailed] = useState("");
  const edit = (note: string, rows: Parameters<typeof desk.edit>[1]): void => {
    setFailed("");
    desk.edit(note, rows).catch((error: unknown) => setFailed(trouble(error)));
  };
  const setState = (state: (typeof STATES)[number]): void =>
    edit(words.runs.notes.orderState(order.id, own.states[state]), {
      kind: "put",
      rows: [{ table: "orders", key: { id: order.id }, cells: { state } }],
    });
  const receive = (): void =>
    edit(words.runs.notes.receive(order.id), {
      kind: "put",
      rows: [
        { table: "orders", key: { id: order.id }, cells: { state: "received" } },
        ...order.lines
          .filter(({ open }) => open > 0n)
          .map((line) => ({
            table: "movements",
            key: { id: `mv.${day.replaceAll("-", "")}.${crypto.randomUUID().slice(0, 8)}` },
            cells: {
              day,
              part: line.part.id,
              revision: line.revision,
              kind: "received",
              quantity: textOfDecimal(line.open),
              order: order.id,
              by: status.person?.name ?? "local",
            },
          })),
      ],
    });
  const isOpen = order.lines.some(({ open }) => open > 0n) && order.state !== "cancelled";
  const supplier = pick(order.supplier.label, order.supplier.labelZh) || order.supplier.id;
  return (
    <details className="order">
      <summary>
        <span className="order-head">
          <b>{supplier}</b>
          <span>{order.id}</span>
          <span className="dim">
            {own.orderDay} {order.day}
          </span>
          <span className="dim">
            {own.dueDay} {order.due}
          </span>
          <span>{own.states[order.state]}</span>
          <b className="order-total">{moneyText(order.total, order.currency)}</b>
        </span>
      </summary>
      <div className="order-body">
        {order.remark !== "" && <p>{order.remark}</p>}
        <TableScroll>
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{words.runs.needs.part}</th>
                <th scope="col" className="end">
                  {own.quantity}
                </th>
                <th scope="col" className="end">
                  {own.open}
                </th>
                <th scope="col" className="end minor">
                  {own.price}
                </th>
              </tr>
            </thead>
            <tbody>
              {order.lines.map((line) => (
                <tr key={line.part.id}>
                  <th scope="row">
                    <NodeName {...line.part} />
                  </th>
                  <td className="end">{quantityText(line.quantity, line.part.unit)}</td>
                  <td className="end">{quantityText(line.open, line.part.unit)}</td>
                  <td className="end minor">
                    {line.price === null ? "–" : priceText(line.price, order.currency)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableScroll>
        {mayEdit && (
          <div className="question">
            <NativeSelect
              label={words.runs.state}
              value={order.state}
              data={STATES.map((state) => ({ value: state, label: own.states[state] }))}
              onChange={(event) => {
                const { value } = event.currentTarget;
                const state = STATES.find((one) => one === value);
                if (state !== undefined) setState(state);
              }}
            />
            {isOpen && (
              <Button variant="default" aria-label={own.receiveOne(order.id)} onClick={receive}>
                {own.receive}
              </Button>
            )}
          </div>
        )}
        {failed !== "" && <p className="error-text">{failed}</p>}
      </div>
    </details>
  );
}
