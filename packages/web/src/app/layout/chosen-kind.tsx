import { Button } from "@mantine/core";
import { NET_CLASSES } from "@pinwright/book";
import { useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import type { Stage } from "./actions.ts";
import type { ChosenActions } from "./chosen.tsx";
import { CrossingForm } from "./crossing-form.tsx";
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
  const all = [...(crossings?.values() ?? [])];
  // A hole has both its ends on one panel; selected by its own id it is told of once.
  const itself = all.find((crossing) => crossing.id === id && crossing.side === stage.side);
  const across =
    itself === undefined ? all.filter((crossing) => crossing.here === id || crossing.id === id) : [itself];
  const from = actions.crossingFrom;
  const startsHere = from?.panelId === stage.panelId && from.side === stage.side;
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
      {waypoint !== undefined && mayEdit && (
        <Button size="compact-sm" variant="default" onClick={() => actions.cross(id)}>
          {startsHere || from === null ? own.crossing.from : own.crossing.to(from.id)}
        </Button>
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
        <section key={`${crossing.id} ${crossing.here}`} className="crossing">
          <h4>{own.crossing.heading(crossing.id)}</h4>
          <p>
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
          {mayEdit && (
            <CrossingForm
              crossing={crossing}
              samePanel={crossing.therePanelId === stage.panelId}
              failed={failed}
            />
          )}
        </section>
      ))}
    </>
  );
}
