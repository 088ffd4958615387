import type { ViewEntry } from "../../../worker/protocol.ts";
import { usePick, useWords } from "../../words.tsx";
import { DrawingScroll } from "./drawing-scroll.tsx";
import { ampsText } from "./figures.ts";
import type { SupplyLine } from "./supplies-tab.tsx";

type Part = ViewEntry<"electricSupply">["parts"][number];

/** Sizes of the drawing, px; its width is stretched to the page. */
const SIZE = { width: 720, label: 150, row: 30, bar: 18, foot: 22 } as const;
/** Parts of the worst moment that are drawn by themselves. */
const MOST_PARTS = 24;

/** The budget of a supply as bars from nought, against what it is rated for and where it limits. */
export function BudgetBars({
  supply,
  parts,
}: {
  readonly supply: SupplyLine;
  /** Loads that the bar of the worst moment is made of; blank: drawn whole. */
  readonly parts: readonly Part[];
}) {
  const words = useWords().electric;
  const pick = usePick();
  const { budget, limitA } = supply;
  const { ratedA, steadyA, holdA, rmsA, worstA } = budget;
  const rows = [
    { name: words.col.steady, spread: steadyA },
    { name: words.col.hold, spread: holdA },
    { name: words.col.rms, spread: rmsA },
    { name: words.col.worst, spread: worstA },
  ];
  const most = Math.max(ratedA, limitA ?? 0, ...rows.map(({ spread }) => spread.most)) * 1.12 || 1;
  const x = (amps: number): number => SIZE.label + (Math.max(0, amps) / most) * (SIZE.width - SIZE.label);
  const height = rows.length * SIZE.row + SIZE.foot;
  const name = pick(supply.label.en, supply.label.zh) || supply.id;
  const text = rows.map((row) => `${row.name} ${ampsText(row.spread.most)}`).join("; ");
  return (
    <DrawingScroll>
      <svg
        className="budget-bars"
        viewBox={`0 0 ${SIZE.width} ${height}`}
        width={SIZE.width}
        height={height}
        role="img"
        aria-label={`${words.supply.budgetOf(name)}: ${text}`}
      >
        {rows.map(({ name: row, spread }, i) => {
          const y = i * SIZE.row + (SIZE.row - SIZE.bar) / 2;
          const middle = y + SIZE.bar / 2;
          const isWorst = i === rows.length - 1;
          return (
            <g key={row}>
              <text x={0} y={middle + 4} className="bar-name">
                {row}
              </text>
              {isWorst && parts.length > 0 ? (
                <Stack parts={parts} x={x} y={y} />
              ) : (
                <rect className="bar" x={x(0)} y={y} width={x(spread.nominal) - x(0)} height={SIZE.bar} />
              )}
              <path
                className="bar-range"
                d={`M${x(spread.least)} ${middle}H${x(spread.most)}m0 -5v10M${x(spread.least)} ${middle - 5}v10`}
              />
            </g>
          );
        })}
        <path className="bar-axis" d={`M${x(0)} 0V${height - SIZE.foot}`} />
        <Mark x={x(ratedA)} height={height} text={`${words.supply.ratedLine} ${ampsText(ratedA)}`} end />
        {limitA !== null && (
          <Mark x={x(limitA)} height={height} text={`${words.supply.limitLine} ${ampsText(limitA)}`} dashed />
        )}
        {rows.map(({ name: row, spread }, i) => (
          <text key={row} x={x(spread.most) + 6} y={(i + 0.5) * SIZE.row + 4} className="bar-value">
            {ampsText(spread.most)}
          </text>
        ))}
      </svg>
    </DrawingScroll>
  );
}

function Mark({
  x,
  height,
  text,
  end = false,
  dashed = false,
}: {
  readonly x: number;
  readonly height: number;
  readonly text: string;
  readonly end?: boolean;
  readonly dashed?: boolean;
}) {
  return (
    <g className="bar-mark" data-dashed={dashed ? "" : undefined}>
      <path d={`M${x} 0V${height - SIZE.foot + 4}`} />
      <text x={end ? x - 4 : x + 4} y={height - 5} textAnchor={end ? "end" : "start"}>
        {text}
      </text>
    </g>
  );
}

/** The worst moment, load by load; small ones in one piece at the end. */
function Stack({
  parts,
  x,
  y,
}: {
  readonly parts: readonly Part[];
  readonly x: (amps: number) => number;
  readonly y: number;
}) {
  const words = useWords().electric;
  const pick = usePick();
  const shown = parts.slice(0, MOST_PARTS);
  const rest = parts.slice(MOST_PARTS);
  const pieces = [
    ...shown.map((part) => ({
      key: part.id,
      kind: part.kind,
      amps: part.amps,
      name: pick(part.label.en, part.label.zh) || part.id,
    })),
    ...(rest.length === 0
      ? []
      : [
          {
            key: "rest",
            kind: "load" as const,
            amps: rest.reduce((sum, part) => sum + part.amps, 0),
            name: words.supply.rest(rest.length),
          },
        ]),
  ];
  let before = 0;
  return pieces.map(({ key, kind, amps, name }) => {
    const from = before;
    before += amps;
    return (
      <rect
        key={key}
        className="bar-piece"
        data-kind={kind}
        x={x(from)}
        y={y}
        width={Math.max(0, x(before) - x(from))}
        height={SIZE.bar}
      >
        <title>{`${name}: ${ampsText(amps)}`}</title>
      </rect>
    );
  });
}

/** What the fillings of the pieces mean. */
export function PieceLegend({ parts }: { readonly parts: readonly Part[] }) {
  const words = useWords().electric;
  const kinds = [...new Set(parts.map((part) => part.kind))];
  return (
    <ul className="piece-legend">
      {kinds.map((kind) => (
        <li key={kind}>
          <svg width="18" height="12" aria-hidden="true">
            <rect className="bar-piece" data-kind={kind} width="18" height="12" />
          </svg>
          {words.kinds[kind]}
        </li>
      ))}
    </ul>
  );
}
