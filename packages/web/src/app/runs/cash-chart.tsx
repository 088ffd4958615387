import { numberOfDecimal } from "@pinwright/kernel";
import { grouped } from "../parts/amounts.ts";
import { linearScale } from "../parts/chart/scales.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../words.tsx";
import { dayText, shortDay } from "./days.ts";
import type { Plan } from "./run-tab.ts";
import "../parts/chart/chart.css";

type Week = Plan["cash"][number];

const KINDS = ["material", "tooling", "work"] as const;
const HEIGHT = 300;
const [LEFT, RIGHT, TOP, BOTTOM] = [84, 84, 26, 34];
const [WIDEST, NARROWEST, ROOM] = [36, 12, 680];
const WEEK_DAYS = 7;
/** Room between two dates on the axis. */
const DATE_PX = 44;

/** Weeks without a payment are there too: an axis of time has no gaps. */
function everyWeek(cash: readonly Week[]): readonly Week[] {
  const found: Week[] = [];
  for (const week of cash) {
    let last = found.at(-1);
    while (last !== undefined && last.week + WEEK_DAYS < week.week) {
      last = { ...last, week: last.week + WEEK_DAYS, material: 0n, tooling: 0n, work: 0n, runs: [] };
      found.push(last);
    }
    found.push(week);
  }
  return found;
}

/** A bar for each week, of material, tools and work; a line for all that went out until then. */
export function CashChart({ cash, currency }: { readonly cash: readonly Week[]; readonly currency: string }) {
  const own = useWords().runs.cash;
  const weeks = everyWeek(cash);
  const weekPx = Math.max(NARROWEST, Math.min(WIDEST, ROOM / weeks.length));
  const width = LEFT + weeks.length * weekPx + RIGHT;
  const sums = weeks.map((week) => KINDS.reduce((sum, kind) => sum + numberOfDecimal(week[kind]), 0));
  const totals = weeks.map(({ total }) => numberOfDecimal(total));
  const y = linearScale(Math.min(0, ...sums), Math.max(...sums, 1), HEIGHT - BOTTOM, TOP, 5);
  const all = linearScale(0, Math.max(...totals, 1), HEIGHT - BOTTOM, TOP, 5);
  const x = (i: number): number => LEFT + i * weekPx;
  const every = Math.max(1, Math.ceil(DATE_PX / weekPx));
  return (
    <figure className="chart cash-chart">
      <DrawingScroll>
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={own.chart(dayText(weeks[0]?.week ?? 0), dayText(weeks.at(-1)?.week ?? 0))}
        >
          <defs>
            <pattern
              id="cash-tooling"
              width="6"
              height="6"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <rect width="6" height="6" className="cash-ground" />
              <path d="M0 0V6" className="cash-hatch" />
            </pattern>
            <pattern id="cash-work" width="5" height="5" patternUnits="userSpaceOnUse">
              <rect width="5" height="5" className="cash-ground" />
              <circle cx="2.5" cy="2.5" r="1.2" className="cash-dot" />
            </pattern>
          </defs>
          {y.ticks.map(({ value }) => (
            <g key={value}>
              <path className="grid" d={`M${LEFT} ${y.at(value)}H${width - RIGHT}`} />
              <text x={LEFT - 6} y={y.at(value)} textAnchor="end" dominantBaseline="central">
                {grouped(String(value))}
              </text>
            </g>
          ))}
          {all.ticks.map(({ value }) => (
            <text key={value} x={width - RIGHT + 6} y={all.at(value)} dominantBaseline="central">
              {grouped(String(value))}
            </text>
          ))}
          <text className="axis-name" x={4} y={14}>
            {own.sum}, {currency}
          </text>
          <text className="axis-name" x={width - 4} y={14} textAnchor="end">
            {own.total}, {currency}
          </text>
          {weeks.map((week, i) => {
            let from = 0;
            return (
              <g key={week.week}>
                {KINDS.map((kind) => {
                  const value = numberOfDecimal(week[kind]);
                  const bottom = from;
                  from += value;
                  return (
                    <rect
                      key={kind}
                      className={`cash-bar ${kind}`}
                      x={x(i) + 1.5}
                      width={weekPx - 3}
                      y={Math.min(y.at(from), y.at(bottom))}
                      height={Math.abs(y.at(bottom) - y.at(from))}
                    >
                      <title>{`${dayText(week.week)} · ${own[kind]} ${grouped(value.toFixed(2))} ${currency}`}</title>
                    </rect>
                  );
                })}
                {i % every === 0 && (
                  <text x={x(i) + weekPx / 2} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
                    {shortDay(week.week)}
                  </text>
                )}
              </g>
            );
          })}
          <path
            className="curve cash-all"
            d={totals
              .map(
                (total, i) =>
                  `${i === 0 ? "M" : "L"}${(x(i) + weekPx / 2).toFixed(1)} ${all.at(total).toFixed(1)}`,
              )
              .join("")}
          />
        </svg>
      </DrawingScroll>
      <figcaption>
        <ul className="chart-names">
          {KINDS.map((kind) => (
            <li key={kind}>
              <svg width="22" height="12" aria-hidden="true">
                <rect className={`cash-bar ${kind}`} width="22" height="12" />
              </svg>
              {own[kind]}
            </li>
          ))}
          <li>
            <svg width="34" height="10" aria-hidden="true">
              <path className="curve cash-all" d="M0 5H34" />
            </svg>
            {own.total}
          </li>
        </ul>
      </figcaption>
    </figure>
  );
}
