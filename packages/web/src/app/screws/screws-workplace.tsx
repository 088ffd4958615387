import { boxOf } from "@pinwright/kernel";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { zoomed } from "../layout/geometry/camera.ts";
import { cornersAt, type Side } from "../layout/scene.ts";
import { usePick, useWords } from "../words.tsx";
import { MapBar } from "./map-bar.tsx";
import { useMapKeys } from "./map-keys.ts";
import { PlayBar } from "./play-bar.tsx";
import { ScrewMap } from "./screw-map.tsx";
import { ScrewsSide } from "./screws-side.tsx";
import { stepBox } from "./step-box.ts";
import { StepList } from "./step-list.tsx";
import { useMapContent } from "./use-map-content.ts";
import { usePlay } from "./use-play.ts";
import { useScrewBench } from "./use-screw-bench.ts";
import { benchAddress, type ScrewsAt, type ScrewsPlace } from "./use-screws-place.ts";
import { useTurned } from "./use-turned.ts";

type Step = ViewEntry<"stepLines">;

/** On a narrower window the list would take from the drawing what it needs. */
const LIST_FROM_PX = 1200;
/** Up to here the list lies over the drawing: whoever picked a step wants to see it. */
const LIST_OVER_PX = 900;

/** The steps at the left, the panel side with its screws, and what is known of what is picked. */
export function ScrewsWorkplace({
  panels,
  steps,
  place,
  panelId,
}: {
  readonly panels: Entries<"layoutPanels">;
  readonly steps: Entries<"stepLines">;
  readonly place: ScrewsPlace;
  readonly panelId: string;
}) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const { go, screwId, typeId } = place;
  const order = useMemo(() => [...steps.values()], [steps]);
  const step = steps.get(place.stepId ?? "") ?? order[0] ?? null;
  const index = step === null ? 0 : order.indexOf(step);
  const [fromTop, setFromTop] = useState(false);
  const [listShown, setListShown] = useState(() => innerWidth >= LIST_FROM_PX);
  const now = useRef({ panelId, side: place.side });
  now.current = { panelId, side: place.side };
  const at: ScrewsAt = { panelId, side: place.side, stepId: step?.id ?? null, screwId, typeId };

  const toStep = useCallback(
    (wanted: Step | undefined) => {
      if (wanted === undefined) return;
      const { panelId: here, side } = now.current;
      const lies = wanted.panelId !== null && panels.has(wanted.panelId);
      go({
        panelId: lies ? (wanted.panelId ?? here) : here,
        side: lies ? wanted.side : side,
        stepId: wanted.id,
        screwId: null,
        typeId: null,
      });
    },
    [go, panels],
  );
  const toIndex = useCallback((next: number) => toStep(order[next]), [toStep, order]);
  const chooseStep = useCallback(
    (id: string) => {
      toStep(steps.get(id));
      if (innerWidth <= LIST_OVER_PX) setListShown(false);
    },
    [toStep, steps],
  );
  const screws = useMemo(() => order.map((one) => one.fastenerIds.length + one.recheckIds.length), [order]);
  const play = usePlay(index, screws, toIndex);

  const sheet = useRef<HTMLDivElement>(null);
  const wanted = { panelId, side: place.side, mirrored: place.side === "under" && !fromTop, step };
  const turned = useTurned(wanted, `${panelId} ${place.side} ${fromTop}`, sheet);
  const panel = panels.get(turned.panelId) ?? panels.values().next().value;
  const shown = useMapContent({
    panel: panel ?? NO_PANEL,
    side: turned.side,
    mirrored: turned.mirrored,
    steps,
    step: turned.step,
    driven: play.driven,
    typeId,
    pickedId: screwId,
  });
  const pickScrew = useCallback(
    (id: string | null) => go({ ...now.current, stepId: step?.id ?? null, screwId: id, typeId }),
    [go, step, typeId],
  );
  const { rig, gestures } = useScrewBench({
    scene: shown?.scene ?? null,
    pickedId: screwId,
    pick: pickScrew,
  });

  const fit = useCallback(() => {
    const box = boxOf((panel?.rings ?? []).flatMap((ring) => cornersAt(ring, 0, 0)));
    if (box !== null) rig.fit(box);
  }, [panel, rig]);
  const fitStep = (): void => {
    const box = shown === null ? null : stepBox(shown.content);
    if (box === null) fit();
    else rig.fit(box);
  };
  const ready = shown !== null;
  const fitted = useRef("");
  useEffect(() => {
    const key = `${turned.panelId} ${turned.side} ${turned.mirrored}`;
    if (!ready || fitted.current === key) return;
    fitted.current = key;
    rig.setMirrored(turned.mirrored);
    fit();
  }, [ready, turned.panelId, turned.side, turned.mirrored, rig, fit]);

  const zoom = (factor: number): void =>
    rig.set(zoomed(rig.now, factor, { x: rig.size.width / 2, y: rig.size.height / 2 }));
  const turnOver = (): void => go({ ...at, side: place.side === "top" ? "under" : "top" });
  const onKey = useMapKeys({
    rig,
    zoom,
    fit,
    fitStep,
    turnOver,
    play,
    index,
    clear: () => go({ ...at, screwId: null, typeId: null }),
  });
  const about = useOne("screwAbout", { id: screwId ?? "" });
  const types = useView("screwTypes", null);
  const hasStep = step !== null;
  const elsewhere = step !== null && (step.panelId !== panelId || step.side !== place.side);
  return (
    <div className={listShown ? "layout screws with-list" : "layout screws"}>
      <MapBar
        panels={panels}
        panelId={panelId}
        side={place.side}
        go={(to: string, side: Side) => go({ ...at, panelId: to, side, screwId: null })}
        fromTop={fromTop}
        setFromTop={setFromTop}
        zoom={zoom}
        fit={fit}
        fitStep={fitStep}
        listShown={listShown}
        showList={() => setListShown(!listShown)}
        bench={step === null ? null : benchAddress(bookId, "all", step.number)}
      />
      {listShown && <StepList steps={order} currentId={step?.id ?? null} choose={chooseStep} />}
      <div className="layout-middle screws-middle">
        <div className="screws-map-frame">
          {shown === null ? (
            <p className="page dim">{words.common.loading}</p>
          ) : (
            <ScrewMap content={shown.content} rig={rig} gestures={gestures} sheet={sheet} onKey={onKey} />
          )}
          {elsewhere && (
            <p className="tool-hint" role="status">
              {step.panelId === null
                ? step.kind === "bench"
                  ? words.screws.onBench
                  : words.screws.onNoPanel
                : words.screws.elsewhere(
                    pick(
                      panels.get(step.panelId)?.label ?? step.panelId,
                      panels.get(step.panelId)?.labelZh ?? "",
                    ),
                    words.common.side[step.side],
                  )}
            </p>
          )}
        </div>
        {hasStep && (
          <PlayBar play={play} index={index} count={order.length} title={pick(step.label, step.labelZh)} />
        )}
      </div>
      <ScrewsSide
        step={step}
        about={screwId === null ? undefined : about}
        types={types ?? new Map()}
        typeId={typeId}
        here={shown?.content.marks.sought.length ?? 0}
        chooseType={(id) => go({ ...at, typeId: id })}
        closeScrew={() => go({ ...at, screwId: null })}
      />
    </div>
  );
}

/** Stands in for a panel until there is one: nothing is watched for it. */
const NO_PANEL: ViewEntry<"layoutPanels"> = {
  id: "",
  label: "",
  labelZh: "",
  purpose: "",
  widthMm: 1,
  heightMm: 1,
  thicknessMm: 1,
  rings: [],
  top: 0,
  under: 0,
};
