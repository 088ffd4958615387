import { decimal, numberOfDecimal, timesDecimal } from "@pinwright/kernel";
import type { AskAnswer } from "../../worker/protocol.ts";
import { amountText, grouped } from "../parts/amounts.ts";
import { LineChart } from "../parts/chart/line-chart.tsx";
import { TableScroll } from "../parts/table-scroll.tsx";
import { TotalText } from "../parts/total-text.tsx";
import { useWords } from "../words.tsx";
import { PlanProgress } from "./plan-progress.tsx";
import type { RunTab } from "./run-tab.ts";
import { usePlanAnswer } from "./use-prepared.ts";

/** Numbers of machines that are reckoned. */
const QUANTITIES = [10, 15, 25, 40, 60, 100, 160, 250, 400, 630, 1000];
/** Kinds that are no material. */
const WORK: ReadonlySet<string> = new Set(["work", "overhead"]);

type Cost = AskAnswer<"runQuantities">["costs"][number];

/** What one machine costs in smaller and larger runs. */
export function QuantityTab({ run, day, preparing }: RunTab) {
  const words = useWords().runs;
  const own = words.quantity;
  const quantities = [...new Set([...QUANTITIES, run.machines])].sort((a, b) => a - b);
  const answering = usePlanAnswer(
    "runQuantities",
    { runId: run.id, today: day, change: null, quantities },
    preparing,
  );
  const { answer } = answering;
  const costs = answer?.costs ?? [];
  const currency = answer?.currency ?? "";
  // In a small run some kind may cost nothing: whatever any of them has is a column.
  const kinds = [...new Set(costs.flatMap((cost) => cost.kinds.map(({ kind }) => kind)))];
  const material = ({ kinds }: Cost): number =>
    kinds.reduce((sum, { kind, each }) => (WORK.has(kind) ? sum : sum + numberOfDecimal(each)), 0);
  return (
    <>
      <p>{own.about}</p>
      <PlanProgress preparing={preparing} answering={answering} />
      {costs.length > 0 && (
        <>
          <LineChart
            label={own.chart(String(costs[0]?.machines ?? 0), String(costs.at(-1)?.machines ?? 0))}
            xAxis="log"
            yAxis="linear"
            xName={own.machines}
            yName={`${own.axis}, ${currency}`}
            xText={(value) => grouped(String(value))}
            yText={(value) => grouped(String(value))}
            curves={[
              {
                id: "all",
                name: own.total,
                points: costs.map((cost) => ({ x: cost.machines, y: numberOfDecimal(cost.each.value) })),
              },
              {
                id: "material",
                name: own.material,
                points: costs.map((cost) => ({ x: cost.machines, y: material(cost) })),
              },
            ]}
            marks={[{ x: run.machines, text: own.here(grouped(String(run.machines))) }]}
          />
          <TableScroll>
            <table className="plain">
              <caption>{own.amounts(currency)}</caption>
              <thead>
                <tr>
                  <th scope="col" className="end">
                    {own.machines}
                  </th>
                  <th scope="col" className="end">
                    {words.costEach}
                  </th>
                  <th scope="col" className="end">
                    {own.all}
                  </th>
                  {kinds.map((kind) => (
                    <th key={kind} scope="col" className="end minor">
                      {words.overview.kinds[kind]}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {costs.map((cost) => (
                  <tr key={cost.machines} aria-current={cost.machines === run.machines ? "true" : undefined}>
                    <th scope="row" className="end">
                      {grouped(String(cost.machines))}
                    </th>
                    <td className="end">
                      <TotalText total={cost.each} currency={currency} isBare />
                    </td>
                    <td className="end">
                      {amountText(timesDecimal(cost.each.value, decimal(cost.machines)), currency)}
                    </td>
                    {kinds.map((kind) => (
                      <td key={kind} className="end minor">
                        {amountText(cost.kinds.find((one) => one.kind === kind)?.each ?? 0n, currency)}
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </TableScroll>
        </>
      )}
    </>
  );
}
