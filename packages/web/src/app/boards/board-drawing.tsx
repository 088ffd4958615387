import type { ViewEntry } from "../../worker/protocol.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";

type Face = ViewEntry<"boardPlacements">;
type Part = Face["parts"][number];

/** Whether a part is in already, goes in now or comes later. */
export type PartState = "before" | "now" | "later";

/** The board is drawn so large that a part can be found with a finger, px. */
const MOST = { width: 760, height: 520 } as const;
const MOST_PX_A_MM = 9;
const AIR = 10;
const HOLE_MM = 3.2;
/** Room of a character of a reference, px. */
const CHARACTER_PX = 7;
const LETTERS_PX = 12;

/** A board as it lies before whoever stuffs it, with the parts of one stage dark. */
export function BoardDrawing({
  face,
  says,
  stateOf,
  picked,
  pick,
}: {
  readonly face: Face;
  /** The picture in words. */
  readonly says: string;
  readonly stateOf: (reference: string) => PartState;
  readonly picked: string | null;
  readonly pick: (reference: string | null) => void;
}) {
  const k = Math.min(MOST.width / face.widthMm, MOST.height / face.depthMm, MOST_PX_A_MM);
  const [width, height] = [face.widthMm * k + 2 * AIR, face.depthMm * k + 2 * AIR];
  const x = (mm: number): number => AIR + mm * k;
  const y = (mm: number): number => AIR + (face.depthMm - mm) * k;
  const path = (ring: readonly number[]): string =>
    ring
      .flatMap((value, i) =>
        i % 2 === 0 ? [`${i === 0 ? "M" : "L"}${x(value).toFixed(1)} ${y(ring[i + 1] ?? 0).toFixed(1)}`] : [],
      )
      .join("")
      .concat("z");
  // What goes in now lies on top.
  const ordered = [...face.parts].sort((a, b) => rank(stateOf(a.reference)) - rank(stateOf(b.reference)));
  return (
    <DrawingScroll>
      <svg
        className="board-drawing"
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={says}
      >
        <path className="board-face" d={face.rings.map(path).join("")} />
        {face.holes.map((hole) => (
          <circle
            key={`${hole.xMm} ${hole.yMm}`}
            className="board-hole"
            cx={x(hole.xMm)}
            cy={y(hole.yMm)}
            r={(HOLE_MM / 2) * k}
          />
        ))}
        {ordered.map((part) => (
          <PartShape
            key={part.reference}
            part={part}
            d={path(part.ring)}
            state={stateOf(part.reference)}
            isPicked={part.reference === picked}
            box={boxOf(part, x, y)}
            mark={part.mark.map((value, i) => (i % 2 === 0 ? x(value) : y(value)))}
            pick={pick}
          />
        ))}
      </svg>
    </DrawingScroll>
  );
}

const rank = (state: PartState): number => (state === "now" ? 2 : state === "before" ? 1 : 0);

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

function boxOf({ ring }: Part, x: (mm: number) => number, y: (mm: number) => number): Box {
  const xs = ring.filter((_, i) => i % 2 === 0).map(x);
  const ys = ring.filter((_, i) => i % 2 === 1).map(y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

function PartShape({
  part,
  d,
  state,
  isPicked,
  box,
  mark,
  pick,
}: {
  readonly part: Part;
  readonly d: string;
  readonly state: PartState;
  readonly isPicked: boolean;
  readonly box: Box;
  /** Ends of a bar or place of a dot, px. */
  readonly mark: readonly number[];
  readonly pick: (reference: string | null) => void;
}) {
  const long = part.reference.length * CHARACTER_PX;
  const upright = box.height > box.width && long > box.width;
  const fits = (upright ? box.height : box.width) >= long && (upright ? box.width : box.height) >= LETTERS_PX;
  const [middleX, middleY] = [box.left + box.width / 2, box.top + box.height / 2];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list beside the picture does the same for keyboards
    <g
      data-ref={part.reference}
      className={`part ${state}${isPicked ? " picked" : ""}`}
      onClick={() => pick(isPicked ? null : part.reference)}
    >
      <path d={d}>
        <title>{part.polarity === "" ? part.reference : `${part.reference}: ${part.polarity}`}</title>
      </path>
      {(fits || isPicked) && (
        <text
          x={middleX}
          y={middleY}
          textAnchor="middle"
          dominantBaseline="central"
          transform={upright ? `rotate(-90 ${middleX} ${middleY})` : undefined}
        >
          {part.reference}
        </text>
      )}
      {state !== "later" && <PolarityMark mark={mark} />}
    </g>
  );
}

/** What tells the right way round. */
function PolarityMark({ mark: [x1, y1, x2, y2] }: { readonly mark: readonly number[] }) {
  if (x1 === undefined || y1 === undefined) return null;
  return x2 === undefined || y2 === undefined ? (
    <circle className="polar" cx={x1} cy={y1} r={4} />
  ) : (
    <path className="polar-bar" d={`M${x1} ${y1}L${x2} ${y2}`} />
  );
}
