import { type Decimal, numberOfDecimal } from "@pinwright/kernel";
import { DataTable } from "../harnesses/data-table.tsx";
import { moneyText, roundMoney } from "../parts/amounts.ts";
import { Money } from "../parts/total-text.tsx";
import { useWords } from "../words.tsx";
import { CashChart } from "./cash-chart.tsx";
import { DayText } from "./day.tsx";
import { dayText } from "./days.ts";
import { RunDownloads } from "./run-downloads.tsx";
import type { Plan, RunTab } from "./run-tab.ts";

type Week = Plan["cash"][number];

/** When money goes out, week by week. */
export function CashTab({ run, plan, day }: RunTab) {
  const own = useWords().runs.cash;
  if (plan === null) return null;
  return (
    <>
      <p>{own.about}</p>
      <RunDownloads run={run} day={day} kinds={["run-cash"]} />
      <CashPart cash={plan.cash} currency={plan.currency} runId={run.id} />
    </>
  );
}

const sumOf = ({ material, tooling, work }: Week): Decimal => material + tooling + work;

const shareOf = ({ runs }: Week, runId: string): Decimal =>
  runs.find((share) => share.runId === runId)?.amount ?? 0n;

/** Money by week as a chart and as a table. */
export function CashPart({
  cash,
  currency,
  runId = null,
}: {
  readonly cash: readonly Week[];
  readonly currency: string;
  /** Run whose share of each week is told; null: none. */
  readonly runId?: string | null;
}) {
  const words = useWords().runs;
  const own = words.cash;
  if (cash.length === 0) return <p className="dim">{own.none}</p>;
  const column = (key: string, header: string, of: (week: Week) => Decimal, minor = false) => ({
    key,
    header,
    value: (week: Week) => numberOfDecimal(of(week)),
    text: (week: Week) => moneyText(of(week), currency),
    cell: (week: Week) => (of(week) === 0n ? "" : <Money value={of(week)} currency={currency} />),
    align: "end" as const,
    minor,
  });
  return (
    <>
      <CashChart cash={cash} currency={currency} />
      <p className="bill-cost">
        {own.total}: <b>{roundMoney(cash.at(-1)?.total ?? 0n, currency)}</b>
      </p>
      <DataTable
        caption={words.tabs.cash}
        rows={cash.filter((week) => sumOf(week) !== 0n)}
        rowKey={({ week }) => String(week)}
        columns={[
          {
            key: "week",
            header: own.week,
            value: ({ week }) => dayText(week),
            cell: ({ week }) => <DayText day={week} />,
          },
          column("material", own.material, ({ material }) => material, true),
          column("tooling", own.tooling, ({ tooling }) => tooling, true),
          column("work", own.work, ({ work }) => work, true),
          column("sum", own.sum, sumOf),
          ...(runId === null ? [] : [column("run", own.ofRun, (week) => shareOf(week, runId))]),
          column("total", own.total, ({ total }) => total),
        ]}
      />
    </>
  );
}
