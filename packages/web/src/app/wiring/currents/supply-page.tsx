import { Button } from "@mantine/core";
import { IconArrowLeft, IconMapPin } from "@tabler/icons-react";
import { Link } from "wouter";
import { useDesk, useView } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { Fact } from "../net-detail.tsx";
import { BudgetBars, PieceLegend } from "./budget-bars.tsx";
import { layoutOf } from "./conductors-tab.tsx";
import { CornerTable } from "./corner-table.tsx";
import { ampsText, figure, percentText } from "./figures.ts";
import { ShareMark } from "./share-mark.tsx";
import { useCurrents } from "./use-currents.ts";

/** One supply: its budget at the corners, drawn and in figures, and its worst moment load by load. */
export function SupplyPage({ id }: { readonly id: string }) {
  const { electric: words, wiring, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const address = useCurrents();
  const found = useView("electricSupply", id);
  const supply = found?.get("");
  if (found === null) return <p className="dim">{common.loading}</p>;
  if (supply === undefined) return <p>{wiring.unknown(id)}</p>;
  const { budget, headroomA, limitA, parts } = supply;
  const { col } = words;
  const sum = parts.reduce((total, part) => total + part.amps, 0);
  return (
    <article>
      <Back tab="supplies" />
      <header className="detail-head">
        <h2>{pick(supply.label.en, supply.label.zh) || id}</h2>
        <span className="dim">{id}</span>
        <ShareMark share={supply.share} />
        <span style={{ flex: 1 }} />
        <Button component={Link} variant="default" href={address("ladder", id)}>
          {words.tabs.ladder}
        </Button>
        {supply.itemId !== null && (
          <Button
            component={Link}
            variant="default"
            href={addressOf(bookId, { kind: "item", id: supply.itemId })}
            leftSection={<IconMapPin size={18} />}
          >
            {words.onLayout}
          </Button>
        )}
      </header>
      <dl className="facts">
        <Fact
          term={col.volts}
          text={words.supply.tolerance(`${figure(supply.volts)} V`, figure(supply.tolerancePct))}
        />
        <Fact term={col.rated} text={ampsText(budget.ratedA)} />
        <Fact
          term={words.supply.limitModes[supply.limitMode]}
          text={limitA === null ? "–" : ampsText(limitA)}
        />
        {supply.storedJ !== null && (
          <Fact term={words.calc.storedEnergy} text={words.supply.stored(figure(supply.storedJ))} />
        )}
        <Fact term={col.headroom} text={ampsText(headroomA.least)} />
      </dl>
      <h3>{words.supply.budget}</h3>
      <BudgetBars supply={supply} parts={parts} />
      <PieceLegend parts={parts} />
      <CornerTable
        caption={words.corners}
        rows={[
          { name: `${col.steady}: ${words.supply.steadyWhy}`, spread: budget.steadyA, text: ampsText },
          { name: `${col.hold}: ${words.supply.holdWhy}`, spread: budget.holdA, text: ampsText },
          { name: `${col.rms}: ${words.supply.rmsWhy}`, spread: budget.rmsA, text: ampsText },
          { name: `${col.worst}: ${words.supply.worstWhy}`, spread: budget.worstA, text: ampsText },
          { name: `${col.headroom}: ${words.supply.headroomWhy}`, spread: headroomA, text: ampsText },
        ]}
      />
      <h3>
        {words.moment}: {words.momentOf(parts.length)}
      </h3>
      <p className="dim">
        {words.supply.partsHint}{" "}
        <Link
          href={layoutOf(
            bookId,
            parts.flatMap(({ itemId }) => itemId ?? []),
          )}
        >
          {words.onLayout}
        </Link>
      </p>
      <DataTable
        caption={words.supply.parts}
        rows={parts}
        rowKey={(part) => part.id}
        first={60}
        columns={[
          {
            key: "load",
            header: col.load,
            value: (part) => pick(part.label.en, part.label.zh) || part.id,
            cell: (part) => (
              <>
                {part.itemId === null ? (
                  part.id
                ) : (
                  <Link href={addressOf(bookId, { kind: "item", id: part.itemId })}>
                    {pick(part.label.en, part.label.zh) || part.id}
                  </Link>
                )}
                <small>{part.id}</small>
              </>
            ),
          },
          { key: "kind", header: col.kind, value: (part) => words.kinds[part.kind] },
          {
            key: "amps",
            header: `${col.amps}, A`,
            align: "end",
            value: (part) => part.amps,
            cell: (part) => ampsText(part.amps),
          },
          {
            key: "part",
            header: `%`,
            align: "end",
            value: (part) => (sum > 0 ? part.amps / sum : 0),
            cell: (part) => percentText(sum > 0 ? part.amps / sum : 0),
          },
        ]}
      />
      <p>
        {words.supply.sum}: <b>{ampsText(sum)}</b>
      </p>
    </article>
  );
}

/** Leads back to the list of a tab. */
export function Back({ tab }: { readonly tab: "supplies" | "fuses" }) {
  const words = useWords().electric;
  const address = useCurrents();
  return (
    <Link href={address(tab)} className="currents-back">
      <IconArrowLeft size={18} /> {words.tabs[tab]}
    </Link>
  );
}
