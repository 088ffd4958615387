import { Button } from "@mantine/core";
import { type Decimal, decimal, numberOfDecimal, timesDecimal } from "@pinwright/kernel";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { partAddress } from "../parts/address.ts";
import { moneyText } from "../parts/amounts.ts";
import { NodeName } from "../parts/node-name.tsx";
import { Money, TotalText } from "../parts/total-text.tsx";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { runAddress } from "./address.ts";
import { dayText } from "./days.ts";
import { PlanFindings } from "./plan-findings.tsx";
import { Freeze, Remove } from "./run-buttons.tsx";
import { RunDownloads } from "./run-downloads.tsx";
import { RunForm } from "./run-form.tsx";
import { RunProblems } from "./run-problems.tsx";
import type { Plan, Run, RunTab } from "./run-tab.ts";

/** What a buyer looks through for the dear parts; the first five are what most of it is. */
const LARGEST = 15;

/** A run at a glance: what a machine costs and of what, whether the day can be kept, and what is wrong. */
export function OverviewTab({ run, runs, ground, plan, day }: RunTab) {
  const words = useWords();
  const own = words.runs;
  const pick = usePick();
  const mayEdit = useMay("designer");
  const [isEditing, setEditing] = useState(false);
  return (
    <>
      {plan !== null && <Figures run={run} plan={plan} />}
      {plan !== null && plan.cost !== null && (
        <div className="two-columns">
          <Breakdown cost={plan.cost} currency={plan.currency} others={othersOf(run, runs, plan, pick)} />
          <Largest cost={plan.cost} currency={plan.currency} runId={run.id} />
        </div>
      )}
      {plan !== null && (
        <>
          <RunDownloads run={run} day={day} kinds={["run-cost"]} />
          <h3>{own.overview.findings}</h3>
          <PlanFindings findings={plan.findings} none={own.overview.noFindings} />
        </>
      )}
      <RunProblems run={run} />
      {mayEdit && isEditing && (
        <RunForm run={run} runs={runs} ground={ground} done={() => setEditing(false)} />
      )}
      {mayEdit && !isEditing && (
        <div className="run-buttons">
          <Button variant="default" onClick={() => setEditing(true)}>
            {own.form.change}
          </Button>
          {plan !== null && <Freeze run={run} day={day} />}
          <Remove run={run} />
        </div>
      )}
      {run.remark !== "" && <p>{run.remark}</p>}
    </>
  );
}

function Figures({ run, plan }: { readonly run: Run; readonly plan: Plan }) {
  const own = useWords().runs;
  const pick = usePick();
  const { bookId } = useDesk();
  const { timing, cost, currency } = plan;
  const first = plan.orders.reduce(
    (least, { orderDay }) => Math.min(least, orderDay),
    Number.POSITIVE_INFINITY,
  );
  const heldBy = timing?.heldBy ?? null;
  const part = plan.parts.get(heldBy ?? "");
  const stage = plan.stageNames.get(heldBy ?? "");
  const holder = part ?? stage;
  return (
    <dl className="plan-figures">
      {cost !== null && (
        <>
          <div>
            <dt>{own.costEach}</dt>
            <dd>
              <b>
                <TotalText total={cost.each} currency={currency} />
              </b>
            </dd>
          </div>
          <div>
            <dt>{own.costAll}</dt>
            <dd>
              <b>{moneyText(timesDecimal(cost.each.value, decimal(run.machines)), currency)}</b>
            </dd>
          </div>
        </>
      )}
      <div>
        <dt>{own.ship}</dt>
        <dd>
          <b>{run.ship}</b>
          {timing?.readyDay == null ? (
            <span className="dim">{own.overview.noStages}</span>
          ) : timing.isLate ? (
            <span className="error-text">{own.overview.shipMissed(dayText(timing.readyDay))}</span>
          ) : (
            <span className="dim">{own.overview.shipMet(dayText(timing.readyDay))}</span>
          )}
          {heldBy !== null && (
            <small>
              {own.overview.heldBy}{" "}
              {part === undefined ? (
                pick(holder?.label ?? "", holder?.labelZh ?? "") || heldBy
              ) : (
                <Link href={partAddress(bookId, heldBy)}>{pick(part.label, part.labelZh) || heldBy}</Link>
              )}
            </small>
          )}
        </dd>
      </div>
      {timing?.startDay != null && (
        <div>
          <dt>{own.overview.starts}</dt>
          <dd>
            <b>{dayText(timing.startDay)}</b>
          </dd>
        </div>
      )}
      <div>
        <dt>{own.overview.firstOrder}</dt>
        <dd>
          {Number.isFinite(first) ? (
            <b>
              <Link href={runAddress(bookId, run.id, "orders")}>{dayText(first)}</Link>
            </b>
          ) : (
            <span className="dim">{own.overview.noOrder}</span>
          )}
        </dd>
      </div>
    </dl>
  );
}

type Cost = NonNullable<Plan["cost"]>;

/** Share of a whole, 0 to 1. */
const shareOf = (part: Decimal, whole: Decimal): number =>
  whole === 0n ? 0 : numberOfDecimal(part) / numberOfDecimal(whole);

/** Names of the runs that something is ordered together with. */
function othersOf(
  run: Run,
  runs: RunTab["runs"],
  { orders }: Plan,
  pick: (en: string, zh: string) => string,
): string {
  const ids = new Set(orders.flatMap(({ lines }) => lines.flatMap(({ runIds }) => runIds)));
  ids.delete(run.id);
  return [...ids].map((id) => pick(runs.get(id)?.label ?? "", runs.get(id)?.labelZh ?? "") || id).join(", ");
}

function Breakdown({
  cost,
  currency,
  others,
}: {
  readonly cost: Cost;
  readonly currency: string;
  readonly others: string;
}) {
  const own = useWords().runs;
  return (
    <section aria-label={own.overview.breakdown}>
      <h3>{own.overview.breakdown}</h3>
      <p className="dim">{own.overview.costAbout(others)}</p>
      <table className="plain shares">
        <caption className="visually-hidden">{own.overview.breakdown}</caption>
        <tbody>
          {cost.kinds.map(({ kind, each }) => {
            const share = shareOf(each, cost.each.value);
            return (
              <tr key={kind}>
                <th scope="row">{own.overview.kinds[kind]}</th>
                <td className="end">
                  <Money value={each} currency={currency} />
                </td>
                <td className="end">{own.percent(share)}</td>
                <td className="share-bar" aria-hidden="true">
                  <span style={{ width: `${Math.max(0, Math.min(1, share)) * 100}%` }} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function Largest({
  cost,
  currency,
  runId,
}: {
  readonly cost: Cost;
  readonly currency: string;
  readonly runId: string;
}) {
  const own = useWords().runs;
  return (
    <section aria-label={own.overview.largest}>
      <h3>{own.overview.largest}</h3>
      <table className="plain shares">
        <caption className="visually-hidden">{own.overview.largest}</caption>
        <tbody>
          {cost.contributors.slice(0, LARGEST).map(({ id, labels, each }) => (
            <tr key={id}>
              <th scope="row">
                <Contributor id={id} labels={labels} runId={runId} />
              </th>
              <td className="end">
                <Money value={each} currency={currency} />
              </td>
              <td className="end">{own.percent(shareOf(each, cost.each.value))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What it is: a stage's work leads to the schedule, a part to the bill. */
function Contributor({
  id,
  labels,
  runId,
}: {
  readonly id: string;
  readonly labels: Cost["contributors"][number]["labels"];
  readonly runId: string;
}) {
  const own = useWords().runs;
  const pick = usePick();
  const { bookId } = useDesk();
  if (id === "overhead") return own.overview.kinds.overhead;
  if (id.startsWith("stage:"))
    return (
      <Link href={runAddress(bookId, runId, "schedule")}>
        {pick(labels.en, labels.zh) || id}
        <small>{own.overview.kinds.work}</small>
      </Link>
    );
  return (
    <Link href={partAddress(bookId, id)}>
      <NodeName id={id} label={labels.en} labelZh={labels.zh} />
    </Link>
  );
}
