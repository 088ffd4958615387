import type { ViewEntry } from "../../../worker/protocol.ts";
import { usePick, useWords } from "../../words.tsx";
import { DrawingScroll } from "./drawing-scroll.tsx";
import { ampsText, figure, secondsText } from "./figures.ts";
import { type LogAxis, linePath, logAxis } from "./log-axes.ts";

type Fuse = ViewEntry<"electricFuse">;

/** Sizes of the drawing, px. */
const SIZE = { width: 620, height: 460, left: 60, right: 14, top: 14, bottom: 46 } as const;
/** What the drawing shows of time, s: a pulse's millisecond to the hour of the first gate. */
const TIME = { least: 0.001, most: 10_000 } as const;

/** The curve of a fuse on logarithmic axes, with its pulses, the short circuit and the wire that it protects. */
export function FuseCurve({ fuse }: { readonly fuse: Fuse }) {
  const words = useWords().electric;
  const pick = usePick();
  const { chart, rating } = fuse;
  const smallest = Math.min(rating.ratedA, ...chart.pulses.map((pulse) => pulse.amps), rating.ratedA / 2);
  const x = logAxis(Math.max(smallest * 0.8, 0.005), chart.endA, SIZE.left, SIZE.width - SIZE.right);
  const y = logAxis(TIME.least, TIME.most, SIZE.height - SIZE.bottom, SIZE.top);
  const name = pick(fuse.label.en, fuse.label.zh) || fuse.id;
  return (
    <DrawingScroll>
      <svg
        className="fuse-curve"
        viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
        width={SIZE.width}
        height={SIZE.height}
        role="img"
        aria-label={`${words.fuse.curve}: ${name}`}
      >
        <Axes x={x} y={y} />
        <path className="fuse-rated" d={`M${x.at(rating.ratedA)} ${SIZE.top}V${SIZE.height - SIZE.bottom}`} />
        <text className="fuse-note" x={x.at(rating.ratedA) + 4} y={SIZE.top + 12}>
          {`${words.fuse.ratedLine} ${ampsText(rating.ratedA)}`}
        </text>
        <Wire fuse={fuse} x={x} y={y} />
        <Band fuse={fuse} x={x} y={y} />
        <Short fuse={fuse} x={x} y={y} />
        <Pulses fuse={fuse} x={x} y={y} />
      </svg>
    </DrawingScroll>
  );
}

interface Drawn {
  readonly fuse: Fuse;
  readonly x: LogAxis;
  readonly y: LogAxis;
}

function Axes({ x, y }: Omit<Drawn, "fuse">) {
  const { fuse: words } = useWords().electric;
  const [left, bottom] = [SIZE.left, SIZE.height - SIZE.bottom];
  return (
    <g className="axes">
      {x.ticks.map(({ value, major }) => (
        <g key={value} data-major={major ? "" : undefined}>
          <path d={`M${x.at(value)} ${SIZE.top}V${bottom}`} />
          <text x={x.at(value)} y={bottom + 16} textAnchor="middle">
            {figure(value)}
          </text>
        </g>
      ))}
      {y.ticks
        .filter(({ major }) => major)
        .map(({ value }) => (
          <g key={value} data-major="">
            <path d={`M${left} ${y.at(value)}H${SIZE.width - SIZE.right}`} />
            <text x={left - 6} y={y.at(value) + 4} textAnchor="end">
              {String(value)}
            </text>
          </g>
        ))}
      <text className="axis-name" x={(left + SIZE.width) / 2} y={SIZE.height - 8} textAnchor="middle">
        {words.current}
      </text>
      <text
        className="axis-name"
        transform={`translate(14 ${(SIZE.top + bottom) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {words.time}
      </text>
    </g>
  );
}

/** Between the earliest and the latest opening, with the gates of the standard as marks. */
function Band({ fuse: { chart, rating }, x, y }: Drawn) {
  const { earliest, latest, gates } = chart;
  const around = [...earliest, ...latest.toReversed()];
  return (
    <g>
      {earliest.length > 0 && <path className="fuse-band" d={`${linePath(around, x, y)}Z`} />}
      <path className="fuse-edge" data-edge="earliest" d={linePath(earliest, x, y)} />
      <path className="fuse-edge" data-edge="latest" d={linePath(latest, x, y)} />
      {gates.flatMap(({ multiple, leastS, mostS }) =>
        [leastS, mostS].flatMap((seconds, i) =>
          seconds === null
            ? []
            : [
                <path
                  key={`${multiple} ${i === 0 ? "least" : "most"}`}
                  className="fuse-gate"
                  d={`M${x.at(multiple * rating.ratedA) - 6} ${y.at(seconds)}h12`}
                />,
              ],
        ),
      )}
    </g>
  );
}

/** For how long the wire stands a current that a short circuit harms first; it begins at what it may always carry. */
function Wire({ fuse: { chart, rating, weakest }, x, y }: Drawn) {
  const words = useWords().electric.fuse;
  const inside = chart.harm.filter(([amps, s]) => amps <= x.most && s <= TIME.most && s >= TIME.least);
  const [first] = inside;
  if (rating.weakest === null || weakest === null || first === undefined) return null;
  return (
    <g className="fuse-wire">
      <path d={`M${x.at(first[0])} ${SIZE.top}${linePath(inside, x, y).replace("M", "L")}`} />
      <text className="fuse-note" x={x.at(first[0]) + 8} y={SIZE.top + 30}>
        {words.wireCurve(weakest)}
      </text>
    </g>
  );
}

function Short({ fuse: { rating }, x, y }: Drawn) {
  const { fuse: words } = useWords().electric;
  const { far } = rating;
  if (far === null || far.heldA <= 0) return null;
  const at = x.at(far.heldA);
  const opens = Number.isFinite(far.opensS);
  const time = opens ? Math.max(far.opensS, TIME.least) : TIME.most;
  const isRight = at > SIZE.width * 0.6;
  return (
    <g className="fuse-short">
      <path d={`M${at} ${SIZE.top}V${SIZE.height - SIZE.bottom}`} />
      <path className="fuse-mark" d={`M${at} ${y.at(time) - 7}l7 7l-7 7l-7 -7z`} />
      {[
        `${words.short}: ${ampsText(far.heldA)}`,
        opens ? words.shortOpens(secondsText(far.opensS)) : words.shortNever,
      ].map((text, i) => (
        <text
          key={text}
          className="fuse-note"
          x={isRight ? at - 10 : at + 10}
          y={SIZE.top + 58 + i * 16}
          textAnchor={isRight ? "end" : "start"}
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** Pulses that are alike are one point. */
function Pulses({ fuse: { chart }, x, y }: Drawn) {
  const groups = new Map<string, { amps: number; seconds: number; n: number; aMinute: number }>();
  for (const { amps, seconds, aMinute } of chart.pulses) {
    const key = `${figure(amps)} ${seconds}`;
    const group = groups.get(key) ?? { amps, seconds, n: 0, aMinute: 0 };
    groups.set(key, { ...group, n: group.n + 1, aMinute: group.aMinute + aMinute });
  }
  return [...groups].map(([key, { amps, seconds, n, aMinute }]) => (
    <g key={key} className="fuse-pulse">
      <circle cx={x.at(amps)} cy={y.at(seconds)} r={5}>
        <title>{`${ampsText(amps)}, ${secondsText(seconds)}, ${n} × ${figure(aMinute / n)} / min`}</title>
      </circle>
      {n > 1 && (
        <text className="fuse-note" x={x.at(amps) + 8} y={y.at(seconds) + 4}>
          {`${n} ×`}
        </text>
      )}
    </g>
  ));
}
