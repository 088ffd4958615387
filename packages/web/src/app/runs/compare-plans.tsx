import { type Decimal, decimal, timesDecimal } from "@pinwright/kernel";
import type { ReactNode } from "react";
import { moneyText } from "../parts/amounts.ts";
import { TableScroll } from "../parts/table-scroll.tsx";
import { TotalText } from "../parts/total-text.tsx";
import { useWords } from "../words.tsx";
import { dayText } from "./days.ts";
import type { Plan, Run } from "./run-tab.ts";

interface Row {
  readonly name: string;
  readonly a: ReactNode;
  readonly b: ReactNode;
  readonly difference: ReactNode;
}

const signed = (text: string, value: Decimal | number): string => (value > 0 ? `+${text}` : text);

/** Two plans of a run, or two runs, side by side with what is different. */
export function ComparePlans({
  a,
  b,
  aName,
  bName,
  aRun,
  bRun,
  isOnePlan = false,
}: {
  readonly a: Plan;
  readonly b: Plan;
  readonly aName: string;
  readonly bName: string;
  readonly aRun: Pick<Run, "machines" | "ship">;
  readonly bRun: Pick<Run, "machines" | "ship">;
  /** Both are runs of the same plan. */
  readonly isOnePlan?: boolean;
}) {
  const words = useWords().runs;
  const own = words.whatIf;
  const { currency } = a;
  const money = (name: string, x: Decimal, y: Decimal): Row => ({
    name,
    a: moneyText(x, currency),
    b: moneyText(y, currency),
    difference: x === y ? "" : signed(moneyText(y - x, currency), y - x),
  });
  const count = (name: string, x: number, y: number): Row => ({
    name,
    a: x,
    b: y,
    difference: x === y ? "" : signed(String(y - x).replace("-", "−"), y - x),
  });
  const day = (
    name: string,
    x: number | null,
    y: number | null,
    late: readonly [boolean, boolean] = [false, false],
  ): Row => ({
    name,
    a: <span className={late[0] ? "error-text" : ""}>{x === null ? "–" : dayText(x)}</span>,
    b: <span className={late[1] ? "error-text" : ""}>{y === null ? "–" : dayText(y)}</span>,
    difference: x === null || y === null || x === y ? "" : signed(words.schedule.dayCount(y - x), y - x),
  });
  const all = ({ cost }: Plan, { machines }: Pick<Run, "machines">): Decimal =>
    timesDecimal(cost?.each.value ?? 0n, decimal(machines));
  const first = ({ orders }: Plan): number | null =>
    orders.length === 0 ? null : Math.min(...orders.map(({ orderDay }) => orderDay));
  const peak = ({ cash }: Plan): Decimal => {
    let most = 0n;
    for (const { material, tooling, work } of cash) {
      const sum = material + tooling + work;
      if (sum > most) most = sum;
    }
    return most;
  };
  const tools = ({ tools: list }: Plan): Decimal => list.reduce((sum, { cost }) => sum + (cost ?? 0n), 0n);
  const each: Row = {
    name: own.rows.each,
    a: a.cost !== null && <TotalText total={a.cost.each} currency={currency} />,
    b: b.cost !== null && <TotalText total={b.cost.each} currency={currency} />,
    difference: money("", a.cost?.each.value ?? 0n, b.cost?.each.value ?? 0n).difference,
  };
  const kinds = [...new Set([...(a.cost?.kinds ?? []), ...(b.cost?.kinds ?? [])].map(({ kind }) => kind))];
  const kindOf = ({ cost }: Plan, kind: string): Decimal =>
    cost?.kinds.find((one) => one.kind === kind)?.each ?? 0n;
  const rows: readonly Row[] = [
    count(own.rows.machines, aRun.machines, bRun.machines),
    each,
    money(own.rows.all, all(a, aRun), all(b, bRun)),
    { name: own.rows.ship, a: aRun.ship, b: bRun.ship, difference: "" },
    day(own.rows.ready, a.timing?.readyDay ?? null, b.timing?.readyDay ?? null, [
      a.timing?.isLate ?? false,
      b.timing?.isLate ?? false,
    ]),
    day(own.rows.start, a.timing?.startDay ?? null, b.timing?.startDay ?? null),
    count(own.rows.orders, a.orders.length, b.orders.length),
    day(own.rows.firstOrder, first(a), first(b)),
    money(own.rows.tools, tools(a), tools(b)),
    // Two runs are paid from one purse: of one plan there is one dearest week.
    ...(isOnePlan ? [] : [money(own.rows.peak, peak(a), peak(b))]),
  ];
  const parts = kinds.map((kind) => money(words.overview.kinds[kind], kindOf(a, kind), kindOf(b, kind)));
  return (
    <TableScroll>
      <table className="plain compare">
        <caption className="visually-hidden">{words.compareTwo}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col" className="end">
              {aName}
            </th>
            <th scope="col" className="end">
              {bName}
            </th>
            <th scope="col" className="end">
              {own.difference}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <CompareRow key={row.name} row={row} />
          ))}
        </tbody>
        <tbody>
          <tr>
            <th scope="rowgroup" colSpan={4} className="compare-group">
              {words.overview.breakdown}
            </th>
          </tr>
          {parts.map((row) => (
            <CompareRow key={row.name} row={row} />
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

const CompareRow = ({ row }: { readonly row: Row }) => (
  <tr>
    <th scope="row">{row.name}</th>
    <td className="end">{row.a}</td>
    <td className="end">{row.b}</td>
    <td className="end">{row.difference}</td>
  </tr>
);
