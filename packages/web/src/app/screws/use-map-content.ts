import { useMemo } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import type { Layers } from "../layout/layers.ts";
import { type PanelEntries, type Scene, type Side, sceneOf } from "../layout/scene.ts";
import type { MapContent } from "./screw-map.tsx";
import { mountedAt, shownItems, shownMarks } from "./shown.ts";

const NONE = { cutouts: new Map(), waypoints: new Map(), lanes: new Map() } satisfies Partial<PanelEntries>;
/** Only screws can be pointed at. */
const ONLY_SCREWS: Layers = {
  cutouts: false,
  mechanisms: false,
  boards: false,
  devices: false,
  inlines: false,
  fasteners: true,
  lanes: false,
  waypoints: false,
  wires: false,
  labels: false,
  findings: false,
  other: false,
};

/** What a map shows of a step, and what of it can be picked; null before the first answer. */
export function useMapContent({
  panel,
  side,
  mirrored,
  steps,
  step,
  driven,
  typeId,
  pickedId,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly side: Side;
  readonly mirrored: boolean;
  readonly steps: Entries<"stepLines">;
  readonly step: ViewEntry<"stepLines"> | null;
  readonly driven: number;
  readonly typeId: string | null;
  readonly pickedId: string | null;
}): { readonly content: MapContent; readonly scene: Scene } | null {
  const items = useView("layoutItems", { panelId: panel.id });
  const cutouts = useView("layoutCutouts", { panelId: panel.id });
  const all = useView("screwMarks", { panelId: panel.id });
  const types = useView("screwTypes", null);
  const mounted = useMemo(() => mountedAt(steps), [steps]);
  const shown = useMemo(
    () => (items === null ? null : shownItems(items, mounted, step)),
    [items, mounted, step],
  );
  const marks = useMemo(
    () => (all === null ? null : shownMarks(all, side, step, driven, typeId)),
    [all, side, step, driven, typeId],
  );
  const scene = useMemo(() => {
    if (items === null || marks === null) return null;
    const screws = new Map(
      [...marks.before, ...marks.now, ...marks.sought].flatMap(({ id }) => {
        const item = items.get(id);
        return item === undefined ? [] : [[id, item] as const];
      }),
    );
    return sceneOf({ ...NONE, items: screws }, side, ONLY_SCREWS);
  }, [items, marks, side]);
  const ground = useMemo(
    () => (shown === null || cutouts === null ? null : { ...NONE, items: shown.before, cutouts }),
    [shown, cutouts],
  );
  if (shown === null || ground === null || marks === null || types === null || scene === null) return null;
  return {
    content: { panel, side, mirrored, ground, coming: shown.now, marks, types, pickedId },
    scene,
  };
}
