import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { stepAddress } from "./address.ts";
import type { Plan } from "./plan-rows.ts";

/** What came of a balance: takt or places, against what cannot be beaten, beside the usual day. */
export function PlanFigures({
  plan,
  usual,
  steps,
  taktMin,
}: {
  readonly plan: Plan;
  readonly usual: Plan | null;
  readonly steps: Entries<"stepLines">;
  /** Takt that the shop wants. */
  readonly taktMin: number;
}) {
  const words = useWords().steps;
  const pick = usePick();
  const { bookId } = useDesk();
  const places = (of: Plan): number => of.loads.length;
  const fewest = plan.question.ask.kind === "fewest-places";
  const value = fewest ? places(plan) : plan.taktS;
  const gapPct = value === 0 ? 0 : (100 * (value - plan.lowerBound)) / value;
  const work = plan.loads.reduce((sum, { seconds }) => sum + seconds, 0);
  const used = plan.taktS * places(plan);
  const name = (id: string): string => {
    const step = steps.get(id);
    return step === undefined ? id : `${step.number}. ${pick(step.label, step.labelZh) || id}`;
  };
  return (
    <>
      <dl className="plan-figures">
        <Figure name={words.takt} value={words.minutes(plan.taktS)} full={words.secondsText(plan.taktS)}>
          {usual !== null && words.usualDay(words.minutes(usual.taktS))}
        </Figure>
        <Figure name={words.places} value={String(places(plan))}>
          {usual !== null && words.usualDay(String(places(usual)))}
        </Figure>
        <Figure name={words.bound} value={fewest ? String(plan.lowerBound) : words.minutes(plan.lowerBound)}>
          {plan.isProven ? words.proven : words.gap(gapPct)}
        </Figure>
        {!fewest && (
          <Figure name={words.wanted} value={words.minutes(taktMin * 60)}>
            <span className={plan.taktS > taktMin * 60 ? "amber-text" : ""}>
              {plan.taktS > taktMin * 60 ? words.wantedMissed : words.wantedMet}
            </span>
          </Figure>
        )}
        <Figure name={words.work} value={words.minutes(work)}>
          {used > 0 && words.used((100 * work) / used)}
        </Figure>
      </dl>
      {plan.unplaced.length > 0 && (
        <div className="plan-note error-text">
          <b>{words.unplaced(plan.unplaced.length)}</b>
          <ul>
            {plan.unplaced.map(({ stepId, skill, why }) => (
              <li key={stepId}>
                <Link href={stepAddress(bookId, stepId)}>{name(stepId)}</Link>: {words.unplacedWhy[why]}
                {why === "skill" && ` ${skill}`}
              </li>
            ))}
          </ul>
        </div>
      )}
      {plan.waysBack.length > 0 && (
        <details className="plan-note">
          <summary className="amber-text">{words.waysBack(plan.waysBack.length)}</summary>
          <ul>
            {plan.waysBack.map(({ beforeId, afterId }) => (
              <li key={`${beforeId} ${afterId}`}>
                {name(beforeId)} → {name(afterId)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Figure({
  name,
  value,
  full,
  children,
}: {
  readonly name: string;
  readonly value: string;
  readonly full?: string;
  readonly children?: React.ReactNode;
}) {
  return (
    <div>
      <dt>{name}</dt>
      <dd title={full}>
        <b>{value}</b>
        <span className="dim">{children}</span>
      </dd>
    </div>
  );
}
