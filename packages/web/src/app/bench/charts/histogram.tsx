import type { ControlStudy } from "@pinwright/engine";
import type { SpecificationLimits } from "@pinwright/kernel";
import { useMemo } from "react";
import { linearScale } from "../../parts/chart/scales.ts";
import { DrawingScroll } from "../../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../../words.tsx";
import { figureText } from "./figure-text.ts";
import { histogram, readingScale } from "./scale.ts";

const [WIDTH, HEIGHT] = [720, 260];
const [LEFT, RIGHT, TOP, BOTTOM] = [56, 24, 34, 40];
const STEPS = 120;

/** Readings in bins, the normal curve of the same mean and deviation over them, and the design's limits. */
export function Histogram({
  study,
  unit,
  limits,
  name,
}: {
  readonly study: ControlStudy;
  readonly unit: string;
  readonly limits: SpecificationLimits;
  readonly name: string;
}) {
  const own = useWords().benchQuality.charts;
  const { count, mean, deviation } = study.summary;
  const bins = useMemo(() => histogram(study.readings.map(({ value }) => value)), [study.readings]);
  const ends = [
    ...bins.flatMap(({ from, to }) => [from, to]),
    ...[limits.lower, limits.upper].flatMap((value) => (value === null ? [] : [value])),
  ];
  const x = readingScale(ends, LEFT, WIDTH - RIGHT, 8);
  const width = (bins[0]?.to ?? 0) - (bins[0]?.from ?? 0);
  /** Readings that a bin would hold if they were normal. */
  const normal = (value: number): number =>
    deviation === 0
      ? 0
      : ((count * width) / (deviation * Math.sqrt(2 * Math.PI))) *
        Math.exp(-(((value - mean) / deviation) ** 2) / 2);
  const y = linearScale(0, Math.max(normal(mean), ...bins.map((bin) => bin.count)), HEIGHT - BOTTOM, TOP, 5);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const curve = Array.from({ length: STEPS + 1 }, (_, i) => {
    const value = low + ((high - low) * i) / STEPS;
    return `${x.at(value).toFixed(1)} ${y.at(normal(value)).toFixed(1)}`;
  });
  return (
    <figure className="chart">
      <h3>{own.histogram}</h3>
      <DrawingScroll>
        <svg
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          width={WIDTH}
          height={HEIGHT}
          role="img"
          aria-label={`${name}: ${own.histogramPicture(count)}`}
        >
          <text className="axis-name" x={4} y={14}>
            {own.units}
          </text>
          {y.ticks.map(({ value }) => (
            <g key={value}>
              <path className="grid" d={`M${LEFT} ${y.at(value)}H${WIDTH - RIGHT}`} />
              <text x={LEFT - 6} y={y.at(value)} textAnchor="end" dominantBaseline="central">
                {value}
              </text>
            </g>
          ))}
          {bins.map(({ from, to, count: of }) => {
            const [left, right] = [x.at(from), from === to ? x.at(from) + 8 : x.at(to)];
            return (
              <rect
                key={from}
                className="bar"
                x={left}
                width={Math.max(1, right - left)}
                y={y.at(of)}
                height={y.at(0) - y.at(of)}
              >
                <title>{`${from} – ${to} ${unit}: ${of}`}</title>
              </rect>
            );
          })}
          {deviation > 0 && <path className="curve normal-curve" d={`M${curve.join("L")}`} />}
          {x.ticks.map(({ value }) => (
            <text key={value} x={x.at(value)} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
              {value}
            </text>
          ))}
          <text className="axis-name" x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
            {unit}
          </text>
          {[limits.lower, limits.upper].map(
            (value) =>
              value !== null && (
                <g key={value} className="limit specification">
                  <path d={`M${x.at(value)} ${TOP}V${HEIGHT - BOTTOM}`} />
                  <text x={x.at(value)} y={TOP - 6} textAnchor="middle">
                    {value} ◆
                  </text>
                </g>
              ),
          )}
          <g className="limit centre">
            <path d={`M${x.at(mean)} ${TOP}V${HEIGHT - BOTTOM}`} />
            <text x={x.at(mean)} y={TOP - 20} textAnchor="middle">
              {figureText(mean, deviation)} x̄
            </text>
          </g>
        </svg>
      </DrawingScroll>
    </figure>
  );
}
