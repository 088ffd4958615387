import { SegmentedControl, Switch } from "@mantine/core";
import { useMemo, useState } from "react";
import { useSearchParams } from "wouter";
import { CountField } from "../book/count-field.tsx";
import { useOne, useView } from "../book/desk.tsx";
import { useAskedCount } from "../book/use-asked-count.ts";
import { FilterField } from "../wiring/currents/filter-field.tsx";
import { useWords } from "../words.tsx";
import { moneyText } from "./amounts.ts";
import { BillLevel } from "./bill-level.tsx";
import { BillList } from "./bill-list.tsx";
import { type BillNodes, isCalled, narrowedTo, ROOT } from "./bill-rows.ts";
import { BillTree } from "./bill-tree.tsx";
import { MOST_MACHINES, USUAL_MACHINES } from "./machines.ts";
import { NothingInBill } from "./nothing-in-bill.tsx";
import { PartPanel } from "./part-panel.tsx";
import { TotalText } from "./total-text.tsx";

const VIEWS = ["tree", "level", "list"] as const;
type View = (typeof VIEWS)[number];

/** The bill of the machine: what is in it at all levels, what that costs at a number of machines, what is called out. */
export function BillTab({ nodes }: { readonly nodes: BillNodes }) {
  const words = useWords();
  const own = words.parts;
  const [params, setParams] = useSearchParams();
  const [filter, setFilter] = useState("");
  const view: View = VIEWS.find((one) => one === params.get("view")) ?? "tree";
  const [machines, setMachines] = useAskedCount("machines", USUAL_MACHINES, MOST_MACHINES);
  const onlyFlagged = params.get("flagged") === "yes";
  const chosenId = params.get("id");
  const costs = useView("billCosts", { machines });
  const flags = useView("partFlags", null);
  const figures = useOne("billFigures", { machines });
  const set = (changes: Readonly<Record<string, string | null>>): void =>
    setParams(
      (before) => {
        const now = new URLSearchParams(before);
        for (const [name, value] of Object.entries(changes))
          if (value === null) now.delete(name);
          else now.set(name, value);
        return now;
      },
      { replace: true },
    );
  const choose = (id: string | null): void => set({ id });
  const wanted = filter.trim().toLowerCase();
  const fits = useMemo(() => {
    const asked = wanted === "" ? [] : wanted.split(/\s+/u);
    if (asked.length === 0 && !onlyFlagged) return null;
    return (node: Parameters<typeof isCalled>[0]): boolean =>
      (!onlyFlagged || flags?.has(node.id) === true) && isCalled(node, asked);
  }, [wanted, onlyFlagged, flags]);
  const narrowed = useMemo(() => (fits === null ? null : narrowedTo(nodes, fits)), [nodes, fits]);
  if (nodes.size <= 1) return <NothingInBill />;
  const shared = { nodes, costs, flags, chosenId, choose };
  return (
    <>
      <h2>{own.billTitle}</h2>
      <p>{own.billAbout}</p>
      <div className="question">
        <SegmentedControl
          aria-label={own.viewOf}
          value={view}
          onChange={(value) => set({ view: value === "tree" ? null : value })}
          data={VIEWS.map((value) => ({ value, label: own.views[value] }))}
        />
        <CountField label={own.machines} value={machines} most={MOST_MACHINES} onCount={setMachines} />
        {view !== "level" && (
          <>
            <FilterField value={filter} onChange={setFilter} />
            <Switch
              label={own.onlyFlagged(flags?.size ?? 0)}
              checked={onlyFlagged}
              onChange={(event) => set({ flagged: event.currentTarget.checked ? "yes" : null })}
            />
          </>
        )}
      </div>
      {figures !== undefined && (
        <p className="bill-cost">
          {own.oneMachineCosts(machines)}{" "}
          <b>
            <TotalText total={figures.each} currency={figures.currency} />
          </b>{" "}
          <span className="dim">
            {own.forAll(moneyText(figures.each.value * BigInt(machines), figures.currency))}
          </span>{" "}
          <span className="dim">{own.costAbout}</span>
        </p>
      )}
      {narrowed !== null && narrowed.ids.size === 0 && <p>{words.lists.none}</p>}
      <div className={chosenId === null ? "" : "bill-and-part"}>
        <div>
          {view === "tree" ? (
            <BillTree {...shared} narrowed={narrowed} />
          ) : view === "level" ? (
            <BillLevel
              {...shared}
              atId={params.get("at") ?? ROOT}
              go={(at) => set({ at: at === ROOT ? null : at })}
            />
          ) : (
            <BillList {...shared} fits={fits} />
          )}
        </div>
        {chosenId !== null && (
          <PartPanel
            key={chosenId}
            id={chosenId}
            nodes={nodes}
            costs={costs}
            flags={flags}
            choose={choose}
            goInto={(at) => set({ view: "level", at: at === ROOT ? null : at })}
          />
        )}
      </div>
    </>
  );
}
