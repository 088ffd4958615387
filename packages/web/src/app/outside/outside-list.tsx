import { Button, Checkbox, NativeSelect } from "@mantine/core";
import { IconPackageExport } from "@tabler/icons-react";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { FilterField, hasWords } from "../wiring/currents/filter-field.tsx";
import { usePick, useWords } from "../words.tsx";
import { outsideAddress } from "./address.ts";
import { SendDialog } from "./send-dialog.tsx";
import { StateMark } from "./state-mark.tsx";

type Line = ViewEntry<"outsideLines">;

const SHOWS = ["all", "drawn", "undrawn", "waiting"] as const;
type Show = (typeof SHOWS)[number];

const FIRST = 100;

/** Whether a part belongs to what is shown. */
function isShown(line: Line, show: Show): boolean {
  if (show === "drawn") return line.drawings > 0;
  if (show === "undrawn") return line.drawings === 0;
  return show === "all" || line.blocked !== null;
}

/** Whether a part has a drawing, a marked dimension or a sample. */
const isBegun = ({ drawings, oldDrawings, dimensions, sample }: Line): boolean =>
  drawings + oldDrawings + dimensions > 0 || sample.state !== "none";

/** Every part that is made outside; some of them can be sent out together. */
export function OutsideList({ lines }: { readonly lines: Entries<"outsideLines"> }) {
  const words = useWords();
  const own = words.outside;
  const pick = usePick();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const [filter, setFilter] = useState("");
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [isSending, setSending] = useState(false);
  const show = SHOWS.find((one) => one === params.get("show")) ?? "all";
  const fitting = [...lines.values()].filter(
    (line) =>
      isShown(line, show) &&
      (filter.trim() === "" || hasWords(`${line.id} ${line.label} ${line.labelZh}`, filter)),
  );
  // What somebody has begun with stands first.
  const rows = [...fitting.filter(isBegun), ...fitting.filter((line) => !isBegun(line))];
  const choose = (id: string, isChosen: boolean): void =>
    setChosen(isChosen ? new Set([...chosen, id]) : new Set([...chosen].filter((one) => one !== id)));
  const name = (line: Line): string => pick(line.label, line.labelZh) || line.id;
  return (
    <>
      <h2>{own.title}</h2>
      <p>{own.about}</p>
      {lines.size === 0 ? (
        <p>{own.none}</p>
      ) : (
        <DataTable
          caption={own.title}
          rows={rows}
          rowKey={({ id }) => id}
          first={FIRST}
          tools={
            <>
              <FilterField value={filter} onChange={setFilter} />
              <NativeSelect
                aria-label={own.show}
                value={show}
                data={SHOWS.map((value) => ({ value, label: own.shows[value] }))}
                onChange={({ currentTarget: { value } }) =>
                  setParams(value === "all" ? {} : { show: value }, { replace: true })
                }
              />
              <Button
                variant="default"
                leftSection={<IconPackageExport size={16} />}
                disabled={chosen.size === 0}
                onClick={() => setSending(true)}
              >
                {chosen.size === 0 ? own.send.open : own.send.chosen(chosen.size)}
              </Button>
            </>
          }
          columns={[
            {
              key: "part",
              header: own.part,
              value: (line) => name(line),
              text: (line) => `${name(line)} ${line.id}`,
              cell: (line) => (
                <span className="outside-name">
                  <Checkbox
                    aria-label={own.send.chooseOf(line.id)}
                    checked={chosen.has(line.id)}
                    disabled={line.drawings === 0}
                    onChange={({ currentTarget: { checked } }) => choose(line.id, checked)}
                  />
                  <Link href={outsideAddress(bookId, line.id)}>
                    {name(line)}
                    <small>{line.id}</small>
                  </Link>
                </span>
              ),
            },
            { key: "kind", header: own.kind, value: (line) => kindName(own.kinds, line.kind), minor: true },
            { key: "revision", header: own.revisionShort, value: (line) => line.revision || own.noRevision },
            {
              key: "drawings",
              header: own.drawings,
              value: (line) => line.drawings,
              cell: (line) => (line.drawings === 0 ? "–" : line.drawings),
              align: "end",
            },
            {
              key: "sample",
              header: own.sample,
              value: (line) => own.states[line.sample.state],
              cell: (line) =>
                line.sample.state === "none" && line.dimensions === 0 ? (
                  <span className="dim">–</span>
                ) : (
                  <>
                    <StateMark state={line.sample.state} />
                    {line.sample.made !== "" && <small className="sample-made">{line.sample.made}</small>}
                  </>
                ),
            },
          ]}
        />
      )}
      {lines.size > 0 && rows.length === 0 && <p>{own.noneFits}</p>}
      {isSending && (
        <SendDialog
          parts={[...lines.values()].filter(({ id }) => chosen.has(id))}
          close={() => setSending(false)}
        />
      )}
    </>
  );
}

/** Name of a kind of part; one that a newer program knows is told as it is. */
export const kindName = (kinds: Readonly<Record<string, string>>, kind: string): string =>
  kinds[kind] ?? kind;
