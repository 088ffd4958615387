import type { ViewEntry } from "../../worker/protocol.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../words.tsx";

const WIDTH = 640;
const HEIGHT = 280;
const [LEFT, RIGHT, TOP, BOTTOM] = [56, 16, 16, 40];

/** A round step of an axis: 1, 2 or 5 times a power of ten, at most `most` of them up to `top`. */
export function axisStep(top: number, most: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(top / most, 1e-9)));
  return ([1, 2, 5, 10].find((digit) => top / (digit * power) <= most) ?? 10) * power;
}

const ticksTo = (top: number, most: number): readonly number[] => {
  const step = axisStep(top, most);
  return Array.from({ length: Math.floor(top / step + 1e-9) + 1 }, (_, i) => i * step);
};

/** Hours for each machine of a run by itself, and on average up to it. */
export function LearningChart({ learnt }: { readonly learnt: ViewEntry<"learning"> }) {
  const words = useWords().steps;
  const last = learnt.units.at(-1)?.unit ?? 1;
  const topH = (learnt.firstMinutes / 60) * 1.05;
  const x = (unit: number): number => LEFT + ((unit - 1) / Math.max(last - 1, 1)) * (WIDTH - LEFT - RIGHT);
  const y = (minutes: number): number => TOP + (1 - minutes / 60 / topH) * (HEIGHT - TOP - BOTTOM);
  const path = (of: (unit: (typeof learnt.units)[number]) => number): string =>
    learnt.units
      .map((unit, i) => `${i === 0 ? "M" : "L"}${x(unit.unit).toFixed(1)} ${y(of(unit)).toFixed(1)}`)
      .join("");
  const end = learnt.units.at(-1);
  return (
    <DrawingScroll>
      <svg
        className="learning-chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        width={WIDTH}
        height={HEIGHT}
        role="img"
        aria-label={words.learningChart(last)}
      >
        {ticksTo(topH, 5).map((hours) => (
          <g key={hours}>
            <path className="grid" d={`M${LEFT} ${y(hours * 60)}H${WIDTH - RIGHT}`} />
            <text x={LEFT - 6} y={y(hours * 60)} textAnchor="end" dominantBaseline="central">
              {Number(hours.toFixed(2))} h
            </text>
          </g>
        ))}
        {ticksTo(last, 8)
          .map((unit) => Math.max(unit, 1))
          .map((unit) => (
            <text key={unit} x={x(unit)} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
              {unit}
            </text>
          ))}
        <text className="axis-name" x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
          {words.machine}
        </text>
        <path className="curve average" d={path((unit) => unit.averageMinutes)} />
        <path className="curve alone" d={path((unit) => unit.minutes)} />
        {end !== undefined && (
          <>
            <text className="curve-name" x={WIDTH - RIGHT} y={y(end.averageMinutes) - 8} textAnchor="end">
              {words.average}
            </text>
            <text className="curve-name" x={WIDTH - RIGHT} y={y(end.minutes) + 16} textAnchor="end">
              {words.alone}
            </text>
          </>
        )}
      </svg>
    </DrawingScroll>
  );
}
