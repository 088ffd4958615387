import { useWords } from "../../words.tsx";
import type { CalcStep } from "./calc.ts";
import "./tables.css";

/** A computation laid out step by step. */
export function CalcTable({
  caption,
  steps,
}: {
  readonly caption: string;
  readonly steps: readonly CalcStep[];
}) {
  const words = useWords().electric;
  const hasFormula = steps.some(({ formula }) => formula !== "");
  return (
    <div className="plain-scroll">
      <table className="plain calc">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.step}</th>
            {hasFormula && <th scope="col">{words.formula}</th>}
            <th scope="col" className="end">
              {words.result}
            </th>
          </tr>
        </thead>
        <tbody>
          {steps.map(({ what, formula, result }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              {hasFormula && <td>{formula}</td>}
              <td className="end">
                <b>{result}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
