import type { PointMm } from "@pinwright/kernel";
import { useSyncExternalStore } from "react";
import { useWords } from "../words.tsx";
import type { CameraRig } from "./camera-rig.ts";
import { type Camera, toScreen } from "./geometry/camera.ts";
import type { Guide } from "./geometry/snap.ts";
import type { Gestures } from "./gestures.ts";

/** What is drawn over the panel in pixels: guides, distances, the box that is being drawn. */
export function ScreenOverlay({ rig, gestures }: { readonly rig: CameraRig; readonly gestures: Gestures }) {
  const words = useWords();
  const camera = useSyncExternalStore(rig.camera.subscribe, rig.camera.get);
  const { lasso, guides, dragged, measure, lane } = useSyncExternalStore(
    gestures.overlay.subscribe,
    gestures.overlay.get,
  );
  const corner = lasso === null ? null : toScreen(camera, { xMm: lasso.minXMm, yMm: lasso.maxYMm });
  const opposite = lasso === null ? null : toScreen(camera, { xMm: lasso.maxXMm, yMm: lasso.minYMm });
  const label = dragged === null ? null : toScreen(camera, dragged);
  return (
    <g className="overlay">
      {corner !== null && opposite !== null && (
        <rect
          className="lasso"
          x={Math.min(corner.x, opposite.x)}
          y={corner.y}
          width={Math.abs(opposite.x - corner.x)}
          height={opposite.y - corner.y}
        />
      )}
      {guides.map((guide) => (
        <GuideLine key={guide.axis} guide={guide} camera={camera} />
      ))}
      {dragged !== null && label !== null && (
        <text className="tag" x={label.x + 16} y={label.y - 16}>
          {words.layout.at(dragged.xMm, dragged.yMm)}
        </text>
      )}
      {lane !== null && <Line className="draft" from={lane.from} to={lane.to} camera={camera} />}
      {measure !== null && (
        <Measure from={measure.from} to={measure.to} camera={camera} fixed={measure.fixed} />
      )}
    </g>
  );
}

function Line({
  from,
  to,
  camera,
  className,
}: {
  readonly from: PointMm;
  readonly to: PointMm;
  readonly camera: Camera;
  readonly className: string;
}) {
  const a = toScreen(camera, from);
  const b = toScreen(camera, to);
  return <line className={className} x1={a.x} y1={a.y} x2={b.x} y2={b.y} />;
}

function GuideLine({ guide, camera }: { readonly guide: Guide; readonly camera: Camera }) {
  const words = useWords();
  const { axis, atMm, fromMm, toMm, gapMm } = guide;
  const from = axis === "x" ? { xMm: atMm, yMm: fromMm } : { xMm: fromMm, yMm: atMm };
  const to = axis === "x" ? { xMm: atMm, yMm: toMm } : { xMm: toMm, yMm: atMm };
  const middle = toScreen(camera, { xMm: (from.xMm + to.xMm) / 2, yMm: (from.yMm + to.yMm) / 2 });
  return (
    <>
      <Line className="guide" from={from} to={to} camera={camera} />
      {gapMm > 0 && (
        <text className="tag" x={middle.x + 4} y={middle.y - 4}>
          {words.layout.mm(gapMm)}
        </text>
      )}
    </>
  );
}

function Measure({
  from,
  to,
  camera,
  fixed,
}: {
  readonly from: PointMm;
  readonly to: PointMm;
  readonly camera: Camera;
  readonly fixed: boolean;
}) {
  const words = useWords();
  const dx = Math.abs(to.xMm - from.xMm);
  const dy = Math.abs(to.yMm - from.yMm);
  const corner = { xMm: to.xMm, yMm: from.yMm };
  const end = toScreen(camera, to);
  return (
    <>
      <Line className="measure leg" from={from} to={corner} camera={camera} />
      <Line className="measure leg" from={corner} to={to} camera={camera} />
      <Line className={fixed ? "measure fixed" : "measure"} from={from} to={to} camera={camera} />
      <text className="tag" x={end.x + 12} y={end.y - 12}>
        {words.layout.measured(Math.hypot(dx, dy), dx, dy)}
      </text>
    </>
  );
}
