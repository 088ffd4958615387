import { DrawingScroll } from "../../wiring/currents/drawing-scroll.tsx";
import { linearScale, logScale } from "./scales.ts";
import "./chart.css";

/** One curve, with its name and how it is told from others. */
export interface Curve {
  readonly id: string;
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** Drawn in steps, as what holds until the next point does. */
  readonly isStepped?: boolean;
}

/** A line across the chart, at a place on the axis below. */
export interface ChartMark {
  readonly x: number;
  readonly text: string;
}

const WIDTH = 720;
const HEIGHT = 320;
const [LEFT, RIGHT, TOP, BOTTOM] = [84, 36, 24, 44];
/** So few lines on the axis below that each has its figure. */
const FEW_TICKS = 8;
/** Curves that are told apart: by colour, and by dashes for whoever sees no colour. */
const CURVE_LOOKS = 6;

/** Curves over an axis, each with its name in the legend. */
export function LineChart({
  label,
  curves,
  xAxis,
  yAxis,
  xName,
  yName,
  xText,
  yText,
  marks = [],
}: {
  /** What the chart shows, for whoever does not see it. */
  readonly label: string;
  readonly curves: readonly Curve[];
  readonly xAxis: "log" | "linear";
  readonly yAxis: "log" | "linear";
  readonly xName: string;
  readonly yName: string;
  readonly xText: (value: number) => string;
  readonly yText: (value: number) => string;
  readonly marks?: readonly ChartMark[];
}) {
  const all = curves.flatMap(({ points }) => points);
  if (all.length === 0) return null;
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const [lowX, highX] = [Math.min(...xs), Math.max(...xs)];
  const x =
    xAxis === "log"
      ? logScale(lowX, highX, LEFT, WIDTH - RIGHT)
      : linearScale(lowX, highX, LEFT, WIDTH - RIGHT, 8);
  const aboveNothing = ys.filter((value) => value > 0);
  const y =
    yAxis === "log" && aboveNothing.length > 0
      ? logScale(Math.min(...aboveNothing), Math.max(...ys), HEIGHT - BOTTOM, TOP)
      : linearScale(Math.min(...ys), Math.max(...ys), HEIGHT - BOTTOM, TOP);
  const isSparse = x.ticks.length <= FEW_TICKS;
  const path = ({ points, isStepped = false }: Curve): string =>
    points
      .map((point, i) => {
        const [px, py] = [x.at(point.x).toFixed(1), y.at(point.y).toFixed(1)];
        if (i === 0) return `M${px} ${py}`;
        return isStepped ? `H${px}V${py}` : `L${px} ${py}`;
      })
      .join("");
  return (
    <figure className="chart">
      <DrawingScroll>
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} role="img" aria-label={label}>
          {y.ticks.map(({ value, isMinor }) => (
            <g key={value}>
              <path
                className={isMinor ? "grid minor" : "grid"}
                d={`M${LEFT} ${y.at(value)}H${WIDTH - RIGHT}`}
              />
              {!isMinor && (
                <text x={LEFT - 6} y={y.at(value)} textAnchor="end" dominantBaseline="central">
                  {yText(value)}
                </text>
              )}
            </g>
          ))}
          {x.ticks.map(({ value, isMinor }) => (
            <g key={value}>
              <path
                className={isMinor ? "grid minor" : "grid"}
                d={`M${x.at(value)} ${TOP}V${HEIGHT - BOTTOM}`}
              />
              {(!isMinor || isSparse) && (
                <text x={x.at(value)} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
                  {xText(value)}
                </text>
              )}
            </g>
          ))}
          <text className="axis-name" x={WIDTH - RIGHT} y={HEIGHT - 8} textAnchor="end">
            {xName}
          </text>
          <text className="axis-name" x={4} y={14}>
            {yName}
          </text>
          {curves.map((curve, i) => (
            <path key={curve.id} className="curve" data-look={i % CURVE_LOOKS} d={path(curve)} />
          ))}
          {marks.map((mark, i) => (
            <g key={`${mark.x} ${mark.text}`} className="chart-mark">
              <path d={`M${x.at(mark.x)} ${TOP}V${HEIGHT - BOTTOM}`} />
              <text
                x={x.at(mark.x) + (x.at(mark.x) > WIDTH * 0.7 ? -5 : 5)}
                y={TOP + 12 + (i % 4) * 15}
                textAnchor={x.at(mark.x) > WIDTH * 0.7 ? "end" : "start"}
              >
                {mark.text}
              </text>
            </g>
          ))}
        </svg>
      </DrawingScroll>
      <figcaption>
        <ul className="chart-names">
          {curves.map((curve, i) => (
            <li key={curve.id}>
              <svg width="34" height="10" aria-hidden="true">
                <path className="curve" data-look={i % CURVE_LOOKS} d="M0 5H34" />
              </svg>
              {curve.name}
            </li>
          ))}
        </ul>
      </figcaption>
    </figure>
  );
}
