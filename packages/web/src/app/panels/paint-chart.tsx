import type { PaintBatch } from "@pinwright/engine";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../words.tsx";

const WIDTH = 900;
const [LEFT, RIGHT, TOP, ROW, BAR, FOOT] = [170, 16, 4, 26, 16, 42];
const DAY_HOURS = 24;
/** Days that are written by themselves; of more, every second or fifth or … is. */
const MOST_DAYS = 16;

const dayStep = (days: number): number =>
  [1, 2, 5, 10, 20, 50, 100].find((step) => days / step <= MOST_DAYS) ?? Math.ceil(days / MOST_DAYS);

/** Batches on the rack over the days: work on each coat, and its drying, which goes on at night. */
export function PaintChart({
  batches,
  hoursDay,
  endHour,
  nameOf,
}: {
  readonly batches: readonly PaintBatch[];
  readonly hoursDay: number;
  readonly endHour: number;
  readonly nameOf: (coatId: string) => string;
}) {
  const words = useWords().panels;
  const days = Math.max(Math.ceil(endHour / DAY_HOURS), 1);
  const end = days * DAY_HOURS;
  const height = TOP + batches.length * ROW + FOOT;
  const bottom = height - FOOT;
  const x = (hour: number): number => LEFT + (hour / end) * (WIDTH - LEFT - RIGHT);
  const step = dayStep(days);
  return (
    <DrawingScroll>
      <svg
        className="paint-chart"
        viewBox={`0 0 ${WIDTH} ${height}`}
        width={WIDTH}
        height={height}
        role="img"
        aria-label={words.paintChart(batches.length, words.clock(endHour))}
      >
        <defs>
          <pattern
            id="drying"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0V6" />
          </pattern>
        </defs>
        {Array.from({ length: days }, (_, day) => day).map((day) => (
          <g key={day}>
            <rect
              className="night"
              x={x(day * DAY_HOURS + hoursDay)}
              y={TOP}
              width={x(DAY_HOURS) - x(hoursDay)}
              height={bottom - TOP}
            />
            {day % step === 0 && (
              <>
                <path className="grid" d={`M${x(day * DAY_HOURS)} ${TOP}V${bottom + 4}`} />
                <text x={x(day * DAY_HOURS)} y={bottom + 18}>
                  {day + 1}
                </text>
              </>
            )}
          </g>
        ))}
        <text className="axis-name" x={WIDTH - RIGHT} y={height - 4} textAnchor="end">
          {words.dayAxis}
        </text>
        {batches.map((batch, row) => {
          const y = TOP + row * ROW + (ROW - BAR) / 2;
          return (
            <g key={batch.number}>
              <text
                x={LEFT - 8}
                y={y + BAR / 2}
                textAnchor="end"
                dominantBaseline="central"
                className="bar-name"
              >
                {words.batchOf(batch.number, batch.cabinets)}
              </text>
              {batch.coats.map(({ coatId, startHour, workEndHour, dryHour }) => (
                <g key={coatId}>
                  <rect
                    className="drying"
                    x={x(workEndHour)}
                    y={y}
                    width={Math.max(x(dryHour) - x(workEndHour), 0)}
                    height={BAR}
                  />
                  <rect
                    className="worked"
                    x={x(startHour)}
                    y={y}
                    width={Math.max(x(workEndHour) - x(startHour), 1)}
                    height={BAR}
                  />
                  <rect
                    className="whole"
                    x={x(startHour)}
                    y={y}
                    width={Math.max(x(dryHour) - x(startHour), 1)}
                    height={BAR}
                  >
                    <title>
                      {words.coatSays(
                        nameOf(coatId),
                        words.clock(startHour),
                        words.clock(workEndHour),
                        words.clock(dryHour),
                      )}
                    </title>
                  </rect>
                </g>
              ))}
            </g>
          );
        })}
      </svg>
    </DrawingScroll>
  );
}
