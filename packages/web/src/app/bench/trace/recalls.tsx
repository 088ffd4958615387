import { Button } from "@mantine/core";
import type { Recall } from "@pinwright/contract";
import { useState } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useOwnFacts } from "../../../floor/device.tsx";
import { useMay } from "../../session/session.tsx";
import { useWords } from "../../words.tsx";
import { usePeople, useWhen } from "../names.tsx";
import { useAsked } from "../use-asked.ts";
import { SayWhy } from "./call-back.tsx";
import { useRecallText } from "./recall-text.ts";
import { queryOf, type TraceQuery } from "./trace-query.ts";

/** Every recall, open ones first, with how many units it concerns. */
export function Recalls({ show }: { readonly show: (query: TraceQuery) => void }) {
  const { benchTrace, common } = useWords();
  const own = benchTrace.recall;
  const [params] = useSearchParams();
  const asked = params.get("recall");
  // What this browser sends may be a recall: the server is asked again.
  const sent = useOwnFacts().filter(({ sentAt }) => sentAt !== null).length;
  const { answer, failed } = useAsked(`recalls ${sent}`, (signal) => call("recalls", { parts: {}, signal }));
  return (
    <section aria-labelledby="recalls">
      <h3 id="recalls">{own.title}</h3>
      <p className="dim">{own.about}</p>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {answer === undefined ? (
        failed === "" && <p className="dim">{common.loading}</p>
      ) : answer.length === 0 ? (
        <p>{own.none}</p>
      ) : (
        <div className="plain-scroll">
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{own.what}</th>
                <th scope="col">{own.reason}</th>
                <th scope="col" className="end">
                  {own.units}
                </th>
                <th scope="col" className="end">
                  {own.released}
                </th>
                <th scope="col" className="end">
                  {own.house}
                </th>
                <th scope="col">{own.state}</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {answer.map((recall) => (
                <Row key={recall.recall} recall={recall} isAsked={recall.recall === asked} show={show} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function Row({
  recall,
  isAsked,
  show,
}: {
  readonly recall: Recall;
  readonly isAsked: boolean;
  readonly show: (query: TraceQuery) => void;
}) {
  const { benchTrace, benchUnit } = useWords();
  const own = benchTrace.recall;
  const textOf = useRecallText();
  const nameOf = usePeople();
  const when = useWhen();
  const mayEnd = useMay("lead");
  const [isEnding, setEnding] = useState(false);
  const { begun, ended } = recall;
  const query = (): TraceQuery => {
    const { part, lot, type, revision } = recall;
    const blank = queryOf(new URLSearchParams());
    return { ...blank, part: part ?? "", lot: lot ?? "", type: type ?? "", revision: revision ?? "" };
  };
  return (
    <>
      <tr aria-current={isAsked ? "true" : undefined}>
        <th scope="row">
          {textOf(recall)}
          <small className="dim">{recall.recall}</small>
        </th>
        <td>
          {begun.why}
          <small className="dim">{benchUnit.byOn(nameOf(begun.person), when(begun.at))}</small>
        </td>
        <td className="end">{recall.units}</td>
        <td className="end">{recall.released}</td>
        <td className="end">{recall.units - recall.released}</td>
        <td>
          {ended === null ? (
            <b className="amber-text">{own.isOpen}</b>
          ) : (
            own.ended(nameOf(ended.person), when(ended.at), ended.why)
          )}
        </td>
        <td className="trace-buttons">
          <Button size="compact-sm" variant="default" onClick={() => show(query())}>
            {own.show}
          </Button>
          {mayEnd && ended === null && !isEnding && (
            <Button
              size="compact-sm"
              variant="default"
              aria-label={`${own.end} ${recall.recall}`}
              onClick={() => setEnding(true)}
            >
              {own.end}
            </Button>
          )}
        </td>
      </tr>
      {isEnding && (
        <tr>
          <td colSpan={7}>
            <SayWhy
              title={own.endTitle(recall.recall)}
              label={own.endWhy}
              submit={own.endDo}
              bodyOf={(why) => ({ kind: "recall-ended", recall: recall.recall, why })}
              close={() => setEnding(false)}
            />
          </td>
        </tr>
      )}
    </>
  );
}
