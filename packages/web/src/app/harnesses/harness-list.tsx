import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { fixed } from "../wiring/number-text.ts";
import { usePick, useWords } from "../words.tsx";
import { DataTable } from "./data-table.tsx";

type HarnessLine = ViewEntry<"harnesses">;

/** Every harness with its figures. */
export function HarnessList({ harnesses }: { readonly harnesses: readonly HarnessLine[] }) {
  const words = useWords().harnesses;
  const pick = usePick();
  const { bookId } = useDesk();
  const sum = (of: (one: HarnessLine) => number): number => harnesses.reduce((s, one) => s + of(one), 0);
  const href = (one: HarnessLine): string => addressOf(bookId, { kind: "harness", id: one.id });
  if (harnesses.length === 0) return <p>{words.empty}</p>;
  return (
    <>
      <p className="dim">
        {words.totals(
          harnesses.length,
          sum((one) => one.wires),
          fixed(
            sum((one) => one.metres),
            0,
          ),
          fixed(sum((one) => one.minutes) / 60, 1),
        )}
      </p>
      <DataTable
        caption={words.title}
        rows={harnesses}
        rowKey={(one) => one.id}
        columns={[
          {
            key: "number",
            header: words.number,
            value: (one) => one.number,
            cell: (one) => <span className="harness-no">H{one.number}</span>,
          },
          {
            key: "name",
            header: words.name,
            value: (one) => pick(one.label.en, one.label.zh),
            cell: (one) => (
              <Link href={href(one)}>
                {pick(one.label.en, one.label.zh)}
                <small>{one.id}</small>
              </Link>
            ),
          },
          { key: "wires", header: words.wires, value: (one) => one.wires, align: "end" },
          {
            key: "metres",
            header: words.metres,
            value: (one) => one.metres,
            text: (one) => fixed(one.metres, 2),
            cell: (one) => fixed(one.metres, 2),
            align: "end",
            minor: true,
          },
          {
            key: "minutes",
            header: words.minutes,
            value: (one) => one.minutes,
            text: (one) => fixed(one.minutes, 1),
            cell: (one) => fixed(one.minutes, 1),
            align: "end",
          },
          {
            key: "findings",
            header: words.findings,
            value: (one) => one.errors * 1e6 + one.warnings * 1e3 + one.notes,
            text: (one) => `${one.errors}/${one.warnings}/${one.notes}`,
            cell: (one) => <FindingCounts of={one} />,
          },
        ]}
      />
    </>
  );
}

/** How many findings there are, worst first. */
export function FindingCounts({ of }: { readonly of: Pick<HarnessLine, "errors" | "warnings" | "notes"> }) {
  const words = useWords().harnesses;
  if (of.errors + of.warnings + of.notes === 0) return <span className="dim">{words.noFindings}</span>;
  return (
    <span className="finding-counts">
      {of.errors > 0 && <span className="error-text">{words.errors(of.errors)}</span>}
      {of.warnings > 0 && <span className="amber-text">{words.warnings(of.warnings)}</span>}
      {of.notes > 0 && <span className="dim">{words.notes(of.notes)}</span>}
    </span>
  );
}
