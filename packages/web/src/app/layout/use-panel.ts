import { useMemo } from "react";
import { useView } from "../book/desk.tsx";
import type { Layers } from "./layers.ts";
import { type PanelEntries, type Scene, type Side, sceneOf } from "./scene.ts";

/** Everything on one panel, and what of it is on the side that is looked at; null before the first answer. */
export function usePanel(
  panelId: string,
  side: Side,
  layers: Layers,
): { readonly entries: PanelEntries; readonly scene: Scene } | null {
  const items = useView("layoutItems", { panelId });
  const cutouts = useView("layoutCutouts", { panelId });
  const waypoints = useView("layoutWaypoints", { panelId });
  const lanes = useView("layoutLanes", { panelId });
  const entries = useMemo(
    () =>
      items === null || cutouts === null || waypoints === null || lanes === null
        ? null
        : { items, cutouts, waypoints, lanes },
    [items, cutouts, waypoints, lanes],
  );
  return useMemo(
    () => (entries === null ? null : { entries, scene: sceneOf(entries, side, layers) }),
    [entries, side, layers],
  );
}
