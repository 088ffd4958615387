import { sheetWords } from "@pinwright/words";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { EndAtHousing, WiringLink } from "../wiring/links.tsx";
import { fixed, mmText } from "../wiring/number-text.ts";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { type DataColumn, DataTable } from "./data-table.tsx";

type WireLine = ViewEntry<"harnessWires">;
type End = WireLine["from"];

const useWireLines = (harnessId: string): readonly WireLine[] => [
  ...(useView("harnessWires", harnessId)?.values() ?? []),
];

function useCommonColumns() {
  const words = useWords().harnesses;
  const { bookId } = useDesk();
  const wire: DataColumn<WireLine> = {
    key: "wire",
    header: words.wire,
    value: (row) => row.printed,
    cell: (row) => (
      <Link className="wire-no" href={addressOf(bookId, { kind: "wire", id: row.id })}>
        {row.printed}
      </Link>
    ),
  };
  const colour: DataColumn<WireLine> = {
    key: "colour",
    header: words.colour,
    value: (row) => row.colour,
    cell: (row) => <WireColour code={row.colour} />,
  };
  const gauge: DataColumn<WireLine> = {
    key: "gauge",
    header: words.gauge,
    value: (row) => row.areaMm2,
    text: (row) => row.gauge,
    cell: (row) => row.gauge,
    minor: true,
  };
  return { wire, colour, gauge };
}

/** From-to list: every wire from end to end. */
export function FromToTab({ harnessId }: { readonly harnessId: string }) {
  const words = useWords().harnesses;
  const pick = usePick();
  const rows = useWireLines(harnessId);
  const { wire, colour, gauge } = useCommonColumns();
  const endText = (end: End): string => (end.isSplice ? words.splice(end.cavity) : end.id);
  return (
    <DataTable
      caption={words.tabs["from-to"]}
      rows={rows}
      rowKey={(row) => row.id}
      columns={[
        wire,
        colour,
        gauge,
        {
          key: "from",
          header: words.from,
          value: (row) => endText(row.from),
          cell: (row) => <EndAtHousing end={row.from} />,
        },
        {
          key: "to",
          header: words.to,
          value: (row) => endText(row.to),
          cell: (row) => <EndAtHousing end={row.to} />,
        },
        {
          key: "finished",
          header: words.finishedMm,
          value: (row) => row.finishedMm,
          text: (row) => mmText(row.finishedMm),
          cell: (row) => <b className="cut-mm">{mmText(row.finishedMm)}</b>,
          align: "end",
        },
        {
          key: "tolerance",
          header: words.tolerance,
          value: (row) => row.tolerancePlusMm,
          text: (row) => mmText(row.tolerancePlusMm),
          cell: (row) => mmText(row.tolerancePlusMm),
          align: "end",
          minor: true,
        },
        {
          key: "net",
          header: words.net,
          value: (row) => row.netId,
          cell: (row) => (
            <>
              <WiringLink id={row.netId} />
              <small>{pick(row.net.en, row.net.zh)}</small>
            </>
          ),
          minor: true,
        },
      ]}
    />
  );
}

/** Cut list: reel by reel, the longest piece first on each. */
export function CutTab({ harnessId }: { readonly harnessId: string }) {
  const { language } = useSpeech();
  const words = useWords().harnesses;
  const { work } = sheetWords(language).ends;
  const lines = useWireLines(harnessId);
  const { wire, colour, gauge } = useCommonColumns();
  const rows = lines.toSorted(
    (a, b) =>
      a.areaMm2 - b.areaMm2 ||
      order(a.wireTypeId, b.wireTypeId) ||
      order(a.colour, b.colour) ||
      b.cutMm - a.cutMm ||
      a.number - b.number,
  );
  const reels = new Map<string, { count: number; mm: number }>();
  for (const row of rows) {
    const reel = reels.get(reelOf(row)) ?? { count: 0, mm: 0 };
    reels.set(reelOf(row), { count: reel.count + 1, mm: reel.mm + row.cutMm });
  }
  const end = (key: "from" | "to", header: string): DataColumn<WireLine> => ({
    key,
    header,
    value: (row) => row[key].stripMm,
    text: (row) => `${mmText(row[key].stripMm)} mm, ${work[row[key].made]}`,
    cell: (row) => (
      <>
        {row[key].crimpedFirst ? "●" : "○"} {mmText(row[key].stripMm)} mm
        <small>
          {row[key].landingId ?? words.splice(row[key].cavity)}: {work[row[key].made]}
        </small>
      </>
    ),
  });
  return (
    <>
      <p className="dim">{sheetWords(language).cutList.note}</p>
      <DataTable
        caption={words.tabs.cut}
        rows={rows}
        rowKey={(row) => row.id}
        groupOf={(row) => {
          const reel = reels.get(reelOf(row)) ?? { count: 0, mm: 0 };
          return words.reel(row.gauge, row.wireTypeId, row.colour, reel.count, fixed(reel.mm / 1000, 2));
        }}
        columns={[
          wire,
          colour,
          gauge,
          {
            key: "cut",
            header: words.cutMm,
            value: (row) => row.cutMm,
            text: (row) => mmText(row.cutMm),
            cell: (row) => <b className="cut-mm">{mmText(row.cutMm)}</b>,
            align: "end",
          },
          end("from", words.stripFrom),
          end("to", words.stripTo),
          { key: "cable", header: words.cable, value: (row) => row.cableId ?? "", minor: true },
        ]}
      />
    </>
  );
}

const reelOf = (row: WireLine): string => `${row.wireTypeId}|${row.colour}`;
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
