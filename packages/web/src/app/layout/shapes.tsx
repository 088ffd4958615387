import { memo } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { LabelPlaced } from "./geometry/labels.ts";

/** Corners as the `d` of a path. */
export function pathOf(rings: readonly (readonly number[])[]): string {
  return rings
    .map((ring) => {
      const corners: string[] = [];
      for (let i = 0; i + 1 < ring.length; i += 2) corners.push(`${ring[i]} ${ring[i + 1]}`);
      return corners.length === 0 ? "" : `M${corners.join("L")}Z`;
    })
    .join("");
}

const at = (xMm: number, yMm: number): string => `translate(${xMm} ${yMm})`;

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
      transform={at(cutout.xMm, cutout.yMm)}
      d={pathOf(cutout.rings)}
    />
  );
});

export const ItemShape = memo(function ItemShape({ item }: { readonly item: ViewEntry<"layoutItems"> }) {
  const place = at(item.xMm, item.yMm);
  if (item.kind === "fastener")
    return (
      <circle className="fastener" data-moves={item.id} transform={place} r={Math.abs(item.ring[0] ?? 2)} />
    );
  return (
    <path
      className={`item ${item.kind} ${item.sort}`}
      data-moves={item.id}
      transform={place}
      d={pathOf([item.ring])}
    />
  );
});

/** A dot of the same size at any enlargement: a line without length with round or square ends. */
export const WaypointShape = memo(function WaypointShape({
  waypoint,
}: {
  readonly waypoint: ViewEntry<"layoutWaypoints">;
}) {
  return (
    <path
      className={waypoint.hold === "none" ? "waypoint" : "waypoint held"}
      data-moves={waypoint.id}
      transform={at(waypoint.xMm, waypoint.yMm)}
      d="M0 0h.001"
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

export const LabelShape = memo(function LabelShape({ label }: { readonly label: LabelPlaced }) {
  return (
    <g data-moves={label.id} transform={at(label.xMm, label.yMm)}>
      <text className="name">{label.text}</text>
    </g>
  );
});

/** A mark of the same size at any enlargement: `k` is mm for a pixel. */
export const FindingMark = memo(function FindingMark({
  xMm,
  yMm,
  severity,
  k,
}: {
  readonly xMm: number;
  readonly yMm: number;
  readonly severity: "error" | "warning" | "note";
  readonly k: number;
}) {
  return (
    <g transform={at(xMm, yMm)}>
      <path
        className={`mark ${severity}`}
        transform={`scale(${k} ${-k})`}
        d={
          severity === "error"
            ? "M-6 -6H6V6H-6ZM-3 -3L3 3M3 -3L-3 3"
            : severity === "warning"
              ? "M0 -8L8 6H-8ZM0 -3V2M0 3.5V4.5"
              : "M-5 0A5 5 0 1 1 5 0A5 5 0 1 1 -5 0ZM0 -1V3M0 -3V-2.4"
        }
      />
    </g>
  );
});
