import { useMemo } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { useAsked } from "../use-asked.ts";
import { Recalls } from "./recalls.tsx";
import { TraceForm } from "./trace-form.tsx";
import { type Concerned, isAsked, paramsOf, queryOf, serverQuery } from "./trace-query.ts";
import { TraceResult } from "./trace-result.tsx";
import "./trace.css";

/** From a part, lot, kind, builder, instrument or time to every unit concerned, and recalls of them. */
export default function TraceTab() {
  const { common, benchTrace: own } = useWords();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const query = useMemo(() => queryOf(params), [params]);
  const wants = isAsked(query);
  const key = JSON.stringify(query);
  const traced = useAsked(
    `trace ${key}`,
    wants ? (signal) => call("trace", { parts: {}, query: serverQuery(query), signal }) : null,
  );
  const units = useAsked(
    `units ${bookId}`,
    wants ? (signal) => call("unitSummaries", { parts: {}, query: { book: bookId }, signal }) : null,
  );
  const concerned = useMemo((): readonly Concerned[] | undefined => {
    if (traced.answer === undefined || units.answer === undefined) return undefined;
    const summaries = new Map(units.answer.map((summary) => [summary.unit, summary]));
    return traced.answer.map(({ unit, isDirect }) => ({ unit, isDirect, summary: summaries.get(unit) }));
  }, [traced.answer, units.answer]);
  const failed = traced.failed || units.failed;
  return (
    <div className="currents-body">
      <h2>{own.title}</h2>
      <p className="dim">{own.about}</p>
      <TraceForm key={key} query={query} find={(to) => setParams(paramsOf(to))} />
      {failed !== "" && <p className="error-text">{failed}</p>}
      {!wants ? (
        <p>{own.ask}</p>
      ) : concerned === undefined ? (
        failed === "" && <p className="dim">{common.loading}</p>
      ) : (
        <TraceResult query={query} concerned={concerned} />
      )}
      <Recalls show={(to) => setParams(paramsOf(to))} />
    </div>
  );
}
