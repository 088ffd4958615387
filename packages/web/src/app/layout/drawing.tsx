import { useEffect, useRef } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import type { CameraRig } from "./camera-rig.ts";
import type { Gestures } from "./gestures.ts";
import { CrossingMarks, Ground, Labels, Marks, Tails } from "./ground.tsx";
import type { Layers } from "./layers.ts";
import { HoverMark, SelectionMarks, Trace } from "./marks.tsx";
import type { PanelEntries, Scene, Side } from "./scene.ts";
import { ScreenOverlay } from "./screen-overlay.tsx";

/** The drawing itself. It is moved and dragged without React; React draws what is on it. */
export function Drawing({
  panel,
  side,
  entries,
  scene,
  layers,
  selected,
  rig,
  gestures,
  tool,
  onKey,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly side: Side;
  readonly entries: PanelEntries;
  readonly scene: Scene;
  readonly layers: Layers;
  readonly selected: readonly string[];
  readonly rig: CameraRig;
  readonly gestures: Gestures;
  readonly tool: string;
  readonly onKey: (event: React.KeyboardEvent) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const sheet = useRef<HTMLDivElement>(null);
  const layer = useRef<SVGSVGElement>(null);
  const ground = useRef<SVGGElement>(null);
  const tails = useView("layoutTails", { panelId: panel.id });
  const crossings = useView("layoutCrossings", { panelId: panel.id });
  const trace = useView("layoutTrace", { panelId: panel.id, ids: selected });
  const findings = useView("layoutFindings", { panelId: panel.id });
  useEffect(() => {
    if (sheet.current === null || layer.current === null || ground.current === null) return;
    const ends = [rig.attach(sheet.current, layer.current, ground.current), gestures.attach(sheet.current)];
    return () => {
      for (const end of ends) end();
    };
  }, [rig, gestures]);
  // What React draws during a drag stands where the drag began or where the worker is; the drag knows better.
  useEffect(() => gestures.session?.draw());
  return (
    <div
      ref={sheet}
      className={`drawing ${side} tool-${tool}`}
      role="application"
      aria-label={words.layout.drawing(pick(panel.label, panel.labelZh) || panel.id, words.common.side[side])}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is worked by keyboard
      tabIndex={0}
      onKeyDown={onKey}
    >
      <svg ref={layer} className="ground" aria-hidden>
        <g ref={ground}>
          <Ground panel={panel} entries={entries} side={side} layers={layers} />
          {layers.waypoints && crossings !== null && (
            <CrossingMarks crossings={crossings} entries={entries} side={side} />
          )}
          {layers.wires && tails !== null && <Tails tails={tails} side={side} />}
          {trace !== null && <Trace trace={trace} side={side} />}
          <SelectionMarks scene={scene} selected={selected} />
          <HoverMark gestures={gestures} scene={scene} />
          {layers.labels && <Labels rig={rig} scene={scene} side={side} layers={layers} />}
          {layers.findings && findings !== null && <Marks rig={rig} findings={findings} side={side} />}
        </g>
      </svg>
      <svg className="over" aria-hidden>
        <ScreenOverlay rig={rig} gestures={gestures} />
      </svg>
    </div>
  );
}
