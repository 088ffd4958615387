import { IconAlertTriangle } from "@tabler/icons-react";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { standingAt } from "../tasks/tasks.ts";
import type { FitWarning } from "./fit-check.ts";
import type { Fit, FitQuestion as Question } from "./use-fit.ts";

const REASONS = ["faulty", "wrong", "damaged", "newer", "test"] as const;
type Reason = (typeof REASONS)[number];

/** What has to be looked at or said before a unit goes in or comes out: large, and never more than two taps. */
export function FitQuestion({ fit, question }: { readonly fit: Fit; readonly question: Question }) {
  const own = useWords().floorBench.fitting;
  const pick = usePick();
  const { unit, warnings } = question;
  const [place, setPlace] = useState(question.place);
  const [reason, setReason] = useState<Reason | null>(null);
  const out = place === null ? null : standingAt(fit.state, place.id);
  const nameOf = (one: NonNullable<typeof place>): string => pick(one.label, one.labelZh) || one.id;
  const isReady = place !== null && (out === null || reason !== null);
  const go = (): void => {
    if (place === null) return;
    const why = reason === null ? null : { why: own.reasons[reason], isFaulty: reason === "faulty" };
    void fit.answer(place, why);
  };
  return (
    <>
      <div className="floor-body floor-question" role="alertdialog" aria-label={unit?.unit ?? out ?? ""}>
        <h1>
          {unit?.unit ?? out}{" "}
          <small className="dim">{place === null ? "" : `→ ${unit === null ? "" : nameOf(place)}`}</small>
        </h1>
        {warnings.length > 0 && (
          <ul className="floor-warnings">
            {warnings.map((warning) => (
              <li key={warning.kind} data-kind={warning.kind}>
                <IconAlertTriangle size={34} aria-hidden /> <Warning warning={warning} />
              </li>
            ))}
          </ul>
        )}
        {question.place === null && (
          <>
            <h2>{own.where}</h2>
            <div className="floor-tiles">
              {question.places.map((one) => (
                <button
                  key={one.id}
                  type="button"
                  aria-pressed={one.id === place?.id}
                  onClick={() => setPlace(one)}
                >
                  {nameOf(one)}
                  <small>{standingAt(fit.state, one.id) ?? one.id}</small>
                </button>
              ))}
            </div>
          </>
        )}
        {place !== null && out !== null && (
          <>
            <h2>{own.out(out, nameOf(place))}</h2>
            <div className="floor-tiles">
              {REASONS.map((one) => (
                <button key={one} type="button" aria-pressed={one === reason} onClick={() => setReason(one)}>
                  {own.reasons[one]}
                </button>
              ))}
            </div>
            {unit === null && <p className="dim">{own.swapHint}</p>}
          </>
        )}
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" onClick={() => fit.ask(null)}>
          {own.leave}
        </button>
        <button
          type="button"
          className={warnings.length > 0 ? "floor-main floor-bad-main" : "floor-main"}
          disabled={!isReady}
          onClick={go}
        >
          {unit === null
            ? own.takeOut
            : out !== null
              ? own.swap
              : warnings.length > 0
                ? own.fitAnyway
                : own.fit}
        </button>
      </TaskFoot>
    </>
  );
}

function Warning({ warning }: { readonly warning: FitWarning }) {
  const { floor, floorBench } = useWords();
  const own = floorBench.fitting;
  const pick = usePick();
  const types = useView("floorTypes", null);
  const whats: Readonly<Record<string, string>> = floor.defect.whats;
  const typeName = (id: string): string => {
    const type = types?.get(`board ${id}`) ?? types?.get(`harness ${id}`) ?? types?.get(`mechanism ${id}`);
    return type === undefined ? id : pick(type.label, type.labelZh) || id;
  };
  switch (warning.kind) {
    case "elsewhere":
      return own.elsewhere(warning.into, warning.place);
    case "type":
      return own.type(typeName(warning.has), typeName(warning.wants));
    case "revision":
      return own.revision(warning.has, warning.wants);
    case "defects":
      return own.defects(warning.whats.length, warning.whats.map((what) => whats[what] ?? what).join(", "));
    case "failed":
      return own.failed(warning.count);
    case "untested":
      return own.untested(warning.count);
    case "steps":
      return own.steps(warning.count);
    case "recalled":
      return own.recalled;
    case "unknown":
      return own.unknown;
  }
}
