import type { UnitState } from "@pinwright/engine";
import { Link } from "wouter";
import { useDesk, useView } from "../../book/desk.tsx";
import { stepAddress } from "../../steps/address.ts";
import { useWords } from "../../words.tsx";
import { useNames, usePeople, useWhen } from "../names.tsx";

/** Steps that were done, in their order, with the minutes that they took. */
export function UnitSteps({ state }: { readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const nameOf = usePeople();
  const when = useWhen();
  const steps = useView("stepLines", null);
  return (
    <section aria-labelledby="unit-steps">
      <h3 id="unit-steps">{own.steps.title}</h3>
      {state.steps.size === 0 ? (
        <p className="dim">{own.steps.none}</p>
      ) : (
        <div className="plain-scroll">
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{own.steps.step}</th>
                <th scope="col" className="end">
                  {own.steps.minutes}
                </th>
                <th scope="col" className="end">
                  {own.steps.count}
                </th>
                <th scope="col">{own.steps.who}</th>
                <th scope="col">{own.steps.when}</th>
              </tr>
            </thead>
            <tbody>
              {[...state.steps.values()].map(({ step, minutes, count, source }) => (
                <tr key={step}>
                  <th scope="row">
                    {steps?.has(step) === true ? (
                      <Link href={stepAddress(bookId, step)}>{names.step(step)}</Link>
                    ) : (
                      names.step(step)
                    )}
                  </th>
                  <td className="end">{minutes > 0 && own.minutes(minutes)}</td>
                  <td className="end">{count}</td>
                  <td>{nameOf(source.person)}</td>
                  <td className="dim">{when(source.at)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
