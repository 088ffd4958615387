import { memo, useMemo, useSyncExternalStore } from "react";
import type { Entries } from "../book/desk-client.ts";
import { usePick } from "../words.tsx";
import type { CameraRig } from "./camera-rig.ts";
import { scaleOfStep } from "./geometry/camera.ts";
import { labelSizeMm, placedLabels } from "./geometry/labels.ts";
import type { Layers } from "./layers.ts";
import type { PanelEntries, Scene, Side } from "./scene.ts";
import {
  CutoutShape,
  dotOf,
  FindingMark,
  ItemShape,
  LabelShape,
  LaneShape,
  PanelShape,
  TailShape,
  WaypointShape,
} from "./shapes.tsx";

/**
 * A thing at another place is another element, so that the one that was dragged goes away with its transform in the
 * moment in which the book says where it is now.
 */
const keyOf = ({
  id,
  xMm,
  yMm,
}: {
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
}): string => `${id} ${xMm} ${yMm}`;

/** What lies on the panel, from the wood up. Everything is in panel millimetres. */
export const Ground = memo(function Ground({
  panel,
  entries,
  side,
  layers,
}: {
  readonly panel: Parameters<typeof PanelShape>[0]["panel"];
  readonly entries: PanelEntries;
  readonly side: Side;
  readonly layers: Layers;
}) {
  const { items, cutouts, waypoints, lanes } = entries;
  const own = [...items.values()].filter((item) => item.side === side);
  const of = (kind: string) => own.filter((item) => item.kind === kind);
  return (
    <>
      <PanelShape panel={panel} />
      {layers.other && (
        <g className="other-side">
          {[...items.values()]
            .filter((item) => item.side !== side && item.kind !== "fastener")
            .map((item) => (
              <ItemShape key={keyOf(item)} item={item} />
            ))}
        </g>
      )}
      {layers.cutouts &&
        [...cutouts.values()]
          .filter((cutout) => cutout.side === side || cutout.depthMm === null)
          .map((cutout) => <CutoutShape key={keyOf(cutout)} cutout={cutout} />)}
      {layers.mechanisms && of("mechanism").map((item) => <ItemShape key={keyOf(item)} item={item} />)}
      {layers.boards && of("board").map((item) => <ItemShape key={keyOf(item)} item={item} />)}
      {layers.devices && of("device").map((item) => <ItemShape key={keyOf(item)} item={item} />)}
      {layers.inlines && of("inline").map((item) => <ItemShape key={keyOf(item)} item={item} />)}
      {layers.fasteners && of("fastener").map((item) => <ItemShape key={keyOf(item)} item={item} />)}
      {layers.lanes &&
        [...lanes.values()].map((lane) => {
          const from = waypoints.get(lane.from);
          const to = waypoints.get(lane.to);
          if (lane.side !== side || from === undefined || to === undefined) return null;
          return (
            <LaneShape
              key={lane.id}
              lane={lane}
              fromXMm={from.xMm}
              fromYMm={from.yMm}
              toXMm={to.xMm}
              toYMm={to.yMm}
              withLoad={layers.wires}
            />
          );
        })}
      {layers.waypoints &&
        [...waypoints.values()]
          .filter((waypoint) => waypoint.side === side)
          .map((waypoint) => <WaypointShape key={keyOf(waypoint)} waypoint={waypoint} />)}
    </>
  );
});

/** Waypoints from which a way leads on to another panel or side. */
export const CrossingMarks = memo(function CrossingMarks({
  crossings,
  entries,
  side,
}: {
  readonly crossings: Entries<"layoutCrossings">;
  readonly entries: PanelEntries;
  readonly side: Side;
}) {
  const here = new Set([...crossings.values()].filter((one) => one.side === side).map((one) => one.here));
  return [...here].map((id) => {
    const waypoint = entries.waypoints.get(id);
    if (waypoint === undefined) return null;
    const { xMm, yMm } = waypoint;
    return <path key={keyOf(waypoint)} className="crosses" data-moves={id} d={dotOf(xMm, yMm)} />;
  });
});

/** Tails from the lanes to housings and terminals. */
export const Tails = memo(function Tails({
  tails,
  side,
}: {
  readonly tails: Entries<"layoutTails">;
  readonly side: Side;
}) {
  return [...tails.values()]
    .filter((tail) => tail.side === side)
    .map((tail) => <TailShape key={tail.id} tail={tail} />);
});

/** Weight of a thing's name: what is large and rare is named first. */
const RANKS: Readonly<Record<string, number>> = { boards: 0, mechanisms: 1, inlines: 2, devices: 3 };

/** Names that find room at the present enlargement. */
export const Labels = memo(function Labels({
  rig,
  scene,
  side,
  layers,
}: {
  readonly rig: CameraRig;
  readonly scene: Scene;
  readonly side: Side;
  readonly layers: Layers;
}) {
  const pick = usePick();
  const step = useSyncExternalStore(rig.step.subscribe, rig.step.get);
  const placed = useMemo(() => {
    const wanted = [...scene.targets.values()].flatMap((target) => {
      const rank = RANKS[target.layer];
      if (rank === undefined || !layers[target.layer]) return [];
      const text = pick(target.label, target.labelZh);
      return [{ id: target.id, text, xMm: target.xMm, yMm: target.yMm, box: target.box, rank }];
    });
    return placedLabels(wanted, step);
  }, [scene, layers, step, pick]);
  return (
    <g className="names" style={{ fontSize: labelSizeMm(step) }}>
      {placed.map((label) => (
        <LabelShape key={keyOf(label)} label={label} mirrored={side === "under"} />
      ))}
    </g>
  );
});

const GRAVITY = { error: 0, warning: 1, note: 2 } as const;

/** A mark where a finding is; several at one place are one mark, of the gravest. */
export const Marks = memo(function Marks({
  rig,
  findings,
  side,
}: {
  readonly rig: CameraRig;
  readonly findings: Entries<"layoutFindings">;
  readonly side: Side;
}) {
  const step = useSyncExternalStore(rig.step.subscribe, rig.step.get);
  const scale = scaleOfStep(step);
  // From afar marks shrink, so that they do not hide what they are about.
  const k = Math.min(1, Math.max(0.5, Math.sqrt(scale))) / scale;
  const places = new Map<string, { xMm: number; yMm: number; severity: "error" | "warning" | "note" }>();
  for (const { finding, side: own, xMm, yMm } of findings.values()) {
    if (own !== side || finding.accepted !== null) continue;
    const key = `${xMm} ${yMm}`;
    const before = places.get(key);
    if (before === undefined || GRAVITY[finding.severity] < GRAVITY[before.severity])
      places.set(key, { xMm, yMm, severity: finding.severity });
  }
  return [...places].map(([key, place]) => <FindingMark key={key} {...place} k={k} />);
});
