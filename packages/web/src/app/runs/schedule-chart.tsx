import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { type Day, dayText, shortDay, weekday } from "./days.ts";
import { type Block, isOff, type StageRow, stretches } from "./schedule-rows.ts";

const LEFT = 190;
const RIGHT = 60;
const ROW = 40;
const TOP = 44;
const BOTTOM = 12;
/** Width of a day, px: wide enough to read for short runs, and never too fine to tell days apart. */
const [WIDEST, NARROWEST, ROOM] = [24, 4, 860];
/** Room between two dates on the axis. */
const DATE_PX = 46;

/** Stages over the calendar: a bar for each, what is done on each day in it, days off shaded. */
export function ScheduleChart({
  rows,
  runId,
  from,
  to,
  ship,
  today,
  workDays,
  holidays,
}: {
  readonly rows: readonly StageRow[];
  readonly runId: string;
  readonly from: Day;
  readonly to: Day;
  readonly ship: Day | null;
  readonly today: Day | null;
  readonly workDays: number;
  readonly holidays: ReadonlySet<Day>;
}) {
  const own = useWords().runs.schedule;
  const pick = usePick();
  const count = to - from + 1;
  const dayPx = Math.max(NARROWEST, Math.min(WIDEST, ROOM / count));
  const width = LEFT + count * dayPx + RIGHT;
  const height = TOP + rows.length * ROW + BOTTOM;
  const x = (day: Day): number => LEFT + (day - from) * dayPx;
  const days = Array.from({ length: count }, (_, i) => from + i);
  const off = stretches(days.filter((day) => isOff(day, workDays, holidays)));
  const weeks = Math.max(1, Math.ceil(DATE_PX / (7 * dayPx)));
  const mondays = days.filter((day) => weekday(day) === 0).filter((_, i) => i % weeks === 0);
  const line = (day: Day | null, name: string, kind: string) =>
    day !== null &&
    day >= from &&
    day <= to && (
      <g className={`day-line ${kind}`}>
        <path d={`M${x(day) + dayPx / 2} ${TOP - 6}V${height - BOTTOM}`} />
        <text x={x(day) + dayPx / 2} y={14} textAnchor="middle">
          {name}
        </text>
      </g>
    );
  return (
    <figure className="chart schedule">
      <DrawingScroll>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          width={width}
          height={height}
          role="img"
          aria-label={own.chart(dayText(from), dayText(to))}
        >
          {off.map(([first, last]) => (
            <rect
              key={first}
              className="day-off"
              x={x(first)}
              y={TOP - 6}
              width={(last - first + 1) * dayPx}
              height={height - TOP - BOTTOM + 6}
            >
              <title>{`${dayText(first)}${first === last ? "" : ` – ${dayText(last)}`}: ${own.off}`}</title>
            </rect>
          ))}
          {mondays.map((day) => (
            <g key={day}>
              <path className="grid" d={`M${x(day)} ${TOP - 6}V${height - BOTTOM}`} />
              <text x={x(day) + 2} y={TOP - 12}>
                {shortDay(day)}
              </text>
            </g>
          ))}
          {rows.map((row, i) => {
            const y = TOP + i * ROW;
            return (
              <g key={row.stageId}>
                <path className="grid" d={`M0 ${y + ROW - 2}H${width - RIGHT}`} />
                <text className="axis-name" x={0} y={y + 16}>
                  {pick(row.label, row.labelZh) || row.stageId}
                </text>
                <text x={0} y={y + 31}>
                  {row.people > 0 && own.people(row.people)}
                </text>
                {row.blocks
                  .filter(({ startDay, endDay }) => endDay >= from && startDay <= to)
                  .map((block) => (
                    <StageBar
                      key={block.runId}
                      block={block}
                      isOwn={block.runId === runId}
                      x={x}
                      y={y}
                      dayPx={dayPx}
                    />
                  ))}
              </g>
            );
          })}
          {line(ship, own.shipLine, "ship")}
          {line(today, own.todayLine, "today")}
        </svg>
      </DrawingScroll>
      <figcaption>
        <ul className="chart-names">
          <li>
            <i className="key-own" aria-hidden /> {own.ofThis}
          </li>
          {rows.some(({ blocks }) =>
            blocks.some((block) => block.runId !== runId && block.endDay >= from && block.startDay <= to),
          ) && (
            <li>
              <i className="key-other" aria-hidden /> {own.ofOthers}
            </li>
          )}
          <li>
            <i className="key-off" aria-hidden /> {own.off}
          </li>
        </ul>
      </figcaption>
    </figure>
  );
}

function StageBar({
  block,
  isOwn,
  x,
  y,
  dayPx,
}: {
  readonly block: Block;
  readonly isOwn: boolean;
  readonly x: (day: Day) => number;
  readonly y: number;
  readonly dayPx: number;
}) {
  const words = useWords().runs;
  const height = isOwn ? ROW - 16 : 6;
  const top = isOwn ? y + 4 : y + ROW - 11;
  return (
    <g className={isOwn ? "stage-bar own" : "stage-bar"}>
      <rect
        x={x(block.startDay)}
        y={top}
        width={(block.endDay - block.startDay + 1) * dayPx}
        height={height}
      />
      {block.days.map(({ day, machines, minutes }) => (
        <g key={day}>
          <rect className="work-day" x={x(day) + 0.5} y={top} width={Math.max(dayPx - 1, 1)} height={height}>
            <title>{words.schedule.dayTip(dayText(day), String(machines), (minutes / 60).toFixed(1))}</title>
          </rect>
          {isOwn && dayPx >= 14 && (
            <text x={x(day) + dayPx / 2} y={top + height / 2} textAnchor="middle" dominantBaseline="central">
              {Number(machines.toFixed(1))}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
