import { ActionIcon } from "@mantine/core";
import { IconCopy, IconRotate, IconTrash, IconX } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import { AboutMore, Facts } from "./about.tsx";
import type { Stage } from "./actions.ts";
import { Elsewhere } from "./elsewhere.tsx";
import type { Layer } from "./layers.ts";
import { PlaceForm } from "./place-form.tsx";
import type { Side } from "./scene.ts";
import type { CrossingEnd } from "./use-crossing.ts";

/** What can be done with what is selected. */
export interface ChosenActions {
  readonly select: (ids: readonly string[]) => void;
  readonly go: (panelId: string, side: Side, ids: readonly string[]) => void;
  readonly rotate: () => void;
  readonly copy: () => void;
  readonly remove: () => void;
  /** Takes a waypoint as the next end of the crossing that is being drawn. */
  readonly cross: (waypointId: string) => void;
  /** Where the crossing that is being drawn begins. */
  readonly crossingFrom: CrossingEnd | null;
}

/** Buttons for what is selected. */
export function ChosenBar({
  actions,
  mayEdit,
  mayTurn = true,
  title,
}: {
  readonly actions: ChosenActions;
  readonly mayEdit: boolean;
  /** A lane, a waypoint and a screw have no direction. */
  readonly mayTurn?: boolean;
  readonly title: ReactNode;
}) {
  const words = useWords();
  const own = words.layout;
  const button = (label: string, icon: ReactNode, onClick: () => void) => (
    <ActionIcon variant="subtle" className="tool-button" aria-label={label} title={label} onClick={onClick}>
      {icon}
    </ActionIcon>
  );
  return (
    <div className="chosen-bar">
      <h2>{title}</h2>
      {mayEdit && (
        <>
          {mayTurn && button(own.place.rotate, <IconRotate size={18} />, actions.rotate)}
          {button(own.copyKey, <IconCopy size={18} />, actions.copy)}
          {button(own.removeKey, <IconTrash size={18} />, actions.remove)}
        </>
      )}
      {button(own.chosen.clear, <IconX size={18} />, () => actions.select([]))}
    </div>
  );
}

const hasDirection = (layer: Layer): boolean =>
  layer !== "lanes" && layer !== "waypoints" && layer !== "fasteners";

/** Everything that is known of one thing. */
export function ChosenOne({
  id,
  stage,
  mayEdit,
  actions,
  failed,
  children,
}: {
  readonly id: string;
  readonly stage: Stage;
  readonly mayEdit: boolean;
  readonly actions: ChosenActions;
  readonly failed: (error: unknown) => void;
  /** Forms of its kind. */
  readonly children?: ReactNode;
}) {
  const words = useWords();
  const pick = usePick();
  const known = useView("layoutAbout", { id });
  const about = known?.get("");
  const target = stage.scene.targets.get(id);
  const own = words.layout;
  const titleOf = (): string => {
    const label = about === undefined ? "" : pick(about.label, about.labelZh);
    if (about?.kind === "wire") return `${own.chosen.wire} ${label}`;
    if (label !== "" || target !== undefined) return label || id;
    // Of the ways only lanes are things on the drawing.
    return about?.kind === "way" || about?.kind === "lane" ? own.crossing.heading(id) : id;
  };
  return (
    <>
      <ChosenBar
        actions={actions}
        mayEdit={mayEdit && target?.row != null}
        mayTurn={target !== undefined && hasDirection(target.layer)}
        title={titleOf()}
      />
      {(target !== undefined || about !== undefined) && (
        <p className="dim">
          {target === undefined ? "" : `${own.kinds[target.layer]}, `}
          {id}
        </p>
      )}
      {target === undefined && known?.size === 0 && <p>{own.noSuchId(id)}</p>}
      {about !== undefined && (
        <Elsewhere about={about} table={target?.row?.table ?? null} stage={stage} go={actions.go} />
      )}
      {about !== undefined && <Facts about={about} select={actions.select} />}
      {mayEdit && target !== undefined && target.row !== null && target.row.table !== "lanes" && (
        <PlaceForm
          target={target}
          panelId={stage.panelId}
          moved={(to, side) => actions.go(to, side, [id])}
          failed={failed}
        />
      )}
      {about?.parentId != null && <p className="dim">{own.place.child(about.parentId)}</p>}
      {children}
      {about !== undefined && <AboutMore about={about} />}
    </>
  );
}
