import { boxOf } from "@pinwright/kernel";
import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import type { CameraRig } from "./camera-rig.ts";
import { cornersAt, type Scene, type Side } from "./scene.ts";

/** What brings things into sight. */
export interface Showing {
  /** The whole panel. */
  readonly fit: () => void;
  /** Things and ways of wires by their ids; false when none of them is on this side. */
  readonly show: (ids: readonly string[]) => boolean;
}

/**
 * Shows a panel or side whole when it is entered, and what a link led to as soon as it is on the drawing.
 * @param toShow what a link led to and was not shown yet
 */
export function useShowing({
  panel,
  side,
  selected,
  scene,
  rig,
  toShow,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly side: Side;
  readonly selected: readonly string[];
  readonly scene: Scene | null;
  readonly rig: CameraRig;
  readonly toShow: RefObject<readonly string[]>;
}): Showing {
  const trace = useView("layoutTrace", { panelId: panel.id, ids: selected });
  const panelBox = useMemo(() => boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0))), [panel.rings]);
  const fit = useCallback(() => {
    if (panelBox !== null) rig.fit(panelBox);
  }, [rig, panelBox]);
  const show = useCallback(
    (ids: readonly string[]): boolean => {
      const points = ids.flatMap((id) => {
        const box = scene?.targets.get(id)?.box;
        return box === undefined
          ? []
          : [
              { xMm: box.minXMm, yMm: box.minYMm },
              { xMm: box.maxXMm, yMm: box.maxYMm },
            ];
      });
      const spans = [...(trace?.values() ?? [])].flatMap((part) =>
        part.side !== side
          ? []
          : "fromXMm" in part
            ? [
                { xMm: part.fromXMm, yMm: part.fromYMm },
                { xMm: part.toXMm, yMm: part.toYMm },
              ]
            : [part],
      );
      const box = boxOf(points.length > 0 ? points : spans);
      if (box !== null) rig.show(box);
      return box !== null;
    },
    [scene, trace, side, rig],
  );
  const fittedFor = useRef("");
  useEffect(() => {
    const key = `${panel.id} ${side}`;
    if (fittedFor.current === key || scene === null) return;
    fittedFor.current = key;
    rig.setMirrored(side === "under");
    fit();
  }, [panel.id, side, scene, rig, fit]);
  useEffect(() => {
    if (scene === null || trace === null || toShow.current.length === 0) return;
    if (show(toShow.current)) toShow.current = [];
  }, [scene, trace, toShow, show]);
  return { fit, show };
}
