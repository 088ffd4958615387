import type { ParetoBar, ParetoMeasure } from "@pinwright/engine";
import { linearScale } from "../../parts/chart/scales.ts";
import { DrawingScroll } from "../../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../../words.tsx";
import "../../parts/chart/chart.css";

const ROW = 30;
const [LEFT, RIGHT, TOP, BOTTOM] = [210, 24, 34, 34];
const WIDTH = 640;
/** Characters of a name that fit beside its bar; Chinese ones take two places. */
const NAME_PLACES = 30;
const TENTHS = [0, 0.2, 0.4, 0.6, 0.8, 1];

const isWide = (char: string): boolean => char.charCodeAt(0) > 0x2e80;

/** A name as far as it fits. */
function cut(name: string): string {
  let places = 0;
  for (const [i, char] of [...name].entries()) {
    places += isWide(char) ? 2 : 1;
    if (places > NAME_PLACES) return `${[...name].slice(0, i).join("")}…`;
  }
  return name;
}

/** One bar a row, the longest first; the line adds up from the left edge to everything. */
export function ParetoChart({
  label,
  bars,
  measure,
  nameOf,
  only,
  pick,
}: {
  readonly label: string;
  readonly bars: readonly ParetoBar[];
  readonly measure: ParetoMeasure;
  readonly nameOf: (key: string) => string;
  readonly only: string | null;
  readonly pick: (key: string) => void;
}) {
  const { pareto: own } = useWords().benchQuality;
  const height = TOP + bars.length * ROW + BOTTOM;
  const right = WIDTH - RIGHT;
  const x = linearScale(0, Math.max(1, ...bars.map((bar) => bar[measure])), LEFT, right, 6);
  const share = (value: number): number => LEFT + value * (right - LEFT);
  const y = (i: number): number => TOP + i * ROW;
  const line = bars.map(
    ({ cumulativeShare }, i) => `${share(cumulativeShare).toFixed(1)} ${(y(i) + ROW / 2).toFixed(1)}`,
  );
  return (
    <figure className="chart">
      <DrawingScroll>
        <svg viewBox={`0 0 ${WIDTH} ${height}`} width={WIDTH} height={height} role="img" aria-label={label}>
          {TENTHS.map((tenth) => (
            <text key={tenth} x={share(tenth)} y={TOP - 8} textAnchor="middle">
              {`${tenth * 100} %`}
            </text>
          ))}
          {x.ticks.map(({ value }) => (
            <g key={value}>
              <path className="grid" d={`M${x.at(value)} ${TOP}V${height - BOTTOM}`} />
              <text x={x.at(value)} y={height - BOTTOM + 16} textAnchor="middle">
                {value}
              </text>
            </g>
          ))}
          <text className="axis-name" x={4} y={height - BOTTOM + 16}>
            {own.measures[measure]}
          </text>
          <text className="axis-name" x={4} y={TOP - 8}>
            {own.cumulative}
          </text>
          {bars.map((bar, i) => (
            // biome-ignore lint/a11y/noStaticElementInteractions: the table beside does the same for keyboards
            <g key={bar.key} className="pareto-bar" data-on={bar.key === only} onClick={() => pick(bar.key)}>
              <title>{`${nameOf(bar.key)}: ${bar[measure]}`}</title>
              <rect className="pareto-ground" x={0} y={y(i)} width={WIDTH} height={ROW} />
              <text x={LEFT - 8} y={y(i) + ROW / 2} textAnchor="end" dominantBaseline="central">
                {cut(nameOf(bar.key))}
              </text>
              <rect
                className="bar"
                x={LEFT}
                y={y(i) + 5}
                width={Math.max(1, x.at(bar[measure]) - LEFT)}
                height={ROW - 10}
              />
              <text className="bar-value" x={LEFT + 6} y={y(i) + ROW / 2} dominantBaseline="central">
                {Math.round(bar[measure])}
              </text>
            </g>
          ))}
          <path className="curve pareto-line" d={`M${LEFT} ${TOP}L${line.join("L")}`} />
          {bars.map(({ key, cumulativeShare }, i) => (
            <circle
              key={key}
              className="pareto-dot"
              cx={share(cumulativeShare)}
              cy={y(i) + ROW / 2}
              r={3.5}
            />
          ))}
        </svg>
      </DrawingScroll>
    </figure>
  );
}
