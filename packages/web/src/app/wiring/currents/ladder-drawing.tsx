import type { Spread } from "@pinwright/engine";
import { IconChevronRight } from "@tabler/icons-react";
import { Fragment } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { usePick, useWords } from "../../words.tsx";
import { EndText, WiringLink } from "../links.tsx";
import { spreadText, voltsText } from "./figures.ts";
import { type LadderRow, ladderRows } from "./ladder-rows.ts";
import { useCurrents } from "./use-currents.ts";
import "./ladder.css";

type Point = ViewEntry<"electricLadder">["out"][number];

/** Sizes of the drawing, px. */
const SIZE = { row: 60, column: 18, left: 12, volts: 110 } as const;

/** Volts from one end of the drawn scale to the other. */
interface Scale {
  readonly from: number;
  readonly to: number;
}

/** One tree of a ladder: lines at the left, and a row for each point and load. */
export function LadderDrawing({
  label,
  points,
  folded,
  toggle,
  isBack,
}: {
  readonly label: string;
  readonly points: readonly Point[];
  readonly folded: ReadonlySet<number>;
  readonly toggle: (point: number) => void;
  readonly isBack: boolean;
}) {
  const rows = ladderRows(points, folded);
  const width = SIZE.left * 2 + Math.max(0, ...rows.map((row) => row.column)) * SIZE.column;
  const scale = scaleOf(points, isBack);
  return (
    <div className="ladder-scroll">
      <div className="ladder">
        <svg width={width} height={rows.length * SIZE.row} aria-hidden="true">
          {rows.map((row, i) => (
            <path key={keyOf(row)} d={lineOf(rows, row, i)} data-load={row.load === null ? undefined : ""} />
          ))}
          {rows.map((row, i) => (
            <Dot key={keyOf(row)} row={row} at={i} />
          ))}
        </svg>
        <ol aria-label={label}>
          {rows.map((row) => {
            const point = points[row.point];
            if (point === undefined) return null;
            return (
              <li key={keyOf(row)} style={{ height: SIZE.row }}>
                {row.load === null ? (
                  <PointRow point={point} row={row} toggle={toggle} scale={scale} />
                ) : (
                  <LoadRow point={point} load={row.load} isBack={isBack} />
                )}
              </li>
            );
          })}
        </ol>
      </div>
    </div>
  );
}

const keyOf = ({ point, load }: LadderRow): string => `${point} ${load ?? ""}`;
const xOf = (column: number): number => SIZE.left + column * SIZE.column;
const yOf = (row: number): number => row * SIZE.row + SIZE.row / 2;

/** From the row that it hangs on, down that one's column and then across. */
function lineOf(rows: readonly LadderRow[], row: LadderRow, i: number): string {
  const above = row.parent === null ? undefined : rows[row.parent];
  if (row.parent === null || above === undefined) return "";
  const [x, y] = [xOf(above.column), yOf(row.parent)];
  return `M${x} ${y}V${yOf(i)}H${xOf(row.column)}`;
}

function Dot({ row, at }: { readonly row: LadderRow; readonly at: number }) {
  const [x, y] = [xOf(row.column), yOf(at)];
  if (row.load !== null) return <rect x={x - 5} y={y - 5} width={10} height={10} />;
  return (
    <circle cx={x} cy={y} r={row.parent === null ? 6 : 4} data-folded={row.folded > 0 ? "" : undefined} />
  );
}

/** From the least to the most volts of all points; back from nought on. */
function scaleOf(points: readonly Point[], isBack: boolean): Scale {
  const volts = points.flatMap(({ volts: spread }) => (spread === null ? [] : [spread.least, spread.most]));
  const [least, most] = [Math.min(...volts, isBack ? 0 : Number.POSITIVE_INFINITY), Math.max(...volts)];
  return Number.isFinite(least) && most > least ? { from: least, to: most } : { from: 0, to: 1 };
}

function PointRow({
  point,
  row,
  toggle,
  scale,
}: {
  readonly point: Point;
  readonly row: LadderRow;
  readonly toggle: (point: number) => void;
  readonly scale: Scale;
}) {
  const words = useWords().electric;
  return (
    <>
      <span className="ladder-way">
        <Passed point={point} />
      </span>
      <span className="ladder-point">
        <EndText end={point.place} />
      </span>
      {point.volts === null ? (
        <span className="dim">–</span>
      ) : (
        <Volts spread={point.volts} scale={scale} against={point.against} />
      )}
      {point.below > 1 && (
        <button
          type="button"
          className="ladder-fold"
          aria-expanded={row.folded === 0}
          onClick={() => toggle(row.point)}
        >
          <IconChevronRight size={16} aria-hidden="true" /> {words.ladder.loads(point.below)}
        </button>
      )}
    </>
  );
}

/** What is passed to get to a point, and what it drops in all. */
function Passed({ point: { parts } }: { readonly point: Point }) {
  const words = useWords().electric;
  const address = useCurrents();
  const shown = parts.filter(({ kind }) => kind !== "contact");
  const contacts = parts.length - shown.length;
  const most = sum(parts.map(({ dropV }) => dropV?.most ?? 0));
  const nominal = sum(parts.map(({ dropV }) => dropV?.nominal ?? 0));
  return (
    <>
      {shown.map(({ kind, id, name }, i) => (
        <Fragment key={id}>
          {i > 0 && ", "}
          {words.ladder.steps[kind]}{" "}
          {kind === "wire" ? (
            <WiringLink id={id} text={name} />
          ) : kind === "fuse" ? (
            <Link href={address("fuses", id)}>{name}</Link>
          ) : (
            ""
          )}
        </Fragment>
      ))}
      {contacts > 0 && (
        <span className="dim">
          {shown.length > 0 && " + "}
          {words.ladder.contacts(contacts)}
        </span>
      )}
      {most > 0 && (
        <small>
          {words.ladder.drop} {voltsText(most)} ({words.nominal} {voltsText(nominal)})
        </small>
      )}
    </>
  );
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Volts of a point on the scale of its tree, and in figures. */
function Volts({
  spread,
  scale,
  against,
}: {
  readonly spread: Spread;
  readonly scale: Scale;
  readonly against: string | null;
}) {
  const words = useWords().electric;
  const x = (volts: number): number =>
    4 + ((volts - scale.from) / (scale.to - scale.from)) * (SIZE.volts - 8);
  return (
    <span className="ladder-volts" title={spreadText(words, spread, voltsText)}>
      <svg width={SIZE.volts} height={16} aria-hidden="true">
        <path className="ladder-scale" d={`M0 8H${SIZE.volts}`} />
        <path className="ladder-range" d={`M${x(spread.least)} 8H${x(spread.most)}`} />
        <circle cx={x(spread.nominal)} cy={8} r={4} />
      </svg>
      <span>
        <b>{voltsText(spread.nominal)}</b>
        <small>
          {voltsText(spread.least)} … {voltsText(spread.most)}
        </small>
        {against !== null && <small className="amber-text">{words.ladder.against(against)}</small>}
      </span>
    </span>
  );
}

function LoadRow({
  point,
  load,
  isBack,
}: {
  readonly point: Point;
  readonly load: number;
  readonly isBack: boolean;
}) {
  const words = useWords().electric;
  const pick = usePick();
  const { bookId } = useDesk();
  const found = point.loads[load];
  if (found === undefined) return null;
  const { itemId, label, kind, volts, id } = found;
  return (
    <>
      <span className="ladder-way dim">{words.kinds[kind]}</span>
      <span className="ladder-point">
        <Link href={addressOf(bookId, { kind: "item", id: itemId ?? id })}>
          {pick(label.en, label.zh) || id}
        </Link>
        <small>{id}</small>
      </span>
      {!isBack && (
        <span title={spreadText(words, volts.worstV, voltsText)}>
          {words.ladder.across} <b>{voltsText(volts.aloneV.nominal)}</b>
          <small>
            {words.col.worst}: {voltsText(volts.worstV.least)}
          </small>
        </span>
      )}
    </>
  );
}
