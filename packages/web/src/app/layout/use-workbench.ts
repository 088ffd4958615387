import type { PointMm } from "@pinwright/kernel";
import { useEffect, useRef, useState } from "react";
import type { Edit } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { CameraRig } from "./camera-rig.ts";
import { HitIndex } from "./geometry/hit.ts";
import type { GestureHost, Tool } from "./gesture-host.ts";
import { Gestures } from "./gestures.ts";
import { Nudges } from "./nudges.ts";
import { PreviewPump } from "./preview-pump.ts";
import type { Scene } from "./scene.ts";

/** What the tools look at, as it is in the newest render. */
export interface WorkbenchNow {
  readonly scene: Scene | null;
  readonly selected: readonly string[];
  readonly tool: Tool;
  readonly mayEdit: boolean;
  readonly gridMm: number;
  readonly select: (ids: readonly string[]) => void;
  readonly placeWaypoint: (at: PointMm) => void;
  readonly drawLane: (fromId: string, to: string | PointMm) => void;
  readonly endCrossing: (waypointId: string) => void;
  readonly failed: (error: unknown) => void;
}

/** Camera, gestures and arrow keys of one drawing; they outlive renders and always see the newest one. */
export interface Workbench {
  readonly rig: CameraRig;
  readonly gestures: Gestures;
  readonly nudges: Nudges;
}

const EMPTY: Scene = { targets: new Map(), hits: new HitIndex([]) };

export function useWorkbench(now: WorkbenchNow): Workbench {
  const desk = useDesk();
  const words = useWords();
  const newest = useRef({ ...now, words });
  newest.current = { ...now, words };
  const [pump] = useState(() => new PreviewPump((at, edit) => desk.preview(at, edit)));
  const [bench] = useState((): Workbench => {
    const rig = new CameraRig();
    const host: GestureHost = {
      scene: () => newest.current.scene ?? EMPTY,
      selected: () => newest.current.selected,
      tool: () => newest.current.tool,
      mayEdit: () => newest.current.mayEdit,
      gridMm: () => newest.current.gridMm,
      select: (ids) => newest.current.select(ids),
      placeWaypoint: (at) => newest.current.placeWaypoint(at),
      drawLane: (fromId, to) => newest.current.drawLane(fromId, to),
      endCrossing: (waypointId) => newest.current.endCrossing(waypointId),
      preview: (edit, movedAt) => pump.show(edit, movedAt),
      giveUp: () => pump.end(true),
      keep: async (edit: Edit, count) => {
        pump.end(false);
        const first = edit.kind === "place" ? (edit.places[0]?.id ?? "") : "";
        try {
          await desk.edit(newest.current.words.layout.notes.move(first, count), edit);
          return true;
        } catch (error) {
          pump.end(true);
          newest.current.failed(error);
          return false;
        }
      },
    };
    const gestures = new Gestures(rig, host);
    return { rig, gestures, nudges: new Nudges(gestures, host) };
  });
  useEffect(() => {
    desk.onPreviewed = (at) => {
      pump.heard(at);
      bench.gestures.session?.draw();
    };
    return () => {
      desk.onPreviewed = null;
    };
  }, [desk, pump, bench]);
  return bench;
}
