import { memo, useSyncExternalStore } from "react";
import type { Entries } from "../book/desk-client.ts";
import type { Gestures } from "./gestures.ts";
import type { Scene, Side, Target } from "./scene.ts";
import { dotOf } from "./shapes.tsx";

function Outline({ target, className }: { readonly target: Target; readonly className: string }) {
  const { ring, line, ends, xMm, yMm } = target;
  if (line !== null)
    return (
      <line
        className={className}
        data-from={ends?.[0]}
        data-to={ends?.[1]}
        x1={line[0].xMm}
        y1={line[0].yMm}
        x2={line[1].xMm}
        y2={line[1].yMm}
      />
    );
  if (ring === null || ring.length < 3)
    return <path className={`${className} dot`} data-moves={target.id} d={dotOf(xMm, yMm)} />;
  const d = `M${ring.map((p) => `${p.xMm} ${p.yMm}`).join("L")}Z`;
  return <path className={className} data-moves={target.id} d={d} />;
}

/** Outlines round what is selected. */
export const SelectionMarks = memo(function SelectionMarks({
  scene,
  selected,
}: {
  readonly scene: Scene;
  readonly selected: readonly string[];
}) {
  return selected.map((id) => {
    const target = scene.targets.get(id);
    return target === undefined ? null : (
      <Outline key={`${id} ${target.xMm} ${target.yMm}`} target={target} className="chosen" />
    );
  });
});

/** Outline round what is pointed at. */
export function HoverMark({ gestures, scene }: { readonly gestures: Gestures; readonly scene: Scene }) {
  const { hoverId } = useSyncExternalStore(gestures.overlay.subscribe, gestures.overlay.get);
  const target = hoverId === null ? undefined : scene.targets.get(hoverId);
  return target === undefined ? null : <Outline target={target} className="hovered" />;
}

/** The way that wires of what is selected take. */
export const Trace = memo(function Trace({
  trace,
  side,
}: {
  readonly trace: Entries<"layoutTrace">;
  readonly side: Side;
}) {
  return [...trace].map(([key, part]) => {
    if (part.side !== side) return null;
    if ("fromXMm" in part)
      return (
        <line
          key={key}
          className={`trace ${part.kind}`}
          x1={part.fromXMm}
          y1={part.fromYMm}
          x2={part.toXMm}
          y2={part.toYMm}
        />
      );
    return <path key={key} className={`trace-spot ${part.kind}`} d={dotOf(part.xMm, part.yMm)} />;
  });
});
