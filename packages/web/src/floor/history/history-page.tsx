import type { Fact } from "@pinwright/contract";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { useStepName } from "../tasks/task-names.ts";
import { eventsOf, type UnitEvent } from "./events.ts";

const MOST = 200;

/** What happened to the units at the bench, the last first. */
export function HistoryPage({ facts }: { readonly facts: readonly Fact[] }) {
  const { words, language } = useSpeech();
  const own = words.floorBench.history;
  const { unitIds, show } = useBench();
  const tell = useTeller();
  const events = eventsOf(facts, unitIds);
  const clock = new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
    dateStyle: "short",
    timeStyle: "short",
  });
  return (
    <>
      <div className="floor-body">
        <h1>
          {own.title} <small className="dim">{unitIds.join(", ")}</small>
        </h1>
        {events.length === 0 && <p>{own.none}</p>}
        <ol className="floor-facts" reversed>
          {events.slice(0, MOST).map((event) => {
            const { title, says } = tell(event);
            return (
              <li
                key={`${event.fact.stream} ${event.fact.seq}`}
                data-back={event.isTakenBack ? "" : undefined}
              >
                <b>{title}</b> {says}
                <small>
                  {clock.format(new Date(event.fact.at))}
                  {event.isTakenBack && ` · ${own.notCounted}`}
                </small>
              </li>
            );
          })}
        </ol>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("/list")}>
          {words.floor.back}
        </button>
      </footer>
    </>
  );
}

/** Says what an event was. */
function useTeller(): (event: UnitEvent) => { readonly title: string; readonly says: string } {
  const { floor, floorBench } = useSpeech().words;
  const own = floorBench.history;
  const kinds: Readonly<Record<string, string>> = floor.outbox.facts;
  const whats: Readonly<Record<string, string>> = floor.defect.whats;
  const causes: Readonly<Record<string, string>> = floor.mend.causes;
  const pick = usePick();
  const { work, unitIds } = useBench();
  const stepName = useStepName();
  const stages = useView("floorStages", null);
  const join = (...parts: readonly (string | null | undefined | false)[]): string =>
    parts.filter((part): part is string => typeof part === "string" && part !== "").join(" · ");
  const saysOf = ({ body }: Fact): string => {
    const unit = unitIds.length > 1 && "unit" in body ? body.unit : "";
    switch (body.kind) {
      case "fitted":
        return unitIds.includes(body.into)
          ? join(body.unit, own.at(body.place))
          : join(unit, own.into(body.into, body.place));
      case "removed":
        return join(
          unitIds.includes(body.from) ? body.unit : unit,
          own.outOf(body.from, body.place),
          body.why,
        );
      case "step-done":
        return join(unit, stepName(body.step), body.minutes !== undefined && own.minutes(body.minutes));
      case "reading": {
        const test = work.tests.find(({ id }) => id === body.test);
        const name =
          test !== undefined
            ? pick(test.label, test.labelZh) || test.id
            : body.test.startsWith("continuity:")
              ? floor.steps.continuity
              : body.test;
        const value = body.value === undefined ? "" : `${body.value} ${test?.unit ?? ""}`.trim();
        return join(unit, name, value, body.good ? floor.test.passed : floor.test.failed);
      }
      case "defect":
        return join(unit, whats[body.what] ?? body.what, body.where.item ?? body.where.point, body.says);
      case "mended":
        return join(
          unit,
          causes[body.cause] ?? body.cause,
          body.says,
          body.minutes !== undefined && own.minutes(body.minutes),
        );
      case "lot-used":
        return join(unit, body.part, floorBench.lots.of(body.lot));
      case "alternate":
        return join(unit, floorBench.alternates.give(body.instead, body.part), body.why);
      case "override":
        return join(unit, `${floorBench.gate.gates[body.gate]} ${body.of}`, body.why);
      case "handed": {
        const stage = stages?.get(body.stage);
        return join(unit, stage === undefined ? body.stage : pick(stage.label, stage.labelZh));
      }
      case "sent":
        return join(unit, body.transport, body.to);
      case "arrived":
        return join(unit, body.transport, body.site);
      case "noted":
        return join(unit, body.says);
      case "begun":
        return join(unit, body.type, body.revision, body.options.join(" "));
      default:
        return unit;
    }
  };
  return (event) =>
    event.kind === "swapped"
      ? {
          title: own.swapped,
          says: join(own.swap(event.out.unit, event.in.unit, event.in.place), event.out.why),
        }
      : { title: kinds[event.fact.body.kind] ?? event.fact.body.kind, says: saysOf(event.fact) };
}
