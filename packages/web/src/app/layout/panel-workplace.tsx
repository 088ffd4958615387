import type { PointMm } from "@pinwright/kernel";
import { type RefObject, useCallback, useEffect, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { addLane, addWaypoint, remove, rotate, type Stage } from "./actions.ts";
import { BringIn } from "./bring-in.tsx";
import { CrossingDialog } from "./crossing-form.tsx";
import { Drawing } from "./drawing.tsx";
import { zoomed } from "./geometry/camera.ts";
import type { Tool } from "./gesture-host.ts";
import { Help } from "./help.tsx";
import { ItemList } from "./item-list.tsx";
import { useLayers } from "./layers.ts";
import { PasteDialog, useClipboard } from "./paste.tsx";
import type { Side } from "./scene.ts";
import { SidePanel } from "./side-panel.tsx";
import { StatusLine } from "./status-line.tsx";
import { ToolHint } from "./tool-hint.tsx";
import { Toolbar } from "./toolbar.tsx";
import { useCrossing } from "./use-crossing.ts";
import { useKeys } from "./use-keys.ts";
import { usePanel } from "./use-panel.ts";
import type { LayoutPlace } from "./use-place.ts";
import { useShowing } from "./use-showing.ts";
import { useWorkbench } from "./use-workbench.ts";

const GRID_KEY = "pinwright.layout.grid";
const LIST_KEY = "pinwright.layout.list";
/** On a narrower window the list would take from the drawing what it needs. */
const LIST_FROM_PX = 1200;

/** One panel: the drawing, the list beside it, and what is selected. */
export function PanelWorkplace({
  panel,
  panels,
  place,
  toShow,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly panels: Entries<"layoutPanels">;
  readonly place: LayoutPlace;
  readonly toShow: RefObject<readonly string[]>;
}) {
  const words = useWords();
  const desk = useDesk();
  const mayEdit = useMay("designer");
  const { side, selected, select, go } = place;
  const [layers, setLayer] = useLayers();
  const [tool, setTool] = useState<Tool>("select");
  const [gridMm, setGridMm] = useState(() => Number(localStorage.getItem(GRID_KEY) ?? "0.5"));
  const [listShown, setListShown] = useState(
    () => localStorage.getItem(LIST_KEY) !== "no" && innerWidth >= LIST_FROM_PX,
  );
  const [message, setMessage] = useState("");
  const [help, setHelp] = useState(false);
  const [bringingIn, setBringingIn] = useState(false);
  const shown = usePanel(panel.id, side, layers);
  const scene = shown?.scene ?? null;
  const stage: Stage | null = scene === null ? null : { desk, words, scene, panelId: panel.id, side };

  useEffect(() => {
    if (message === "") return;
    const timer = setTimeout(() => setMessage(""), 8_000);
    return () => clearTimeout(timer);
  }, [message]);

  const trouble = useTrouble();
  const told = useCallback((error: unknown) => setMessage(trouble(error)), [trouble]);
  const crossing = useCrossing();
  const run = (work: Promise<unknown> | undefined): void => void work?.catch(told);
  const bench = useWorkbench({
    scene,
    selected,
    tool,
    mayEdit,
    gridMm,
    select,
    failed: told,
    placeWaypoint: (at: PointMm) =>
      run(stage === null ? undefined : addWaypoint(stage, at).then((id) => select([id]))),
    drawLane: (fromId, to) => {
      if (stage === null) return;
      const diameters = [...(shown?.entries.lanes.values() ?? [])].map((lane) => lane.maxMm);
      run(addLane(stage, fromId, to, diameters).then(({ laneId }) => select([laneId])));
    },
    endCrossing: (id) => {
      crossing.take({ id, panelId: panel.id, side });
      select([id]);
    },
  });
  const { rig, gestures, nudges } = bench;

  const { fit, show } = useShowing({ panel, side, selected, scene, rig, toShow });
  useEffect(() => () => void nudges.keep(), [nudges]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whatever else is selected next, a nudge is kept before
  useEffect(() => void nudges.keep(), [selected, nudges]);

  const chooseTool = (next: Tool): void => {
    gestures.cancel();
    crossing.forget();
    setTool(next);
  };
  const clipboard = useClipboard();
  const choose = useCallback(
    (id: string, add: boolean) => {
      select(add ? (selected.includes(id) ? selected.filter((one) => one !== id) : [...selected, id]) : [id]);
      show([id]);
    },
    [select, selected, show],
  );
  const copy = () => {
    if (scene === null) return;
    const count = clipboard.copy(scene, selected, panel.id);
    setMessage(count === 0 ? words.layout.copy.nothing : words.layout.copy.copied(count));
  };
  const actions = {
    select,
    go: (to: string, toSide: Side, ids: readonly string[]) => go(to, toSide, ids),
    rotate: () => run(stage === null ? undefined : rotate(stage, selected, 90)),
    copy,
    cross: (id: string) => {
      setTool("crossing");
      crossing.take({ id, panelId: panel.id, side });
    },
    crossingFrom: crossing.from,
    remove: () =>
      run(stage === null ? undefined : remove(stage, selected).then((done) => done && select([]))),
  };
  const onKey = useKeys({
    bench,
    stage,
    selected,
    side,
    mayEdit,
    tool,
    setTool: chooseTool,
    select,
    fit,
    fitChosen: () => void show(selected),
    turnOver: () => go(panel.id, side === "top" ? "under" : "top"),
    copy,
    paste: () => clipboard.open(),
    remove: actions.remove,
    rotate: (byDeg) => run(stage === null ? undefined : rotate(stage, selected, byDeg)),
    help: () => setHelp(true),
    choose,
  });
  return (
    <div className={listShown ? "layout with-list" : "layout"}>
      <Toolbar
        panels={panels}
        panelId={panel.id}
        side={side}
        go={(to, toSide) => go(to, toSide)}
        tool={tool}
        setTool={chooseTool}
        mayEdit={mayEdit}
        gridMm={gridMm}
        setGridMm={(mm) => {
          localStorage.setItem(GRID_KEY, String(mm));
          setGridMm(mm);
        }}
        layers={layers}
        setLayer={setLayer}
        zoom={(factor) => rig.set(zoomed(rig.now, factor, { x: rig.size.width / 2, y: rig.size.height / 2 }))}
        fit={fit}
        listShown={listShown}
        showList={() => {
          localStorage.setItem(LIST_KEY, listShown ? "no" : "yes");
          setListShown(!listShown);
        }}
        help={() => setHelp(true)}
        bringIn={() => setBringingIn(true)}
        canPaste={mayEdit && clipboard.rows.length > 0}
        paste={clipboard.open}
      />
      {listShown && scene !== null && <ItemList scene={scene} selected={selected} choose={choose} />}
      <div className="layout-middle">
        {shown === null ? (
          <p className="page dim">{words.common.loading}</p>
        ) : (
          <Drawing
            panel={panel}
            side={side}
            entries={shown.entries}
            scene={shown.scene}
            layers={layers}
            selected={selected}
            rig={rig}
            gestures={gestures}
            tool={tool}
            onKey={onKey}
          />
        )}
        <ToolHint tool={tool} from={crossing.from} panels={panels} />
        <StatusLine rig={rig} gestures={gestures} message={message} />
      </div>
      <SidePanel
        stage={stage}
        entries={shown?.entries ?? null}
        selected={selected}
        mayEdit={mayEdit}
        actions={actions}
        gestures={gestures}
        failed={told}
      />
      {bringingIn && stage !== null && (
        <BringIn stage={stage} selected={selected} close={() => setBringingIn(false)} failed={told} />
      )}
      {stage !== null && (
        <CrossingDialog
          draft={crossing}
          stage={stage}
          made={(id) => {
            setTool("select");
            select([id]);
          }}
          failed={told}
        />
      )}
      {help && <Help close={() => setHelp(false)} />}
      {stage !== null && <PasteDialog clipboard={clipboard} stage={stage} select={select} failed={told} />}
    </div>
  );
}
