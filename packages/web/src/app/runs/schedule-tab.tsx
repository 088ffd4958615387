import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { TableScroll } from "../parts/table-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { dayOf, dayText } from "./days.ts";
import { RunDownloads } from "./run-downloads.tsx";
import type { RunTab } from "./run-tab.ts";
import { ScheduleChart } from "./schedule-chart.tsx";
import { holidayDays, spanOf, stageRows, usedShare } from "./schedule-rows.ts";

/** When each stage works on the run, within the people that it has. */
export function ScheduleTab({ run, ground, plan, day }: RunTab) {
  const words = useWords();
  const own = words.runs.schedule;
  const pick = usePick();
  const { bookId } = useDesk();
  if (plan === null) return null;
  const usedText = (share: number | null): string => (share === null ? "–" : words.runs.percent(share));
  const rows = stageRows(plan.stages, run.id);
  const [ship, today] = [dayOf(run.ship), dayOf(day)];
  const span = spanOf(plan.stages, run.id, [ship, today, plan.timing?.readyDay ?? null]);
  if (span === null)
    return (
      <p>
        {own.none} <Link href={`/b/${bookId}/tables/stages`}>{words.tableNames.tables.stages}</Link>{" "}
        <Link href={`/b/${bookId}/tables/benches`}>{words.tableNames.tables.benches}</Link>
      </p>
    );
  return (
    <>
      <p>
        {own.about} <Link href={`/b/${bookId}/tables/stages`}>{words.tableNames.tables.stages}</Link>
      </p>
      <RunDownloads run={run} day={day} kinds={["run-schedule"]} />
      <ScheduleChart
        rows={rows}
        runId={run.id}
        {...span}
        ship={ship}
        today={today}
        workDays={ground.workDays}
        holidays={holidayDays(ground.holidays)}
      />
      <TableScroll>
        <table className="plain">
          <caption className="visually-hidden">{words.runs.tabs.schedule}</caption>
          <thead>
            <tr>
              <th scope="col">{own.stage}</th>
              <th scope="col">{own.from}</th>
              <th scope="col">{own.to}</th>
              <th scope="col" className="end">
                {own.days}
              </th>
              <th scope="col" className="end">
                {own.peopleHead}
              </th>
              <th scope="col" className="end minor">
                {own.minutes}
              </th>
              <th scope="col" className="end">
                {own.used}
              </th>
              <th scope="col" className="end minor">
                {own.most}
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.stages
              .filter((block) => block.runId === run.id)
              .toSorted((a, b) => a.startDay - b.startDay)
              .map((block) => (
                <tr key={block.stageId}>
                  <th scope="row">{pick(block.labels.en, block.labels.zh) || block.stageId}</th>
                  <td>{dayText(block.startDay)}</td>
                  <td>{dayText(block.endDay)}</td>
                  <td className="end">{block.days.length}</td>
                  <td className="end">{block.people}</td>
                  <td className="end minor">{words.runs.minutes(block.minutesPerMachine)}</td>
                  <td className="end">{usedText(usedShare(block))}</td>
                  <td className="end minor">
                    {Number(Math.max(0, ...block.days.map(({ machines }) => machines)).toFixed(1))}
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </TableScroll>
    </>
  );
}
