import { type Decimal, numberOfDecimal } from "@pinwright/kernel";
import { Link } from "wouter";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { DataTable } from "../harnesses/data-table.tsx";
import { tabAddress } from "../parts/address.ts";
import { quantityText } from "../parts/amounts.ts";
import { NodeName } from "../parts/node-name.tsx";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useWords } from "../words.tsx";
import { DayText } from "./day.tsx";
import { dayText } from "./days.ts";
import { PlanProgress } from "./plan-progress.tsx";
import { RunDownloads } from "./run-downloads.tsx";
import type { RunTab } from "./run-tab.ts";
import { usePlanAnswer } from "./use-prepared.ts";

type Lacks = AskAnswer<"runShortages">["lines"][number];

/** What lacks for each stage of a run. */
export function ShortagesTab({ run, plan, day, preparing }: RunTab) {
  const words = useWords().runs;
  const own = words.shortages;
  const pick = usePick();
  const { bookId } = useDesk();
  const answering = usePlanAnswer("runShortages", { runId: run.id, today: day, change: null }, preparing);
  const { answer } = answering;
  if (plan === null) return null;
  const lines = answer?.lines ?? [];
  const partOf = ({ partId }: Lacks) => answer?.parts.get(partId);
  const nameOf = (line: Lacks): string =>
    pick(partOf(line)?.label ?? "", partOf(line)?.labelZh ?? "") || line.partId;
  const stageOf = ({ stageId }: Lacks): string => {
    if (stageId === null) return words.needs.spareStage;
    const stage = plan.stageNames.get(stageId);
    return pick(stage?.label ?? "", stage?.labelZh ?? "") || stageId;
  };
  const column = (key: string, header: string, of: (line: Lacks) => Decimal, minor = false) => ({
    key,
    header,
    value: (line: Lacks) => numberOfDecimal(of(line)),
    text: (line: Lacks) => quantityText(of(line), partOf(line)?.unit ?? "each"),
    cell: (line: Lacks) => quantityText(of(line), partOf(line)?.unit ?? "each"),
    align: "end" as const,
    minor,
  });
  return (
    <>
      <p>{own.about}</p>
      <RunDownloads run={run} day={day} kinds={["run-shortages"]} />
      <PlanProgress preparing={preparing} answering={answering} />
      {answer !== undefined && lines.length === 0 && <p>{own.none}</p>}
      {lines.length > 0 && (
        <DataTable
          caption={own.copy}
          rows={lines}
          rowKey={({ stageId, partId, colour }) => `${stageId} ${partId} ${colour}`}
          groupOf={stageOf}
          first={200}
          columns={[
            {
              key: "part",
              header: own.part,
              value: nameOf,
              text: (line) => `${nameOf(line)} ${line.partId} ${line.colour}`.trim(),
              cell: (line) => (
                <>
                  <Link href={tabAddress(bookId, "stock", { id: line.partId })}>
                    <NodeName
                      id={line.partId}
                      label={partOf(line)?.label ?? ""}
                      labelZh={partOf(line)?.labelZh ?? ""}
                    />
                  </Link>
                  {line.colour !== "" && <WireColour code={line.colour} />}
                </>
              ),
            },
            column("needed", own.needed, ({ needed }) => needed),
            column("have", own.have, ({ onHand }) => onHand, true),
            column("ordered", own.ordered, ({ ordered }) => ordered, true),
            column("short", own.short, ({ short }) => short),
            {
              key: "day",
              header: own.by,
              value: ({ neededDay }) => dayText(neededDay),
              cell: ({ neededDay }) => <DayText day={neededDay} />,
            },
          ]}
        />
      )}
    </>
  );
}
