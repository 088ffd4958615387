import type { SolderPoint } from "@pinwright/engine";
import { axisStep } from "../steps/learning-chart.tsx";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../words.tsx";

const WIDTH = 720;
const HEIGHT = 300;
const [LEFT, RIGHT, TOP, BOTTOM] = [64, 96, 16, 42];

const ticksTo = (top: number, most: number): readonly number[] => {
  const step = axisStep(top, most);
  return Array.from({ length: Math.floor(top / step + 1e-9) + 1 }, (_, i) => i * step);
};

/** Work by hand and in the bath against the number of machines whose boards are soldered together. */
export function SolderChart({
  curve,
  crossing,
  machines,
}: {
  readonly curve: readonly SolderPoint[];
  readonly crossing: number | null;
  /** Machines of the session that is asked for. */
  readonly machines: number;
}) {
  const words = useWords().boards;
  const last = curve.at(-1);
  if (last === undefined) return null;
  const topH =
    (Math.max(...curve.map((point) => Math.max(point.handMinutes, point.bathMinutes))) / 60) * 1.05;
  const x = (count: number): number => LEFT + (count / last.machines) * (WIDTH - LEFT - RIGHT);
  const y = (minutes: number): number => TOP + (1 - minutes / 60 / topH) * (HEIGHT - TOP - BOTTOM);
  const path = (of: (point: SolderPoint) => number): string =>
    curve
      .map((point, i) => `${i === 0 ? "M" : "L"}${x(point.machines).toFixed(1)} ${y(of(point)).toFixed(1)}`)
      .join("");
  // Names at the ends stand apart even where the lines come close.
  const handFirst = last.handMinutes >= last.bathMinutes;
  const apart = Math.max(0, 16 - Math.abs(y(last.handMinutes) - y(last.bathMinutes))) / 2;
  const crossText = crossing === null ? words.noCrossing : words.crossingAt(crossing);
  return (
    <DrawingScroll>
      <svg
        className="learning-chart solder-chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        width={WIDTH}
        height={HEIGHT}
        role="img"
        aria-label={words.curveChart(crossText)}
      >
        {ticksTo(topH, 5).map((hours) => (
          <g key={hours}>
            <path className="grid" d={`M${LEFT} ${y(hours * 60)}H${WIDTH - RIGHT}`} />
            <text x={LEFT - 6} y={y(hours * 60)} textAnchor="end" dominantBaseline="central">
              {words.hourAxis(hours)}
            </text>
          </g>
        ))}
        {ticksTo(last.machines, 8).map((count) => (
          <text key={count} x={x(count)} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
            {count}
          </text>
        ))}
        <text className="axis-name" x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
          {words.machineAxis}
        </text>
        <path className="session-line" d={`M${x(machines)} ${TOP}V${HEIGHT - BOTTOM}`} />
        <text x={x(machines) + 6} y={TOP + 6}>
          {words.sessionAt(machines)}
        </text>
        <path className="curve average" d={path((point) => point.handMinutes)} />
        <path className="curve alone" d={path((point) => point.bathMinutes)} />
        {crossing !== null && crossing <= last.machines && (
          <Crossing x={x(crossing)} y={y(handAt(curve, crossing))} text={words.crossingAt(crossing)} />
        )}
        <text
          className="curve-name"
          x={WIDTH - RIGHT + 8}
          y={y(last.handMinutes) + (handFirst ? -apart : apart)}
          dominantBaseline="central"
        >
          {words.curveHand}
        </text>
        <text
          className="curve-name"
          x={WIDTH - RIGHT + 8}
          y={y(last.bathMinutes) + (handFirst ? apart : -apart)}
          dominantBaseline="central"
        >
          {words.curveBath}
        </text>
      </svg>
    </DrawingScroll>
  );
}

/** Minutes by hand between two points of the curve. */
function handAt(curve: readonly SolderPoint[], machines: number): number {
  const after = curve.findIndex((point) => point.machines >= machines);
  const [a, b] = [curve[Math.max(after - 1, 0)], curve[Math.max(after, 0)]];
  if (a === undefined || b === undefined) return 0;
  const share = b.machines === a.machines ? 1 : (machines - a.machines) / (b.machines - a.machines);
  return a.handMinutes + share * (b.handMinutes - a.handMinutes);
}

function Crossing({ x, y, text }: { readonly x: number; readonly y: number; readonly text: string }) {
  return (
    <g className="crossing">
      <path d={`M${x} ${y}V${HEIGHT - BOTTOM}`} />
      <circle cx={x} cy={y} r={5} />
      <text className="curve-name" x={x} y={y - 14} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
