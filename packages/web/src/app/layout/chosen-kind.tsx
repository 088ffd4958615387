import { Button } from "@mantine/core";
import { NET_CLASSES } from "@pinwright/book";
import { useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import type { Stage } from "./actions.ts";
import type { ChosenActions } from "./chosen.tsx";
import { LaneForm } from "./lane-form.tsx";
import type { PanelEntries } from "./scene.ts";

/** What only lanes, waypoints and cutouts have to say. */
export function ChosenKind({
  id,
  stage,
  entries,
  mayEdit,
  actions,
  failed,
}: {
  readonly id: string;
  readonly stage: Stage;
  readonly entries: PanelEntries;
  readonly mayEdit: boolean;
  readonly actions: ChosenActions;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout;
  const crossings = useView("layoutCrossings", { panelId: stage.panelId });
  const lane = entries.lanes.get(id);
  const waypoint = entries.waypoints.get(id);
  const cutout = entries.cutouts.get(id);
  const across = [...(crossings?.values() ?? [])].filter(
    (crossing) => crossing.here === id || crossing.id === id,
  );
  return (
    <>
      {lane !== undefined && (
        <LaneForm lane={lane} mayEdit={mayEdit} netClasses={NET_CLASSES} failed={failed} />
      )}
      {waypoint !== undefined && (
        <p>
          {own.lane.hold}: {own.lane.holds[waypoint.hold]}
          {waypoint.holdPart !== null && <span className="dim"> {waypoint.holdPart}</span>}
        </p>
      )}
      {cutout !== undefined && (
        <p>
          {own.cutout.shapes[cutout.shape]}
          {cutout.widthMm !== null &&
            ` ${cutout.shape === "circle" ? "Ø " : ""}${own.mm(cutout.widthMm, 2)}${cutout.heightMm === null || cutout.shape === "circle" ? "" : ` × ${own.mm(cutout.heightMm, 2)}`}`}
          , {cutout.depthMm === null ? own.cutout.through : own.cutout.depth(cutout.depthMm)}
          {cutout.serves !== "" && <span className="dim"> ({cutout.serves})</span>}
        </p>
      )}
      {across.map((crossing) => (
        <p key={`${crossing.id} ${crossing.here}`}>
          {own.chosen.goesTo} {crossing.therePanelId}, {own.lane.crossing[crossing.kind]}.{" "}
          {own.lane.used(crossing.usedMm, crossing.maxMm)}{" "}
          <Button
            size="compact-sm"
            variant="default"
            onClick={() => actions.go(crossing.therePanelId, crossing.thereSide, [crossing.there])}
          >
            {own.chosen.turnTo}
          </Button>
        </p>
      ))}
    </>
  );
}
