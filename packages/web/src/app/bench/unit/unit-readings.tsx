import { isWithin, type ReadingRecord, type UnitState } from "@pinwright/engine";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { useNames, usePeople, useWhen } from "../names.tsx";

type Test = ViewEntry<"benchTests">;

/** Tests that are shown before all are asked for. */
const FIRST = 15;

/** Where a test stands in the book. */
export const testAddress = (bookId: string, test: Pick<Test, "id" | "harness">): string =>
  test.harness === null
    ? `/b/${bookId}/tables/tests?id=${encodeURIComponent(test.id)}`
    : `/b/${bookId}/harnesses/${encodeURIComponent(test.harness)}/continuity`;

/** The limits that the design sets, in words; blank: none. */
function useLimits(): (test: Test | undefined) => string {
  const { benchUnit: own } = useWords();
  return (test) => {
    if (test === undefined) return "";
    const { min, max, unit } = test;
    if (min !== null && max !== null) return own.readings.between(String(min), String(max), unit);
    if (max !== null) return own.readings.atMost(String(max), unit);
    return min !== null ? own.readings.atLeast(String(min), unit) : "";
  };
}

/** Every test that was taken, with all its tries: the last one counts. */
export function UnitReadings({ state }: { readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const tests = useView("benchTests", null);
  const limits = useLimits();
  const [isAll, setAll] = useState(false);
  const struck = state.struck.filter(({ gate }) => gate === "test");
  // In the order of the book; what the book no longer has stands last.
  const ids = [...new Set([...state.readings.keys(), ...struck.map(({ of }) => of)])];
  const order = new Map([...(tests?.keys() ?? [])].map((id, i) => [id, i]));
  ids.sort((a, b) => (order.get(a) ?? order.size) - (order.get(b) ?? order.size));
  const shown = isAll || ids.length <= FIRST + 1 ? ids : ids.slice(0, FIRST);
  return (
    <section aria-labelledby="unit-readings">
      <h3 id="unit-readings">{own.readings.title}</h3>
      {ids.length === 0 ? (
        <p className="dim">{own.readings.none}</p>
      ) : (
        <div className="plain-scroll">
          <table className="plain unit-readings">
            <thead>
              <tr>
                <th scope="col">{own.readings.test}</th>
                <th scope="col">{own.readings.limits}</th>
                <th scope="col">{own.readings.tries}</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((id) => {
                const test = tests?.get(id);
                return (
                  <tr key={id}>
                    <th scope="row">
                      {test === undefined ? (
                        id
                      ) : (
                        <Link href={testAddress(bookId, test)}>{names.test(id)}</Link>
                      )}
                    </th>
                    <td>{limits(test)}</td>
                    <td>
                      <Tries
                        test={test}
                        readings={state.readings.get(id) ?? []}
                        struck={struck.filter(({ of }) => of === id)}
                      />
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
          {shown.length < ids.length && (
            <button type="button" className="link-button" onClick={() => setAll(true)}>
              {own.readings.all(ids.length)}
            </button>
          )}
        </div>
      )}
    </section>
  );
}

type Try = Pick<ReadingRecord, "value" | "good" | "source"> & {
  readonly instrument: string;
  readonly isStruck: boolean;
};

function Tries({
  test,
  readings,
  struck,
}: {
  readonly test: Test | undefined;
  readonly readings: readonly ReadingRecord[];
  readonly struck: UnitState["struck"];
}) {
  const { benchUnit: own } = useWords();
  const nameOf = usePeople();
  const when = useWhen();
  const tries: Try[] = [
    ...readings.map((one) => ({ ...one, isStruck: false })),
    ...struck.map((one) => ({ ...one, instrument: "", isStruck: true })),
  ].sort((a, b) => (a.source.at < b.source.at ? -1 : a.source.at > b.source.at ? 1 : 0));
  const result = ({ value, good }: Try): string => {
    if (!good) return own.readings.bad;
    // A value that the design's limits do not let through is not good, whatever was ticked.
    return test !== undefined && value !== null && !isWithin(test, { value, good })
      ? own.readings.outside
      : own.readings.good;
  };
  return (
    <ol className="unit-tries">
      {tries.map((one) => {
        const says = result(one);
        return (
          <li key={`${one.source.stream} ${one.source.seq}`} className={one.isStruck ? "struck" : ""}>
            {one.value !== null && <b>{own.readings.value(one.value, test?.unit ?? "")} </b>}
            <span className={says === own.readings.good ? "" : "error-text"}>{says}</span>
            {one.isStruck && <span> ({own.readings.corrected})</span>}
            <small className="dim">
              {[one.instrument, nameOf(one.source.person), when(one.source.at)].filter(Boolean).join(" · ")}
            </small>
          </li>
        );
      })}
    </ol>
  );
}
