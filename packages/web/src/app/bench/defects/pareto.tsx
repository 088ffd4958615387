import { NativeSelect } from "@mantine/core";
import type { KeptDefect } from "@pinwright/contract";
import { type ParetoMeasure, pareto } from "@pinwright/engine";
import { useMemo, useState } from "react";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { useWords } from "../../words.tsx";
import { keyOf, PARETO_BYS, type ParetoBy } from "./keys.ts";
import { ParetoChart } from "./pareto-chart.tsx";
import { useKeyName } from "./use-key-name.ts";

/** Bars that are drawn; the table has all. */
const MOST_BARS = 15;

/** What goes wrong most: bars with a line that adds up, and the table beside them. */
export function Pareto({
  defects,
  by,
  setBy,
  only,
  pick,
}: {
  readonly defects: readonly KeptDefect[];
  readonly by: ParetoBy;
  readonly setBy: (by: ParetoBy) => void;
  readonly only: string | null;
  readonly pick: (key: string) => void;
}) {
  const { benchQuality } = useWords();
  const own = benchQuality.pareto;
  const nameOf = useKeyName();
  const [measure, setMeasure] = useState<ParetoMeasure>("count");
  const counted = useMemo(
    () =>
      defects.flatMap((defect) => {
        const key = keyOf(defect, by);
        return key === null ? [] : [{ key, minutes: defect.mended?.minutes ?? 0 }];
      }),
    [defects, by],
  );
  const bars = useMemo(() => pareto(counted, measure), [counted, measure]);
  const hasMinutes = counted.some(({ minutes }) => minutes > 0);
  return (
    <section aria-labelledby="pareto">
      <h3 id="pareto">{own.title}</h3>
      <p className="dim">{own.about}</p>
      <div className="quality-fields">
        <NativeSelect
          label={own.by}
          value={by}
          data={PARETO_BYS.map((value) => ({ value, label: own.bys[value] }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setBy(PARETO_BYS.find((one) => one === value) ?? "what");
          }}
        />
        <NativeSelect
          label={own.measure}
          value={measure}
          data={(["count", "minutes"] as const).map((value) => ({ value, label: own.measures[value] }))}
          onChange={(event) => setMeasure(event.currentTarget.value === "minutes" ? "minutes" : "count")}
        />
      </div>
      {bars.length === 0 && <p>{own.none}</p>}
      {bars.length > 0 && measure === "minutes" && !hasMinutes && <p>{own.noMinutes}</p>}
      {bars.length > 0 && (measure === "count" || hasMinutes) && (
        <div className="quality-beside">
          <div>
            <ParetoChart
              label={own.chart(own.bys[by])}
              bars={bars.slice(0, MOST_BARS)}
              measure={measure}
              nameOf={(key) => nameOf(by, key)}
              only={only}
              pick={pick}
            />
            {bars.length > MOST_BARS && <p className="dim">{own.rest(bars.length - MOST_BARS)}</p>}
          </div>
          <TableScroll>
            <table className="plain">
              <caption>{own.chart(own.bys[by])}</caption>
              <thead>
                <tr>
                  <th scope="col">{own.bys[by]}</th>
                  <th scope="col" className="end">
                    {own.count}
                  </th>
                  <th scope="col" className="end">
                    {own.minutes}
                  </th>
                  <th scope="col" className="end">
                    {own.cumulative}
                  </th>
                </tr>
              </thead>
              <tbody>
                {bars.map(({ key, count, minutes, cumulativeShare }) => (
                  <tr key={key}>
                    <th scope="row">
                      <button
                        type="button"
                        className="link-button"
                        aria-pressed={key === only}
                        onClick={() => pick(key)}
                      >
                        {nameOf(by, key)}
                      </button>
                    </th>
                    <td className="end">{count}</td>
                    <td className="end">{Math.round(minutes)}</td>
                    <td className="end">{benchQuality.percent(cumulativeShare)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableScroll>
        </div>
      )}
    </section>
  );
}
