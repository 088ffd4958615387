import { axisStep } from "../steps/learning-chart.tsx";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { axisOf, type Fit } from "./fit-rows.ts";

const WIDTH = 640;
const [LEFT, RIGHT, TOP, ROW, FOOT] = [110, 16, 8, 30, 26];
const HEIGHT = TOP + 2 * ROW + FOOT;
const MOST_TICKS = 6;

/** The spread of a fit, at worst and as it is likely, against the limits that are asked for. */
export function FitChart({ fit }: { readonly fit: Fit }) {
  const words = useWords().panels;
  const pick = usePick();
  const { from, to } = axisOf(fit);
  const x = (mm: number): number => LEFT + ((mm - from) / (to - from)) * (WIDTH - LEFT - RIGHT);
  const step = axisStep(to - from, MOST_TICKS);
  const first = Math.ceil(from / step);
  const ticks = Array.from({ length: Math.floor(to / step) - first + 1 }, (_, i) => (first + i) * step);
  const bar = (row: number, kind: "worst" | "rss", name: string, min: number, max: number) => {
    const y = TOP + row * ROW;
    return (
      <g>
        <text x={LEFT - 8} y={y + ROW / 2} textAnchor="end" dominantBaseline="central" className="bar-name">
          {name}
        </text>
        <rect
          className={`fit-bar ${kind}`}
          x={x(min)}
          y={y + 7}
          width={Math.max(x(max) - x(min), 2)}
          height={ROW - 14}
        >
          <title>{`${name}: ${words.range(min, max)}`}</title>
        </rect>
      </g>
    );
  };
  const limit = (mm: number | null, outer: number) =>
    mm !== null && (
      <>
        <rect
          className="fit-outside"
          x={Math.min(x(mm), x(outer))}
          y={TOP}
          width={Math.abs(x(outer) - x(mm))}
          height={2 * ROW}
        />
        <path className="fit-limit" d={`M${x(mm)} ${TOP - 4}V${TOP + 2 * ROW + 4}`} />
      </>
    );
  return (
    <DrawingScroll>
      <svg
        className="fit-chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        width={WIDTH}
        height={HEIGHT}
        role="img"
        aria-label={words.fitChart(
          pick(fit.labels.en, fit.labels.zh) || fit.fitId,
          words.range(fit.worstMinMm, fit.worstMaxMm),
          words.range(fit.rssMinMm, fit.rssMaxMm),
          words.limits(fit.minMm, fit.maxMm),
        )}
      >
        <defs>
          <pattern
            id="outside"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0V6" />
          </pattern>
        </defs>
        {limit(fit.minMm, from)}
        {limit(fit.maxMm, to)}
        {bar(0, "worst", words.worst, fit.worstMinMm, fit.worstMaxMm)}
        {bar(1, "rss", words.rss, fit.rssMinMm, fit.rssMaxMm)}
        <path className="fit-middle" d={`M${x(fit.nominalMm)} ${TOP}V${TOP + 2 * ROW}`} />
        <path className="axis" d={`M${LEFT} ${TOP + 2 * ROW + 4}H${WIDTH - RIGHT}`} />
        {ticks.map((mm) => (
          <g key={mm}>
            <path className="axis" d={`M${x(mm)} ${TOP + 2 * ROW + 4}v4`} />
            <text x={x(mm)} y={HEIGHT - 4} textAnchor="middle">
              {words.mm(mm)}
            </text>
          </g>
        ))}
      </svg>
    </DrawingScroll>
  );
}
