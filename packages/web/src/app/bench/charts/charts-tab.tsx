import { NativeSelect } from "@mantine/core";
import { compareText } from "@pinwright/kernel";
import { useMemo } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { useAsked } from "../use-asked.ts";
import { StudyView } from "./study-view.tsx";
import { useStudy } from "./use-study.ts";
import "./charts.css";

const MOSTS = [100, 1000, 10_000] as const;
const SIZES = [1, 2, 3, 4, 5, 6, 8, 10] as const;

/** Whether a measurement is steady and keeps within the design's limits. */
export default function ChartsTab() {
  const { benchQuality } = useWords();
  const own = benchQuality.charts;
  const { bookId } = useDesk();
  const names = useNames();
  const [params, setParams] = useSearchParams();
  const known = useView("benchTests", null);
  // How many units took each test only helps to choose: it need not follow every reading.
  const counts = useAsked(
    `passes ${bookId}`,
    (signal) => call("passes", { parts: {}, query: { book: bookId }, signal }),
    "once",
  );
  const instruments = useAsked("instruments", (signal) => call("instruments", { parts: {}, signal }), "once");
  const tests = useMemo(() => {
    const units = new Map<string, number>();
    for (const { test, units: count } of counts.answer?.tests ?? [])
      units.set(test, (units.get(test) ?? 0) + count);
    return [...(known?.values() ?? [])]
      .filter(({ kind }) => kind === "measure")
      .map((test) => ({ ...test, units: units.get(test.id) ?? 0 }))
      .sort((a, b) => b.units - a.units || compareText(a.id, b.id));
  }, [known, counts.answer]);
  const asked = params.get("test") ?? "";
  const test = tests.find(({ id }) => id === asked) ?? tests[0];
  const most = MOSTS.find((one) => String(one) === params.get("most")) ?? 1000;
  const size = SIZES.find((one) => String(one) === params.get("size")) ?? 1;
  const put = (name: string, value: string): void =>
    setParams(
      (before) => {
        const next = new URLSearchParams(before);
        next.set(name, value);
        return next;
      },
      { replace: true },
    );
  const testId = test?.id ?? "";
  const readings = useAsked(
    `readings ${testId} ${most}`,
    testId === ""
      ? null
      : (signal) => call("readings", { parts: {}, query: { test: testId, limit: most }, signal }),
  );
  const { study, failed } = useStudy(testId, readings.answer, instruments.answer, size);
  const why = [counts.failed, readings.failed, instruments.failed, failed].find((text) => text !== "");
  const hasAny = tests.some(({ units }) => units > 0);
  return (
    <div className="currents-body quality">
      <h2>{own.title}</h2>
      <p>{own.about}</p>
      {why !== undefined && (
        <p className="error-text" role="alert">
          {why}
        </p>
      )}
      {known !== null && tests.length === 0 && <p>{own.noTests}</p>}
      {tests.length > 0 && counts.answer !== undefined && !hasAny && (
        <p>
          {own.empty} {own.emptyHow}
        </p>
      )}
      {test !== undefined && hasAny && (
        <>
          <search className="quality-fields">
            <NativeSelect
              label={own.test}
              value={test.id}
              data={tests.map(({ id, units }) => ({
                value: id,
                label: `${names.test(id)} · ${id} (${units})`,
              }))}
              onChange={(event) => put("test", event.currentTarget.value)}
            />
            <NativeSelect
              label={own.points}
              value={String(size)}
              data={SIZES.map((value) => ({
                value: String(value),
                label: value === 1 ? own.sizes[1] : own.sizes.more(value),
              }))}
              onChange={(event) => put("size", event.currentTarget.value)}
            />
            <NativeSelect
              label={own.most}
              value={String(most)}
              data={MOSTS.map((value) => ({ value: String(value), label: own.mostOf(value) }))}
              onChange={(event) => put("most", event.currentTarget.value)}
            />
          </search>
          {study === undefined && why === undefined && <p className="dim">{own.computing}</p>}
          {study === null && <p>{own.fewer}</p>}
          {study != null && (
            <StudyView
              study={study}
              name={names.test(test.id)}
              unit={test.unit}
              limits={{ lower: test.min, upper: test.max }}
            />
          )}
        </>
      )}
    </div>
  );
}
