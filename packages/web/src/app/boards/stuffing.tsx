import { Button, SegmentedControl } from "@mantine/core";
import type { StuffingPlan } from "@pinwright/engine";
import { IconChevronLeft, IconChevronRight, IconPlayerPause, IconPlayerPlay } from "@tabler/icons-react";
import { useState } from "react";
import { useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { CountField } from "../book/count-field.tsx";
import { useOne } from "../book/desk.tsx";
import { useAnswer } from "../book/use-answer.ts";
import { useWords } from "../words.tsx";
import { BoardDrawing, type PartState } from "./board-drawing.tsx";
import { StageLegend, StageParts } from "./stage-parts.tsx";
import { useStages } from "./use-stages.ts";

type Face = ViewEntry<"boardPlacements">;
const WAYS = ["hand", "bath"] as const;
const MOST_PEOPLE = 20;

/** How a kind of board is stuffed, stage by stage, with a picture of each. */
export function Stuffing({
  typeId,
  name,
  face,
}: {
  readonly typeId: string;
  readonly name: string;
  readonly face: Face;
}) {
  const words = useWords();
  const own = words.boards;
  const [params, setParams] = useSearchParams();
  const basis = useOne("solderBasis", null);
  const put = (next: Readonly<Record<string, string | null>>): void =>
    setParams(
      (before) => {
        const after = new URLSearchParams(before);
        for (const [key, value] of Object.entries(next))
          if (value === null) after.delete(key);
          else after.set(key, value);
        return after;
      },
      { replace: true },
    );
  const way = WAYS.find((one) => one === params.get("way")) ?? "hand";
  const asked = Number(params.get("people") ?? "");
  const benches = Number.isInteger(asked) && asked > 0 && asked <= MOST_PEOPLE ? asked : 1;
  const {
    answer: plan,
    failed,
    isCurrent,
  } = useAnswer("boardStuffing", { typeId, benches, way }, basis ?? null);
  return (
    <section aria-label={own.stuffingTitle}>
      <h3>{own.stuffingTitle}</h3>
      <div className="question">
        <div>
          <span className="field-name">{own.way}</span>
          <SegmentedControl
            aria-label={own.way}
            value={way}
            onChange={(value) => put({ way: value === "hand" ? null : value, stage: null })}
            data={WAYS.map((value) => ({ value, label: own.ways[value] }))}
          />
        </div>
        <CountField
          label={own.benches}
          value={benches}
          most={MOST_PEOPLE}
          onCount={(count) => put({ people: count === 1 ? null : String(count), stage: null })}
        />
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {plan != null && (
        <div className={isCurrent ? "" : "stale"}>
          <Stages
            plan={plan}
            name={name}
            face={face}
            stage={Number(params.get("stage") ?? "1")}
            reference={params.get("ref")}
            put={put}
          />
        </div>
      )}
    </section>
  );
}

function Stages({
  plan,
  name,
  face,
  stage: asked,
  reference,
  put,
}: {
  readonly plan: StuffingPlan;
  readonly name: string;
  readonly face: Face;
  readonly stage: number;
  /** Part that is looked at. */
  readonly reference: string | null;
  readonly put: (next: Readonly<Record<string, string | null>>) => void;
}) {
  const own = useWords().boards;
  const [pointed, setPointed] = useState<string | null>(null);
  const count = plan.stages.length;
  const at = Number.isInteger(asked) ? Math.min(Math.max(asked, 1), Math.max(count, 1)) : 1;
  const stage = plan.stages[at - 1];
  const play = useStages(at, count, (next) => put({ stage: next === 1 ? null : String(next), ref: null }));
  if (stage === undefined) return null;
  const stageOf = new Map(
    plan.stages.flatMap((one, i) => one.references.map((ref) => [ref, i + 1] as const)),
  );
  const stateOf = (ref: string): PartState => {
    const its = stageOf.get(ref) ?? Number.POSITIVE_INFINITY;
    return its === at ? "now" : its < at ? "before" : "later";
  };
  const picked = pointed ?? reference;
  const perBoard = plan.stages.reduce((sum, { seconds }) => sum + seconds, 0);
  return (
    <>
      <dl className="plan-figures">
        <div>
          <dt>{own.perBoard}</dt>
          <dd>
            <b>{own.seconds(perBoard)}</b>
          </dd>
        </div>
        {plan.benches > 1 && (
          <div>
            <dt>{own.busiest}</dt>
            <dd>
              <b>{own.seconds(plan.busiestSeconds)}</b>
              <span className="dim">
                {plan.busiestSeconds - plan.busiestBound < 0.05
                  ? own.busiestProven
                  : own.busiestGap(own.seconds(plan.busiestBound))}
              </span>
            </dd>
          </div>
        )}
      </dl>
      <div className="stage-bar">
        <Button
          variant="default"
          aria-label={own.previous}
          title={own.previous}
          disabled={at <= 1}
          onClick={() => play.to(at - 1)}
        >
          <IconChevronLeft size={18} />
        </Button>
        <Button
          variant="default"
          aria-label={own.next}
          title={own.next}
          disabled={at >= count}
          onClick={() => play.to(at + 1)}
        >
          <IconChevronRight size={18} />
        </Button>
        <Button
          variant="default"
          leftSection={play.playing ? <IconPlayerPause size={16} /> : <IconPlayerPlay size={16} />}
          onClick={play.toggle}
        >
          {play.playing ? own.pause : own.play}
        </Button>
        {plan.stages.map((one, i) => (
          <button
            key={one.number}
            type="button"
            className="stage-button"
            aria-pressed={i + 1 === at}
            onClick={() => play.to(i + 1)}
          >
            <b>{own.stageShort(i + 1)}</b>
            <small>{plan.benches > 1 ? own.benchOf(one.bench) : own.upTo(one.upToMm)}</small>
          </button>
        ))}
      </div>
      <div className="stage">
        <div>
          <h4>
            {own.stage(at, count)}
            <small className="dim">
              {[
                own.upTo(stage.upToMm),
                own.whenWords[stage.when],
                ...(plan.benches > 1 ? [own.benchOf(stage.bench)] : []),
                own.stageSays(stage.references.length, own.seconds(stage.seconds)),
              ].join(" · ")}
            </small>
          </h4>
          <BoardDrawing
            face={face}
            says={own.pictureOf(name, at, stage.references.length)}
            stateOf={stateOf}
            picked={picked}
            pick={(ref) => put({ ref })}
          />
          <StageLegend />
        </div>
        <div>
          <h4>{own.stepList}</h4>
          <StageParts
            references={stage.references}
            face={face}
            boxes={plan.boxes}
            picked={picked}
            point={setPointed}
            pick={(ref) => {
              setPointed(null);
              put({ ref });
            }}
          />
        </div>
      </div>
    </>
  );
}
