import { useState } from "react";
import { computedFrom } from "../../worker/electric/computed.ts";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import {
  type CalcStep,
  coilSteps,
  contactSteps,
  dropStep,
  fuseSteps,
  lampSteps,
  netDropSteps,
  supplySteps,
  wireSteps,
} from "../wiring/currents/calc.ts";
import { CalcTable } from "../wiring/currents/calc-table.tsx";
import { OnDemand, WorkedCurrentTable } from "../wiring/currents/worked.tsx";
import { useWords } from "../words.tsx";
import type { Said } from "./chosen.ts";
import { numberName, unitOf } from "./numbers.ts";

type Finding = Said["entry"]["finding"];
type Basis = ViewEntry<"electricBasis">;

/** How the figures of an electrical finding came about; nothing of other findings. */
export function Computation({ finding }: { readonly finding: Finding }) {
  const words = useWords().electric.calc;
  const [open, setOpen] = useState(false);
  if (computedFrom(finding.rule).length === 0) return null;
  return (
    <div className="computation">
      <button type="button" className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? words.hide : words.show}
      </button>
      {open && <Steps finding={finding} />}
    </div>
  );
}

function Steps({ finding: { rule, subjects, numbers } }: { readonly finding: Finding }) {
  const { electric, checks, common } = useWords();
  const bases = useView("electricBasis", { rule, subjects });
  const steps = Object.entries(numbers).map(
    ([name, value]): CalcStep => ({
      what: numberName(checks, name),
      formula: "",
      result: `${value}${typeof value === "number" ? unitOf(name) : ""}`,
    }),
  );
  return (
    <>
      {bases === null && <p className="dim">{common.loading}</p>}
      {[...(bases ?? [])].map(([key, basis]) => (
        <div key={key}>
          <CalcTable caption={`${electric.computation}: ${basis.name}`} steps={stepsOf(electric, basis)} />
          {(basis.kind === "wire" || basis.kind === "contact") && (
            <OnDemand label={electric.worked.showCurrent}>
              {() => <WorkedCurrentTable partId={partOf(basis)} />}
            </OnDemand>
          )}
        </div>
      ))}
      <CalcTable caption={electric.calc.numbers} steps={steps} />
    </>
  );
}

const partOf = (basis: Basis & { readonly kind: "wire" | "contact" }): string =>
  basis.kind === "wire" ? basis.rating.wireId : basis.rating.pointId;

function stepsOf(words: ReturnType<typeof useWords>["electric"], basis: Basis): readonly CalcStep[] {
  switch (basis.kind) {
    case "wire":
      return [...wireSteps(words, basis.rating), dropStep(words, basis.carried)];
    case "contact":
      return [...contactSteps(words, basis.rating), dropStep(words, basis.carried)];
    case "fuse":
      return fuseSteps(words, basis.rating);
    case "coil":
      return coilSteps(words, basis.rating);
    case "lamp":
      return lampSteps(words, basis.rating);
    case "supply":
      return supplySteps(words, basis.rating);
    case "net":
      return netDropSteps(words, basis.rating, (wireId) => basis.printed.get(wireId) ?? wireId);
  }
}
