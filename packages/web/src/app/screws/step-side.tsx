import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { addressOf } from "../book/place-of.ts";
import { stepAddress } from "../steps/address.ts";
import { usePick, useWords } from "../words.tsx";
import { BenchLines } from "./bench-lines.tsx";
import { StepCautions, StepMoments } from "./step-notes.tsx";
import { TypeList } from "./type-list.tsx";

/** Items that are named before the rest is only counted. */
const MOST_ITEMS = 24;

/** A step beside its map: what goes in, with what, and what to beware of. */
export function StepSide({
  step,
  types,
  typeId,
  chooseType,
}: {
  readonly step: ViewEntry<"stepLines">;
  readonly types: Entries<"screwTypes">;
  readonly typeId: string | null;
  readonly chooseType: (typeId: string | null) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const parts = useOne("stepParts", { id: step.id });
  const own = words.screws;
  const items = parts?.items ?? [];
  return (
    <>
      <div className="chosen-bar">
        <h2>
          {step.number}. {pick(step.label, step.labelZh) || step.id}
        </h2>
      </div>
      <p className="dim">
        {words.steps.kinds[step.kind]} · {words.steps.minutes(step.seconds)}
        {step.times > 1 && ` · ${own.timesDone(step.times)}`} ·{" "}
        <Link href={stepAddress(bookId, step.id)}>{own.toSteps}</Link>
      </p>
      <StepCautions id={step.id} />
      {step.types.length > 0 && (
        <div className="group">
          <h4>
            {own.screwsHeading}{" "}
            <span className="dim">{step.fastenerIds.length + step.recheckIds.length}</span>
          </h4>
          <TypeList list={step.types} types={types} typeId={typeId} choose={chooseType} />
        </div>
      )}
      <StepMoments id={step.id} />
      {step.tools.length > 0 && (
        <p>
          <b>{own.tools}</b> {step.tools.map((tool) => pick(tool.label, tool.labelZh) || tool.id).join(", ")}
        </p>
      )}
      {step.skill !== "" && (
        <p>
          <b>{words.steps.skill}</b> {step.skill}
        </p>
      )}
      {parts?.harness != null && (
        <p>
          <b>{own.harness}</b>{" "}
          <Link href={addressOf(bookId, { kind: "harness", id: parts.harness.id })}>
            H{parts.harness.number} {pick(parts.harness.label, parts.harness.labelZh)}
          </Link>
        </p>
      )}
      {parts !== undefined && parts.bench.length > 0 && <BenchLines lines={parts.bench} />}
      {items.length > 0 && (
        <div className="group">
          <h4>
            {own.parts} <span className="dim">{items.length}</span>
          </h4>
          <ul className="part-list">
            {items.slice(0, MOST_ITEMS).map((item) => (
              <li key={item.id}>
                <Link href={addressOf(bookId, { kind: "item", id: item.id })} title={item.id}>
                  {pick(item.label, item.labelZh) || item.id}
                </Link>
              </li>
            ))}
          </ul>
          {items.length > MOST_ITEMS && (
            <p className="dim">{words.layout.follows.more(items.length - MOST_ITEMS)}</p>
          )}
        </div>
      )}
    </>
  );
}
