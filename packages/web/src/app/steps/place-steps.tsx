import { Button, Menu } from "@mantine/core";
import { IconArrowsExchange, IconPinnedOff } from "@tabler/icons-react";
import { useEffect, useRef } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { benchAddress, screwsAddress } from "../screws/use-screws-place.ts";
import { usePick, useWords } from "../words.tsx";
import { freestOf, type Plan, secondsOn, stepsOfPlace, withMoved, wrongWayRound } from "./plan-rows.ts";
import type { MoveStep } from "./station-chart.tsx";

type Step = ViewEntry<"stepLines">;

/** The steps of the place that is picked; each can be given to another station. */
export function PlaceSteps({
  plan,
  steps,
  stations,
  placeId,
  stepId,
  select,
  move,
}: {
  readonly plan: Plan;
  readonly steps: Entries<"stepLines">;
  readonly stations: Entries<"stations">;
  readonly placeId: string | null;
  readonly stepId: string | null;
  readonly select: (placeId: string, stepId: string | null) => void;
  readonly move: MoveStep | null;
}) {
  const words = useWords();
  const own = words.steps;
  const pick = usePick();
  const { bookId } = useDesk();
  const load = plan.loads.find((one) => one.placeId === placeId);
  const rows = useRef<HTMLUListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step is brought into sight
  useEffect(() => {
    rows.current?.querySelector(".chosen")?.scrollIntoView({ block: "nearest" });
  }, [stepId, placeId]);
  if (load === undefined) return null;
  const list = stepsOfPlace(plan, steps, load.placeId);
  return (
    <section aria-label={pick(load.labels.en, load.labels.zh)} className="place-steps">
      <h3>
        {pick(load.labels.en, load.labels.zh)}{" "}
        <span className="dim">{own.placeSays(list.length, own.minutes(load.seconds))}</span>
      </h3>
      {load.stationId !== null && list[0] !== undefined && (
        <p>
          <Link href={benchAddress(bookId, load.placeId, list[0].number)}>{own.toBench}</Link>
        </p>
      )}
      {list.length === 0 ? (
        <p className="dim">{own.nothingToDo}</p>
      ) : (
        <ul className="step-rows" ref={rows}>
          {list.map((step) => (
            <li key={step.id} className={step.id === stepId ? "chosen" : ""}>
              <button
                type="button"
                className="step-pick"
                aria-pressed={step.id === stepId}
                onClick={() => select(load.placeId, step.id)}
              >
                <span className="step-number">{step.number}</span>
                <span className="step-title">
                  {pick(step.label, step.labelZh) || step.id}
                  {step.stationId !== null && <small>{own.pinned}</small>}
                </span>
              </button>
              <span className="step-time">{own.minutes(secondsOn(plan.question, step))}</span>
              <Link href={screwsAddress(bookId, { stepId: step.id })}>{words.shell.sections.screws}</Link>
              {move !== null && (
                <MoveMenu step={step} plan={plan} steps={steps} stations={stations} move={move} />
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Stations that the step could go to, each with the takt that would follow. */
function MoveMenu({
  step,
  plan,
  steps,
  stations,
  move,
}: {
  readonly step: Step;
  readonly plan: Plan;
  readonly steps: Entries<"stepLines">;
  readonly stations: Entries<"stations">;
  readonly move: MoveStep;
}) {
  const words = useWords().steps;
  const pick = usePick();
  const here = plan.loads.find(({ stepIds }) => stepIds.includes(step.id))?.stationId;
  return (
    <Menu position="bottom-end" withinPortal>
      <Menu.Target>
        <Button
          variant="default"
          size="compact-sm"
          className="move-button"
          leftSection={<IconArrowsExchange size={16} />}
          aria-label={words.moveStep(step.number)}
        >
          {words.move}
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Label>{words.moveTo}</Menu.Label>
        {[...stations.values()].map((station) => {
          const to = freestOf(plan, station.id);
          const taktS = to === undefined ? null : withMoved(plan, step, to.placeId).taktS;
          const crossed = to === undefined ? 0 : wrongWayRound(plan, steps, step, to.placeId).length;
          const lacks = step.skill !== "" && !station.skills.includes(step.skill);
          return (
            <Menu.Item
              key={station.id}
              disabled={to === undefined || (station.id === here && step.stationId === station.id)}
              onClick={() => move(step, to?.placeId ?? null, station.id)}
            >
              <b>{pick(station.label, station.labelZh) || station.id}</b>
              <span className="menu-takt">
                {station.id === here
                  ? words.pinHere
                  : taktS === null
                    ? words.nobodyThere
                    : words.taktBecomes(words.minutes(taktS), taktS - plan.taktS)}
                {crossed > 0 && ` · ${words.crossed(crossed)}`}
                {lacks && ` · ${words.lacksSkill(step.skill)}`}
              </span>
            </Menu.Item>
          );
        })}
        {step.chosen.station && (
          <>
            <Menu.Divider />
            <Menu.Item leftSection={<IconPinnedOff size={16} />} onClick={() => move(step, null, null)}>
              {words.letFree}
            </Menu.Item>
          </>
        )}
      </Menu.Dropdown>
    </Menu>
  );
}
