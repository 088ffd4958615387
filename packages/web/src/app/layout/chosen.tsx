import { ActionIcon, Button } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { IconCopy, IconRotate, IconTrash, IconX } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";
import type { Stage } from "./actions.ts";
import type { Layer } from "./layers.ts";
import { PlaceForm } from "./place-form.tsx";
import type { Side } from "./scene.ts";
import type { CrossingEnd } from "./use-crossing.ts";

type About = ViewEntry<"layoutAbout">;

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
  const label = about === undefined ? "" : pick(about.label, about.labelZh);
  return (
    <>
      <ChosenBar
        actions={actions}
        mayEdit={mayEdit && target?.row != null}
        mayTurn={target !== undefined && hasDirection(target.layer)}
        title={label || (about?.kind === "way" && target === undefined ? own.crossing.heading(id) : id)}
      />
      {(target !== undefined || about !== undefined) && (
        <p className="dim">
          {target === undefined ? "" : `${own.kinds[target.layer]}, `}
          {id}
        </p>
      )}
      {target === undefined && known?.size === 0 && <p>{own.noSuchId(id)}</p>}
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

function Facts({
  about,
  select,
}: {
  readonly about: About;
  readonly select: (ids: readonly string[]) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout.chosen;
  const link = (id: string) => (
    <Button key={id} size="compact-sm" variant="subtle" onClick={() => select([id])}>
      {id}
    </Button>
  );
  return (
    <dl className="facts">
      {about.typeId !== null && (
        <>
          <dt>{own.type}</dt>
          <dd title={about.typeId}>{pick(about.typeLabel, about.typeLabelZh) || about.typeId}</dd>
        </>
      )}
      {about.sizeMm.length > 0 && (
        <>
          <dt>{own.size}</dt>
          <dd>{about.sizeMm.join(" × ")} mm</dd>
        </>
      )}
      {about.parentId !== null && (
        <>
          <dt>{own.partOf}</dt>
          <dd>{link(about.parentId)}</dd>
        </>
      )}
      {about.holds !== null && (
        <>
          <dt>{own.holds}</dt>
          <dd>{link(about.holds)}</dd>
        </>
      )}
      {about.kind !== "panel" && about.children.length > 0 && (
        <>
          <dt>{own.parts}</dt>
          <dd>{about.children.map(link)}</dd>
        </>
      )}
    </dl>
  );
}

const WIRES_SHOWN = 60;

function AboutMore({ about }: { readonly about: About }) {
  const { words, language } = useSpeech();
  const pick = usePick();
  const { bookId } = useDesk();
  const own = words.layout.chosen;
  const used = about.points.filter((point) => point.netId !== null || point.use !== "live");
  return (
    <>
      {about.findings.length > 0 && (
        <div className="group">
          <h4>
            {own.findings} <span className="dim">{about.findings.length}</span>
          </h4>
          {about.findings.map((finding) => {
            const wording = findingWords(language, finding.rule);
            return (
              <p
                key={`${finding.rule} ${finding.subjects.join(" ")}`}
                className={`effect finding ${finding.severity}`}
              >
                <b>
                  {words.common.severity[finding.severity]}: {wording.title}
                </b>
                <br />
                {wording.say(finding)}
              </p>
            );
          })}
        </div>
      )}
      {about.harnesses.length > 0 && (
        <div className="group">
          <h4>{own.harnesses}</h4>
          {about.harnesses.map((harness) => (
            <p key={harness.id} className="effect">
              <Link href={addressOf(bookId, { kind: "harness", id: harness.id })}>
                H{harness.number} {pick(harness.label, harness.labelZh)}
              </Link>
            </p>
          ))}
        </div>
      )}
      {used.length > 0 && (
        <div className="group">
          <h4>
            {own.contacts} <span className="dim">{used.length}</span>
          </h4>
          <table className="figures">
            <tbody>
              {used.slice(0, WIRES_SHOWN).flatMap((point) =>
                (point.wires.length === 0 ? [null] : point.wires).map((wire, i) => (
                  <tr key={`${point.id} ${wire?.id ?? ""}`}>
                    <th scope="row" title={point.label}>
                      {i === 0 ? point.localId : ""}
                    </th>
                    <td className="net">
                      {i > 0 ? "" : point.use === "live" ? (point.netId ?? own.noNet) : own[point.use]}
                    </td>
                    <WireCells wire={wire} />
                  </tr>
                )),
              )}
            </tbody>
          </table>
          {used.length > WIRES_SHOWN && (
            <p className="dim">{words.layout.follows.more(used.length - WIRES_SHOWN)}</p>
          )}
        </div>
      )}
      {about.wires.length > 0 && about.points.length === 0 && (
        <div className="group">
          <h4>
            {own.wire} <span className="dim">{about.wires.length}</span>
          </h4>
          <table className="figures">
            <tbody>
              {about.wires.slice(0, WIRES_SHOWN).map((wire) => (
                <tr key={wire.id}>
                  <td className="net">{wire.netId}</td>
                  <WireCells wire={wire} />
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

function WireCells({ wire }: { readonly wire: About["wires"][number] | null }) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  if (wire === null) return <td colSpan={3} />;
  return (
    <>
      <td>
        <Link href={addressOf(bookId, { kind: "wire", id: wire.id })}>{wire.label}</Link> {wire.colour}
      </td>
      <td className="number">{words.layout.mm(wire.lengthMm)}</td>
      <td title={wire.otherPoint}>{pick(wire.otherLabel, wire.otherLabelZh) || wire.otherPoint}</td>
    </>
  );
}
