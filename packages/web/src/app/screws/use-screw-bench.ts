import { useRef, useState } from "react";
import { CameraRig } from "../layout/camera-rig.ts";
import { HitIndex } from "../layout/geometry/hit.ts";
import type { GestureHost } from "../layout/gesture-host.ts";
import { Gestures } from "../layout/gestures.ts";
import type { Scene } from "../layout/scene.ts";

const EMPTY: Scene = { targets: new Map(), hits: new HitIndex([]) };

/** Camera and gestures of a drawing on which nothing can be moved; they outlive renders and see the newest one. */
export function useScrewBench(now: {
  readonly scene: Scene | null;
  readonly pickedId: string | null;
  readonly pick: (id: string | null) => void;
}): { readonly rig: CameraRig; readonly gestures: Gestures } {
  const newest = useRef(now);
  newest.current = now;
  const [bench] = useState(() => {
    const rig = new CameraRig();
    const host: GestureHost = {
      scene: () => newest.current.scene ?? EMPTY,
      selected: () => (newest.current.pickedId === null ? [] : [newest.current.pickedId]),
      tool: () => "select",
      mayEdit: () => false,
      gridMm: () => 0,
      select: (ids) => newest.current.pick(ids[0] ?? null),
      preview: () => undefined,
      giveUp: () => undefined,
      keep: async () => false,
      placeWaypoint: () => undefined,
      drawLane: () => undefined,
      endCrossing: () => undefined,
    };
    return { rig, gestures: new Gestures(rig, host) };
  });
  return bench;
}
