import type { PointMm } from "@pinwright/kernel";
import type { Edit } from "../../worker/protocol.ts";
import type { Scene } from "./scene.ts";

export type Tool = "select" | "lasso" | "measure" | "waypoint" | "lane" | "crossing";

/** What the page lends to the gestures, always as it is now. */
export interface GestureHost {
  readonly scene: () => Scene;
  readonly selected: () => readonly string[];
  readonly tool: () => Tool;
  readonly mayEdit: () => boolean;
  /** 0: no grid. */
  readonly gridMm: () => number;
  readonly select: (ids: readonly string[]) => void;
  readonly preview: (edit: Edit, movedAt: number) => void;
  readonly giveUp: () => void;
  /** Keeps what a drag did; false when it could not be kept. */
  readonly keep: (edit: Edit, count: number) => Promise<boolean>;
  readonly placeWaypoint: (at: PointMm) => void;
  /** A lane from a waypoint to another, or to a new one. */
  readonly drawLane: (fromId: string, to: string | PointMm) => void;
  /** A waypoint is one end of a crossing; the other end is on another panel or side. */
  readonly endCrossing: (waypointId: string) => void;
}
