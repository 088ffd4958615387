import { memo, type RefObject, useEffect, useRef } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import type { CameraRig } from "../layout/camera-rig.ts";
import type { Gestures } from "../layout/gestures.ts";
import { Ground } from "../layout/ground.tsx";
import type { Layers } from "../layout/layers.ts";
import type { PanelEntries, Side } from "../layout/scene.ts";
import { ItemShape } from "../layout/shapes.tsx";
import { usePick, useWords } from "../words.tsx";
import { ScrewSigns, USUAL_SIGN_PX } from "./screw-signs.tsx";
import type { ShownMarks } from "./shown.ts";

/** What of the layout's drawing lies under the screws. */
const UNDER_SCREWS: Layers = {
  cutouts: true,
  mechanisms: true,
  boards: true,
  devices: true,
  inlines: true,
  fasteners: false,
  lanes: false,
  waypoints: false,
  wires: false,
  labels: false,
  findings: false,
  other: false,
};

/** What is drawn of one panel side. */
export interface MapContent {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly side: Side;
  /** As the builder sees an underside, with x to the left; else as if the panel were of glass. */
  readonly mirrored: boolean;
  /** Items that stand there already, and cutouts. */
  readonly ground: PanelEntries;
  /** Items that this step brings. */
  readonly coming: Entries<"layoutItems">;
  readonly marks: ShownMarks;
  readonly types: Entries<"screwTypes">;
  readonly pickedId: string | null;
}

/** The drawing of a panel side with its screws; moved and enlarged as the layout is. */
export function ScrewMap({
  content,
  rig,
  gestures,
  sheet,
  onKey,
  signPx = USUAL_SIGN_PX,
}: {
  readonly content: MapContent;
  readonly rig: CameraRig;
  readonly gestures: Gestures;
  readonly sheet: RefObject<HTMLDivElement | null>;
  readonly onKey?: (event: React.KeyboardEvent) => void;
  /** Least width of the step's signs on the screen. */
  readonly signPx?: number;
}) {
  const words = useWords();
  const pick = usePick();
  const layer = useRef<SVGSVGElement>(null);
  const ground = useRef<SVGGElement>(null);
  const { panel, side, mirrored, marks, types, pickedId } = content;
  useEffect(() => {
    if (sheet.current === null || layer.current === null || ground.current === null) return;
    const ends = [rig.attach(sheet.current, layer.current, ground.current), gestures.attach(sheet.current)];
    return () => {
      for (const end of ends) end();
    };
  }, [rig, gestures, sheet]);
  return (
    <div
      ref={sheet}
      className={`drawing screw-map ${mirrored ? "under" : "top"}`}
      role="application"
      aria-label={words.screws.map(pick(panel.label, panel.labelZh) || panel.id, words.common.side[side])}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is worked by keyboard
      tabIndex={0}
      onKeyDown={onKey}
    >
      <svg ref={layer} className="ground" aria-hidden>
        <g ref={ground}>
          <g className="standing">
            <Ground panel={panel} entries={content.ground} side={side} layers={UNDER_SCREWS} />
          </g>
          <Coming items={content.coming} side={side} />
          <ScrewSigns
            rig={rig}
            marks={marks}
            types={types}
            mirrored={mirrored}
            pickedId={pickedId}
            signPx={signPx}
          />
        </g>
      </svg>
    </div>
  );
}

/** Items that the step brings, on the side that is looked at. */
const Coming = memo(function Coming({
  items,
  side,
}: {
  readonly items: Entries<"layoutItems">;
  readonly side: Side;
}) {
  return (
    <g className="coming">
      {[...items.values()]
        .filter((item) => item.side === side)
        .map((item) => (
          <ItemShape key={item.id} item={item} />
        ))}
    </g>
  );
});
