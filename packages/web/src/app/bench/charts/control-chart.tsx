import { useElementSize } from "@mantine/hooks";
import type { StudyChart } from "@pinwright/engine";
import type { SpecificationLimits } from "@pinwright/kernel";
import { useMemo } from "react";
import { DrawingScroll } from "../../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../../words.tsx";
import { figureText } from "./figure-text.ts";
import { readingScale } from "./scale.ts";
import { thinned } from "./thin.ts";
import "../../parts/chart/chart.css";

const HEIGHT = 250;
/** As wide as there is room, px; never so narrow that points run together. */
const [NARROWEST, WIDEST] = [520, 1100];
const [LEFT, RIGHT, TOP, BOTTOM] = [72, 128, 26, 24];
const TICKS = 5;
/** Least room between the names of two lines at the right edge, px. */
const NAME_PX = 14;
/** So many points have a mark each; of more only the line and the signals. */
const MOST_MARKS = 150;

interface Line {
  readonly kind: "centre" | "control" | "specification";
  readonly value: number;
}

/** Heights of names so that none lies on another, from the top down. */
function spread(heights: readonly number[]): readonly number[] {
  const order = heights.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
  const placed: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const { y, i } of order) {
    last = Math.max(y, last + NAME_PX);
    placed[i] = last;
  }
  return placed;
}

/** Points one after another between their limits, with every point marked at which a rule is broken. */
export function ControlChart({
  name,
  unit,
  chart,
  limits,
  unitsOf,
}: {
  readonly name: string;
  readonly unit: string;
  readonly chart: StudyChart;
  /** Of the design; they are drawn only where they are near enough to be of use. */
  readonly limits: SpecificationLimits;
  /** Which units a point is of. */
  readonly unitsOf: (at: number) => string;
}) {
  const own = useWords().benchQuality.charts;
  const { ref, width: room } = useElementSize();
  const width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(room)));
  const { points, signals } = chart;
  const { centre, lower, upper } = chart.limits;
  const signalled = useMemo(() => new Map(signals.map(({ at, rule }) => [at, rule])), [signals]);
  const drawn = useMemo(
    () => thinned(points, width - LEFT - RIGHT, signalled.keys()),
    [points, signalled, width],
  );
  const deviation = (upper - centre) / 3;
  const lines: readonly Line[] = [
    { kind: "centre", value: centre },
    { kind: "control", value: upper },
    // No range is below nothing, so there is no limit either.
    ...(lower === 0 ? [] : [{ kind: "control", value: lower } as const]),
    ...[limits.upper, limits.lower].flatMap((value): Line[] =>
      value === null ? [] : [{ kind: "specification", value }],
    ),
  ];
  const y = useMemo(
    () =>
      readingScale(
        [...drawn.map((i) => points[i] ?? 0), lower, upper, limits.lower ?? centre, limits.upper ?? centre],
        HEIGHT - BOTTOM,
        TOP,
        TICKS,
      ),
    [drawn, points, lower, upper, centre, limits.lower, limits.upper],
  );
  const x = (i: number): number =>
    points.length === 1 ? LEFT : LEFT + (i / (points.length - 1)) * (width - LEFT - RIGHT);
  const at = (i: number): string => `${x(i).toFixed(1)} ${y.at(points[i] ?? 0).toFixed(1)}`;
  const names = spread(lines.map(({ value }) => y.at(value)));
  return (
    <figure className="chart control-chart" ref={ref}>
      <DrawingScroll>
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={own.picture(name, points.length, signals.length)}
        >
          <text className="axis-name" x={4} y={14}>
            {unit === "" ? name : `${name}, ${unit}`}
          </text>
          {y.ticks.map(({ value }) => (
            <g key={value}>
              <path className="grid" d={`M${LEFT} ${y.at(value)}H${width - RIGHT}`} />
              <text x={LEFT - 6} y={y.at(value)} textAnchor="end" dominantBaseline="central">
                {value}
              </text>
            </g>
          ))}
          <path className="curve control-line" d={`M${drawn.map(at).join("L")}`} />
          {lines.map(({ kind, value }, i) => (
            <g key={`${kind} ${value}`} className={`limit ${kind}`}>
              <path d={`M${LEFT} ${y.at(value)}H${width - RIGHT}`} />
              <text x={width - RIGHT + 6} y={names[i] ?? 0} dominantBaseline="central">
                <title>{`${own.lines[kind]}: ${value} ${unit}`}</title>
                {kind === "specification" ? value : figureText(value, deviation)} {LINE_SIGNS[kind]}
              </text>
            </g>
          ))}
          {drawn.map((i) => {
            const rule = signalled.get(i);
            if (rule === undefined && points.length > MOST_MARKS) return null;
            return (
              <circle
                key={i}
                className={rule === undefined ? "point" : "point signal"}
                cx={x(i)}
                cy={y.at(points[i] ?? 0)}
                r={rule === undefined ? 2.5 : rule === "beyond" ? 5 : 3.5}
              >
                <title>
                  {own.tip(
                    unitsOf(i),
                    `${points[i]} ${unit}`,
                    rule === undefined ? `${i + 1}` : `${i + 1} – ${own.rules[rule]}`,
                  )}
                </title>
              </circle>
            );
          })}
          <text x={width - RIGHT} y={HEIGHT - 6} textAnchor="end">
            {own.order}
          </text>
        </svg>
      </DrawingScroll>
      <figcaption>
        <ul className="chart-names">
          {(["centre", "control", "specification"] as const)
            .filter((kind) => lines.some((line) => line.kind === kind))
            .map((kind) => (
              <li key={kind}>
                <svg width="34" height="10" aria-hidden="true" className={`limit ${kind}`}>
                  <path d="M0 5H34" />
                </svg>
                {own.lines[kind]} {LINE_SIGNS[kind]}
              </li>
            ))}
          {signals.length > 0 && (
            <li>
              <svg width="14" height="14" aria-hidden="true">
                <circle className="point signal" cx="7" cy="7" r="5" />
              </svg>
              {own.lines.signal}
            </li>
          )}
          {drawn.length < points.length && (
            <li className="dim">{own.thinned(drawn.length, points.length)}</li>
          )}
        </ul>
      </figcaption>
    </figure>
  );
}

/** What stands behind a line's figure, so that it is told without colour or dashes too. */
const LINE_SIGNS = { centre: "x̄", control: "±3σ", specification: "◆" } as const;
