import { SegmentedControl } from "@mantine/core";
import { sheetWords } from "@pinwright/words";
import { useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import { WiringLink } from "../wiring/links.tsx";
import { useSpeech } from "../words.tsx";
import { DataTable } from "./data-table.tsx";

type Line = ViewEntry<"continuity">;
const EXPECTED = ["joined", "open", "fitted"] as const;

/** What must read joined and what open, on the bench and once fitted. */
export function ContinuityTab({
  harnessId,
  number,
}: {
  readonly harnessId: string;
  readonly number: number;
}) {
  const { words: all, language } = useSpeech();
  const words = all.harnesses;
  const printed = sheetWords(language).continuity;
  const lines = useView("continuity", harnessId);
  const [shown, setShown] = useState("all");
  if (lines === null) return <p className="dim">{all.common.loading}</p>;
  const rows = [...lines].map(([key, line]) => ({ key, ...line }));
  const hints = { joined: printed.joined, open: printed.open, fitted: printed.fitted } as const;
  const hint = EXPECTED.find((one) => one === shown);
  const reasons = new Map<string, string>(Object.entries(printed.reasons));
  const why = (line: Line): string => {
    if (line.expect === "open") return reasons.get(line.why) ?? line.why;
    if (line.expect === "fitted") return words.whyAt(line.why);
    return line.parts > 1 ? words.whyPart(line.part, line.parts) : "";
  };
  const spotText = (spot: Line["spots"][number]): string =>
    spot.loose
      ? `${spot.pointId} (${printed.loose(spot.wires.map((wire) => `${number}-${wire}`).join(", "))})`
      : spot.pointId;
  return (
    <>
      {hint !== undefined && <p className="dim">{hints[hint]}</p>}
      <DataTable
        caption={words.tabs.continuity}
        rows={rows.filter((row) => shown === "all" || row.expect === shown)}
        rowKey={(row) => row.key}
        tools={
          <SegmentedControl
            aria-label={words.test}
            value={shown}
            onChange={setShown}
            data={[
              { value: "all", label: `${words.allTests} (${rows.length})` },
              ...EXPECTED.map((one) => ({
                value: one,
                label: `${words.expect[one]} (${rows.filter((row) => row.expect === one).length})`,
              })),
            ]}
          />
        }
        columns={[
          {
            key: "expect",
            header: words.test,
            value: (row) => words.expect[row.expect],
            cell: (row) => <b>{words.expect[row.expect]}</b>,
          },
          {
            key: "points",
            header: words.points,
            value: (row) => row.spots.map(spotText).join(" – "),
            cell: (row) => (
              <span className="spots">
                {row.spots.map((spot) => (
                  <span key={`${spot.pointId} ${spot.wires.join()}`}>
                    <WiringLink id={spot.pointId} />
                    {spot.loose && (
                      <small>{printed.loose(spot.wires.map((wire) => `${number}-${wire}`).join(", "))}</small>
                    )}
                  </span>
                ))}
              </span>
            ),
          },
          {
            key: "net",
            header: words.net,
            value: (row) => row.netId,
            cell: (row) => (row.netId === "" ? "" : <WiringLink id={row.netId} />),
            minor: true,
          },
          { key: "why", header: words.why, value: why, minor: true },
        ]}
      />
    </>
  );
}
