import type { ViewEntry } from "../../../worker/protocol.ts";
import { useOne, useView } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { BenchLines } from "../bench-lines.tsx";
import { ScrewSign } from "../sign.tsx";
import { StepCautions, StepMoments } from "../step-notes.tsx";
import { TypeName } from "../type-list.tsx";

/** Parts that are named before the rest is only counted. */
const MOST_PARTS = 14;

/** What the builder reads: title, screws with their signs and counts, tool, cautions, gauges, parts. */
export function BenchText({ step }: { readonly step: ViewEntry<"stepLines"> }) {
  const words = useWords();
  const own = words.screws;
  const pick = usePick();
  const types = useView("screwTypes", null);
  const parts = useOne("stepParts", { id: step.id });
  const items = parts?.items ?? [];
  return (
    <section className="bench-text">
      <h1>{pick(step.label, step.labelZh) || step.id}</h1>
      {step.times > 1 && <p className="bench-times">{own.timesDone(step.times)}</p>}
      <StepCautions id={step.id} />
      {step.tools.length > 0 && (
        <p className="bench-tool">
          <span className="dim">{own.tools}</span>{" "}
          <b>{step.tools.map((tool) => pick(tool.label, tool.labelZh) || tool.id).join(" → ")}</b>
        </p>
      )}
      {step.types.length > 0 && (
        <ul className="bench-screws" aria-label={own.screwsHeading}>
          {step.types.map(({ typeId, count }) => {
            const type = types?.get(typeId);
            return (
              <li key={typeId}>
                <ScrewSign type={type} sizePx={44} />
                <b className="bench-of">{own.times(count)}</b>
                <TypeName id={typeId} type={type} />
                {type?.threadlocker === true && <b className="bench-lock">{own.threadlocker}</b>}
              </li>
            );
          })}
        </ul>
      )}
      <StepMoments id={step.id} />
      {parts?.harness != null && (
        <p>
          <span className="dim">{own.harness}</span>{" "}
          <b>
            H{parts.harness.number} {pick(parts.harness.label, parts.harness.labelZh)}
          </b>
        </p>
      )}
      {parts !== undefined && parts.bench.length > 0 && <BenchLines lines={parts.bench} />}
      {items.length > 0 && (
        <>
          <h2>
            {own.parts} <span className="dim">{items.length}</span>
          </h2>
          <ul className="bench-parts">
            {items.slice(0, MOST_PARTS).map((item) => (
              <li key={item.id}>{pick(item.label, item.labelZh) || item.id}</li>
            ))}
          </ul>
          {items.length > MOST_PARTS && (
            <p className="dim">{words.layout.follows.more(items.length - MOST_PARTS)}</p>
          )}
        </>
      )}
    </section>
  );
}
