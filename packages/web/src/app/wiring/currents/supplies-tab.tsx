import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { type DataColumn, DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { BudgetBars } from "./budget-bars.tsx";
import { CornerTable, WorstOf } from "./corner-table.tsx";
import { ampsText, figure, percentText } from "./figures.ts";
import { ShareMark, ShareScale } from "./share-mark.tsx";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { useCurrents } from "./use-currents.ts";

export type SupplyLine = ViewEntry<"electricSupplies">;

/** The budget of every supply, as a table and drawn. */
export function SuppliesTab() {
  const { electric: words, common } = useWords();
  const pick = usePick();
  const address = useCurrents();
  const supplies = useView("electricSupplies", null);
  if (supplies === null) return <p className="dim">{common.loading}</p>;
  if (supplies.size === 0) return <TabEmpty tab="supplies" table="supplies" />;
  const { col } = words;
  const budget = (key: "steadyA" | "holdA" | "rmsA" | "worstA", header: string): DataColumn<SupplyLine> => ({
    key,
    header,
    align: "end",
    value: (one) => one.budget[key].most,
    cell: (one) => <WorstOf spread={one.budget[key]} text={ampsText} />,
  });
  return (
    <>
      <TabHead tab="supplies" />
      <ShareScale />
      <DataTable
        caption={words.supply.budget}
        rows={[...supplies.values()]}
        rowKey={(one) => one.id}
        columns={[
          {
            key: "supply",
            header: col.supply,
            value: (one) => one.id,
            cell: (one) => (
              <>
                <Link href={address("supplies", one.id)}>{pick(one.label.en, one.label.zh) || one.id}</Link>
                <small>
                  {words.supply.tolerance(figure(one.volts), figure(one.tolerancePct))} ·{" "}
                  {words.supply.loads(one.loads)}
                </small>
              </>
            ),
          },
          {
            key: "share",
            header: col.share,
            value: (one) => one.share,
            text: (one) => percentText(one.share),
            cell: (one) => <ShareMark share={one.share} />,
          },
          budget("steadyA", `${col.steady}, A`),
          budget("holdA", `${col.hold}, A`),
          budget("rmsA", `${col.rms}, A`),
          budget("worstA", `${col.worst}, A`),
          {
            key: "rated",
            header: `${col.rated}, A`,
            align: "end",
            value: (one) => one.budget.ratedA,
            cell: (one) => ampsText(one.budget.ratedA),
          },
          {
            key: "limit",
            header: `${col.limits}, A`,
            align: "end",
            value: (one) => one.limitA ?? -1,
            text: (one) => String(one.limitA ?? ""),
            cell: (one) => (one.limitA === null ? "–" : ampsText(one.limitA)),
          },
          {
            key: "headroom",
            header: `${col.headroom}, A`,
            align: "end",
            value: (one) => one.headroomA.least,
            cell: (one) => <WorstOf spread={one.headroomA} text={ampsText} worst="least" />,
          },
        ]}
        detail={{
          label: words.showCorners,
          of: (one) => (
            <CornerTable
              caption={words.corners}
              rows={[
                { name: col.steady, spread: one.budget.steadyA, text: ampsText },
                { name: col.hold, spread: one.budget.holdA, text: ampsText },
                { name: col.rms, spread: one.budget.rmsA, text: ampsText },
                { name: col.worst, spread: one.budget.worstA, text: ampsText },
                { name: col.headroom, spread: one.headroomA, text: ampsText },
              ]}
            />
          ),
        }}
      />
      {[...supplies.values()].map((one) => (
        <section key={one.id} className="budget">
          <h3>
            <Link href={address("supplies", one.id)}>{pick(one.label.en, one.label.zh) || one.id}</Link>{" "}
            <ShareMark share={one.share} />
          </h3>
          <BudgetBars supply={one} parts={[]} />
        </section>
      ))}
    </>
  );
}
