import { memo } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { LabelPlaced } from "./geometry/labels.ts";

/**
 * Corners as the `d` of a path, moved to a place. Nothing on the ground has a transform of its own: the browser would
 * keep a layer for each, and go through thousands of them in every frame. Only what is dragged gets one.
 */
export function pathOf(rings: readonly (readonly number[])[], xMm = 0, yMm = 0): string {
  return rings
    .map((ring) => {
      const corners: string[] = [];
      for (let i = 0; i + 1 < ring.length; i += 2)
        corners.push(`${hundredths(xMm + (ring[i] ?? 0))} ${hundredths(yMm + (ring[i + 1] ?? 0))}`);
      return corners.length === 0 ? "" : `M${corners.join("L")}Z`;
    })
    .join("");
}

const hundredths = (mm: number): number => Math.round(mm * 100) / 100;

/** A dot of the same size at any enlargement: a line without length with round or square ends. */
export const dotOf = (xMm: number, yMm: number): string => `M${xMm} ${yMm}h.001`;

export const PanelShape = memo(function PanelShape({ panel }: { readonly panel: ViewEntry<"layoutPanels"> }) {
  return <path className="panel" d={pathOf(panel.rings)} />;
});

export const CutoutShape = memo(function CutoutShape({
  cutout,
}: {
  readonly cutout: ViewEntry<"layoutCutouts">;
}) {
  return (
    <path
      className={cutout.depthMm === null ? "cutout through" : "cutout"}
      data-moves={cutout.id}
      d={pathOf(cutout.rings, cutout.xMm, cutout.yMm)}
    />
  );
});

export const ItemShape = memo(function ItemShape({ item }: { readonly item: ViewEntry<"layoutItems"> }) {
  if (item.kind === "fastener")
    return (
      <circle
        className="fastener"
        data-moves={item.id}
        cx={item.xMm}
        cy={item.yMm}
        r={Math.abs(item.ring[0] ?? 2)}
      />
    );
  return (
    <path
      className={`item ${item.kind} ${item.sort}`}
      data-moves={item.id}
      d={pathOf([item.ring], item.xMm, item.yMm)}
    />
  );
});

export const WaypointShape = memo(function WaypointShape({
  waypoint,
}: {
  readonly waypoint: ViewEntry<"layoutWaypoints">;
}) {
  return (
    <path
      className={waypoint.hold === "none" ? "waypoint" : "waypoint held"}
      data-moves={waypoint.id}
      d={dotOf(waypoint.xMm, waypoint.yMm)}
    />
  );
});

const NEARLY_FULL = 0.85;

/** A thin line for the lane, and over it what lies in it, as thick as it is. */
export const LaneShape = memo(function LaneShape({
  lane,
  fromXMm,
  fromYMm,
  toXMm,
  toYMm,
  withLoad,
}: {
  readonly lane: ViewEntry<"layoutLanes">;
  readonly fromXMm: number;
  readonly fromYMm: number;
  readonly toXMm: number;
  readonly toYMm: number;
  readonly withLoad: boolean;
}) {
  const line = { x1: fromXMm, y1: fromYMm, x2: toXMm, y2: toYMm, "data-from": lane.from, "data-to": lane.to };
  const full = lane.usedMm / lane.maxMm;
  return (
    <>
      <line className="lane" {...line} />
      {withLoad && lane.usedMm > 0 && (
        <line
          className={full > 1 ? "load over" : full > NEARLY_FULL ? "load nearly" : "load"}
          strokeWidth={lane.usedMm}
          {...line}
        />
      )}
    </>
  );
});

export const TailShape = memo(function TailShape({ tail }: { readonly tail: ViewEntry<"layoutTails"> }) {
  return (
    <line
      className="tail"
      data-from={tail.fromId}
      data-to={tail.itemId}
      x1={tail.fromXMm}
      y1={tail.fromYMm}
      x2={tail.toXMm}
      y2={tail.toYMm}
      strokeWidth={tail.laidMm}
    />
  );
});

/** A name in a group that is turned over as a whole: letters would be upside down, and mirrored on an underside. */
export const LabelShape = memo(function LabelShape({
  label,
  mirrored,
}: {
  readonly label: LabelPlaced;
  readonly mirrored: boolean;
}) {
  return (
    <text data-moves={label.id} x={mirrored ? -label.xMm : label.xMm} y={-label.yMm}>
      {label.text}
    </text>
  );
});

/** Corners of a mark in pixels, y up, and its sign within. */
const MARKS = {
  error: [
    [-6, -6, 6, -6, 6, 6, -6, 6, -6, -6],
    [-3, -3, 3, 3],
    [3, -3, -3, 3],
  ],
  warning: [
    [0, 8, 8, -6, -8, -6, 0, 8],
    [0, 3, 0, -2],
    [0, -3.5, 0, -4.5],
  ],
  note: [
    [-4, -4, 4, -4, 5, 0, 4, 4, -4, 4, -5, 0, -4, -4],
    [0, 1, 0, -3],
    [0, 3, 0, 2.4],
  ],
} as const;

/** A mark of the same size at any enlargement: `k` is mm for a pixel. */
export const FindingMark = memo(function FindingMark({
  xMm,
  yMm,
  severity,
  k,
}: {
  readonly xMm: number;
  readonly yMm: number;
  readonly severity: keyof typeof MARKS;
  readonly k: number;
}) {
  const d = MARKS[severity]
    .map((line) => {
      const corners: string[] = [];
      for (let i = 0; i + 1 < line.length; i += 2)
        corners.push(`${xMm + (line[i] ?? 0) * k} ${yMm + (line[i + 1] ?? 0) * k}`);
      return `M${corners.join("L")}`;
    })
    .join("");
  return <path className={`mark ${severity}`} d={d} />;
});
