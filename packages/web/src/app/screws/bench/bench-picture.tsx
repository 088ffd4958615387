import { type BoxMm, boxOf } from "@pinwright/kernel";
import { useEffect, useRef, useState } from "react";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import type { Entries } from "../../book/desk-client.ts";
import { cornersAt } from "../../layout/scene.ts";
import { pathOf } from "../../layout/shapes.tsx";
import { useWords } from "../../words.tsx";
import { ScrewMap } from "../screw-map.tsx";
import { stepBox } from "../step-box.ts";
import { useMapContent } from "../use-map-content.ts";
import { useScrewBench } from "../use-screw-bench.ts";

/** Signs that are read at arm's length. */
const SIGN_PX = 30;

/** The step's part of the panel as the builder sees it, with a small drawing of where on the panel that is. */
export function BenchPicture({
  steps,
  step,
  panelId,
}: {
  readonly steps: Entries<"stepLines">;
  readonly step: ViewEntry<"stepLines">;
  readonly panelId: string;
}) {
  const panels = useView("layoutPanels", null);
  const panel = panels?.get(panelId);
  return panel === undefined ? (
    <div className="bench-picture" />
  ) : (
    <Picture steps={steps} step={step} panel={panel} />
  );
}

function Picture({
  steps,
  step,
  panel,
}: {
  readonly steps: Entries<"stepLines">;
  readonly step: ViewEntry<"stepLines">;
  readonly panel: ViewEntry<"layoutPanels">;
}) {
  const words = useWords();
  const sheet = useRef<HTMLDivElement>(null);
  const [pickedId, setPicked] = useState<string | null>(null);
  const mirrored = step.side === "under";
  const shown = useMapContent({
    panel,
    side: step.side,
    mirrored,
    steps,
    step,
    driven: Number.POSITIVE_INFINITY,
    typeId: null,
    pickedId,
  });
  const { rig, gestures } = useScrewBench({ scene: shown?.scene ?? null, pickedId, pick: setPicked });
  const fitted = useRef(false);
  const whole = boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0)));
  const around = shown === null ? null : (stepBox(shown.content) ?? whole);
  useEffect(() => {
    if (fitted.current || around === null || shown === null) return;
    fitted.current = true;
    rig.setMirrored(mirrored);
    rig.fit(around);
  });
  return (
    <div className="bench-picture">
      {shown === null ? (
        <p className="dim">{words.common.loading}</p>
      ) : (
        <>
          <ScrewMap content={shown.content} rig={rig} gestures={gestures} sheet={sheet} signPx={SIGN_PX} />
          {whole !== null && around !== null && (
            <Where panel={panel} whole={whole} part={around} mirrored={mirrored} />
          )}
          <p className="bench-side">{words.common.side[step.side]}</p>
        </>
      )}
    </div>
  );
}

/** The whole panel, small, with the part of it that is shown. */
function Where({
  panel,
  whole,
  part,
  mirrored,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly whole: BoxMm;
  readonly part: BoxMm;
  readonly mirrored: boolean;
}) {
  const width = whole.maxXMm - whole.minXMm;
  const height = whole.maxYMm - whole.minYMm;
  const left = mirrored ? -whole.maxXMm : whole.minXMm;
  return (
    <svg className="bench-where" viewBox={`${left} ${-whole.maxYMm} ${width} ${height}`} aria-hidden>
      <g transform={`scale(${mirrored ? -1 : 1} -1)`}>
        <path className="panel" d={pathOf(panel.rings)} />
        <rect
          className="part"
          x={part.minXMm}
          y={part.minYMm}
          width={part.maxXMm - part.minXMm}
          height={part.maxYMm - part.minYMm}
        />
      </g>
    </svg>
  );
}
