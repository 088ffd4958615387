import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";

type Test = ViewEntry<"boardTests">;

/** Steps of testing a kind of board, each with its limits. */
export function TestTable({ caption, tests }: { readonly caption: string; readonly tests: readonly Test[] }) {
  const own = useWords().boards;
  const pick = usePick();
  const limits = ({ kind, min, max, nominal, unit }: Test) => {
    if (kind !== "measure") return null;
    const text = own.limitsOf(min, max, unit);
    return (
      <>
        {text === "" ? <span className="amber-text">{own.noLimits}</span> : <b>{text}</b>}
        {nominal !== null && <small>{own.nominal(nominal, unit)}</small>}
      </>
    );
  };
  return (
    <div className="plain-scroll">
      <table className="plain test-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="end">
              {own.order}
            </th>
            <th scope="col">{own.test}</th>
            <th scope="col">{own.do}</th>
            <th scope="col">{own.judged}</th>
            <th scope="col">{own.limits}</th>
          </tr>
        </thead>
        <tbody>
          {tests.map((test, i) => (
            <tr key={test.id}>
              <td className="end">{i + 1}</td>
              <th scope="row">{pick(test.label, test.labelZh) || test.id}</th>
              <td>
                {pick(test.do, test.doZh)}
                {test.caution !== "" && (
                  <small className="caution">{pick(test.caution, test.cautionZh)}</small>
                )}
              </td>
              <td>{own.kinds[test.kind]}</td>
              <td>{limits(test)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
