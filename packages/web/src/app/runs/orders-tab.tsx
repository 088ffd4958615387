import { Button } from "@mantine/core";
import { useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { moneyText, priceText, quantityText } from "../parts/amounts.ts";
import { NodeName } from "../parts/node-name.tsx";
import { TableScroll } from "../parts/table-scroll.tsx";
import { TotalText } from "../parts/total-text.tsx";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useWords } from "../words.tsx";
import { dayOf, dayText } from "./days.ts";
import { FirstArticles, ToolOrders } from "./orders-beside.tsx";
import { placedOrder } from "./place-order.ts";
import { PlacedOrders } from "./placed-orders.tsx";
import { RunDownloads } from "./run-downloads.tsx";
import type { Plan, Run, RunTab } from "./run-tab.ts";

type Order = Plan["orders"][number];

/** What has to be ordered, from whom and when; and what was ordered already. */
export function OrdersTab({ run, runs, plan, day }: RunTab) {
  const own = useWords().runs.orders;
  const placed = useView("placedOrders", { runId: run.id });
  if (plan === null) return null;
  return (
    <>
      <h3>{own.proposed}</h3>
      <p>{own.about}</p>
      <RunDownloads run={run} day={day} kinds={["purchase-order"]} />
      {plan.orders.length === 0 && <p className="dim">{own.none}</p>}
      {plan.orders.map((order) => (
        <Proposed key={order.id} order={order} run={run} plan={plan} day={day} runs={runs} />
      ))}
      <ToolOrders plan={plan} />
      <FirstArticles plan={plan} />
      <h3>{own.placed}</h3>
      <PlacedOrders orders={placed === null ? [] : [...placed.values()]} day={day} />
    </>
  );
}

function Proposed({
  order,
  run,
  runs,
  plan,
  day,
}: {
  readonly order: Order;
  readonly run: Run;
  readonly runs: RunTab["runs"];
  readonly plan: Plan;
  readonly day: string;
}) {
  const words = useWords();
  const own = words.runs.orders;
  const pick = usePick();
  const supplier = plan.suppliers.get(order.supplierId);
  const name = pick(supplier?.label ?? "", supplier?.labelZh ?? "") || order.supplierId;
  const mayEdit = useMay("designer");
  const desk = useDesk();
  const trouble = useTrouble();
  const [failed, setFailed] = useState("");
  const isLate = order.orderDay < (dayOf(day) ?? 0);
  const others = [...new Set(order.lines.flatMap(({ runIds }) => runIds))].filter((id) => id !== run.id);
  const place = (): void => {
    setFailed("");
    const remark = (colours: string): string => own.colours(colours);
    desk
      .edit(words.runs.notes.place(name, day), { kind: "put", rows: placedOrder(order, day, run.id, remark) })
      .catch((error: unknown) => setFailed(trouble(error)));
  };
  return (
    <details className="order">
      <summary>
        <span className="order-head">
          <b>{name}</b>
          <span>
            {own.orderDay} {dayText(order.orderDay)}
            {isLate && <em className="amber-text"> {own.late}</em>}
          </span>
          <span className="dim">
            {own.dueDay} {dayText(order.dueDay)}
          </span>
          <span className="dim">{own.lines(order.lines.length)}</span>
          <b className="order-total">{moneyText(order.total.value, order.currency)}</b>
        </span>
      </summary>
      <div className="order-body">
        <p>
          {own.total}: <TotalText total={order.total} currency={order.currency} />
          {order.currency !== plan.currency && (
            <>
              {" = "}
              <TotalText total={order.ownTotal} currency={plan.currency} />
            </>
          )}
          {order.shipping > 0n && ` · ${own.shipping} ${moneyText(order.shipping, order.currency)}`}
          {others.length > 0 &&
            ` · ${own.also} ${others.map((id) => pick(runs.get(id)?.label ?? "", runs.get(id)?.labelZh ?? "") || id).join(", ")}`}
        </p>
        <OrderLines order={order} plan={plan} />
        {mayEdit && (
          <Button size="sm" aria-label={own.placeOne(name, dayText(order.orderDay))} onClick={place}>
            {own.place}
          </Button>
        )}
        {failed !== "" && <p className="error-text">{failed}</p>}
      </div>
    </details>
  );
}

function OrderLines({ order, plan }: { readonly order: Order; readonly plan: Plan }) {
  const own = useWords().runs.orders;
  const words = useWords().runs.needs;
  return (
    <TableScroll>
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">{words.part}</th>
            <th scope="col" className="end">
              {own.quantity}
            </th>
            <th scope="col" className="end minor">
              {own.price}
            </th>
            <th scope="col" className="end">
              {own.amount}
            </th>
            <th scope="col" className="minor">
              {own.dueDay}
            </th>
          </tr>
        </thead>
        <tbody>
          {order.lines.map((line) => {
            const part = plan.parts.get(line.partId);
            const unit = part?.unit ?? "each";
            return (
              <tr key={`${line.partId} ${line.colour} ${line.dueDay}`}>
                <th scope="row">
                  <NodeName id={line.partId} label={part?.label ?? ""} labelZh={part?.labelZh ?? ""} />
                  {line.colour !== "" && <WireColour code={line.colour} />}
                </th>
                <td className="end">
                  {quantityText(line.quantity, unit)}
                  {line.packs > 0 && line.pack !== line.quantity && (
                    <small>{own.packs(line.packs, quantityText(line.pack, unit))}</small>
                  )}
                </td>
                <td className="end minor">
                  {line.price === null ? "–" : priceText(line.price, order.currency)}
                </td>
                <td className="end">{line.price === null ? "–" : moneyText(line.amount, order.currency)}</td>
                <td className="minor">{dayText(line.dueDay)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}
