import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { coilSteps } from "./calc.ts";
import { CalcTable } from "./calc-table.tsx";
import { ampsText, ohmText, percentText, secondsText } from "./figures.ts";
import { FilterField, hasWords } from "./filter-field.tsx";
import { ShareMark, ShareScale } from "./share-mark.tsx";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { useCurrents } from "./use-currents.ts";

type Coil = ViewEntry<"electricCoils">;

/** Every coil with its heat and what saves it. */
export function CoilsTab() {
  const { electric: words, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const coils = useView("electricCoils", null);
  const [filter, setFilter] = useState("");
  if (coils === null) return <p className="dim">{common.loading}</p>;
  if (coils.size === 0) return <TabEmpty tab="coils" table="elements" />;
  const { col } = words;
  const rows = [...coils.values()].filter((one) =>
    hasWords(`${one.id} ${one.label.en} ${one.label.zh} ${one.rating.supplyId}`, filter),
  );
  return (
    <>
      <TabHead tab="coils" />
      <ShareScale />
      <DataTable
        caption={words.tabs.coils}
        rows={rows}
        rowKey={(one) => one.id}
        first={60}
        tools={<FilterField value={filter} onChange={setFilter} />}
        columns={[
          {
            key: "load",
            header: col.coil,
            value: (one) => pick(one.label.en, one.label.zh) || one.id,
            cell: (one) => (
              <>
                <Link href={addressOf(bookId, { kind: "item", id: one.rating.itemId })}>
                  {pick(one.label.en, one.label.zh) || one.id}
                </Link>
                <small>{one.rating.itemId}</small>
              </>
            ),
          },
          {
            key: "share",
            header: col.share,
            value: (one) => one.share ?? -1,
            text: (one) => (one.share === null ? "" : percentText(one.share)),
            cell: (one) => <ShareMark share={one.share} />,
          },
          {
            key: "duty",
            header: col.duty,
            align: "end",
            minor: true,
            value: (one) => one.rating.duty,
            cell: ({ rating }) => (
              <>
                {percentText(rating.duty)}
                {rating.allowedDuty !== null && (
                  <small>
                    {col.allowed} {percentText(rating.allowedDuty)}
                  </small>
                )}
              </>
            ),
          },
          {
            key: "ohm",
            header: `${col.ohms}, Ω`,
            align: "end",
            minor: true,
            value: (one) => one.rating.ohm20C,
            cell: (one) => ohmText(one.rating.ohm20C),
          },
          {
            key: "amps",
            header: `${col.amps}, A`,
            align: "end",
            value: (one) => one.rating.mostA,
            cell: ({ rating }) => (
              <>
                {ampsText(rating.mostA)}
                <small>
                  {words.corner.temperature.hot} {ampsText(rating.leastA)}
                </small>
              </>
            ),
          },
          {
            key: "hold",
            header: col.holdS,
            align: "end",
            minor: true,
            value: (one) => one.rating.holdS ?? -1,
            text: (one) => (one.rating.holdS === null ? "" : secondsText(one.rating.holdS)),
            cell: (one) => <HoldText one={one} />,
          },
          {
            key: "stuck",
            header: col.stuck,
            align: "end",
            value: (one) => one.rating.stuckS ?? Number.POSITIVE_INFINITY,
            text: (one) => (one.rating.stuckS === null ? "" : secondsText(one.rating.stuckS)),
            cell: ({ rating }) => (rating.stuckS === null ? "–" : secondsText(rating.stuckS)),
          },
          {
            key: "saved",
            header: col.saved,
            value: () => "",
            text: (one) => savers(words, one).join(", "),
            cell: (one) => <SavedBy one={one} />,
          },
        ]}
        detail={{
          label: words.showCorners,
          of: (one) => <CalcTable caption={words.computation} steps={coilSteps(words, one.rating)} />,
        }}
      />
    </>
  );
}

function HoldText({ one: { rating } }: { readonly one: Coil }) {
  const words = useWords().electric;
  if (rating.askedHoldS === 0) return "–";
  return (
    <>
      {rating.holdS === null ? "–" : secondsText(rating.holdS)}
      <small>{words.coil.asked(secondsText(rating.askedHoldS))}</small>
    </>
  );
}

/** What switches a coil off that its driver does not, each with its time. */
function savers(
  { coil }: ReturnType<typeof useWords>["electric"],
  { rating: { timeoutS, fuseS } }: Coil,
): readonly string[] {
  const texts = [
    ...(timeoutS === null ? [] : [coil.timeout(secondsText(timeoutS))]),
    ...(fuseS === null || !Number.isFinite(fuseS) ? [] : [coil.fuse(secondsText(fuseS))]),
  ];
  return texts.length === 0 ? [coil.nothing] : texts;
}

function SavedBy({ one }: { readonly one: Coil }) {
  const words = useWords().electric;
  const address = useCurrents();
  const { fuseElementId } = one.rating;
  return (
    <>
      {savers(words, one).join(", ")}
      {fuseElementId !== null && (
        <small>
          <Link href={address("fuses", fuseElementId)}>{fuseElementId}</Link>
        </small>
      )}
    </>
  );
}
