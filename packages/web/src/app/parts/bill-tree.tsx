import { IconArrowDown, IconChevronRight } from "@tabler/icons-react";
import { type KeyboardEvent, useMemo, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useWords } from "../words.tsx";
import { quantityText } from "./amounts.ts";
import { type BillNodes, type BillRow, type Narrowed, ROOT, treeRows } from "./bill-rows.ts";
import { Flags } from "./flags.tsx";
import { TableScroll } from "./table-scroll.tsx";
import { TotalText } from "./total-text.tsx";

type Costs = ReadonlyMap<string, ViewEntry<"billCosts">> | null;
type PartFlags = ReadonlyMap<string, ViewEntry<"partFlags">> | null;

/** Lines that are laid out before more are asked for. */
const FIRST = 250;
const MORE = 500;

const rowButtons = (target: Element): readonly HTMLElement[] => [
  ...(target.closest("table")?.querySelectorAll<HTMLElement>("[data-row]") ?? []),
];

/** The bill from the machine down to the last contact, laid open line by line. */
export function BillTree({
  nodes,
  costs,
  flags,
  narrowed,
  chosenId,
  choose,
}: {
  readonly nodes: BillNodes;
  readonly costs: Costs;
  readonly flags: PartFlags;
  readonly narrowed: Narrowed | null;
  readonly chosenId: string | null;
  readonly choose: (id: string) => void;
}) {
  const words = useWords().parts;
  /** Null: all levels. */
  const [open, setOpen] = useState<ReadonlySet<string> | null>(new Set([ROOT]));
  const [most, setMost] = useState(FIRST);
  const [isByCost, setByCost] = useState(false);
  const costOf = useMemo(
    () => (isByCost && costs !== null ? (id: string) => costs.get(id)?.ofMachine.value ?? 0n : null),
    [isByCost, costs],
  );
  const rows = useMemo(
    () => treeRows(nodes, ROOT, open, narrowed, most + 1, costOf),
    [nodes, open, narrowed, most, costOf],
  );
  const toggle = (row: BillRow): void => {
    const now = new Set(
      open ??
        treeRows(nodes, ROOT, null, null, Number.POSITIVE_INFINITY).flatMap((one) =>
          one.isOpen ? [one.key] : [],
        ),
    );
    if (!now.delete(row.key)) now.add(row.key);
    setOpen(now);
  };
  const pressed = (event: KeyboardEvent<HTMLElement>, row: BillRow): void => {
    const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };
    const step = steps[event.key];
    if (step !== undefined) {
      const all = rowButtons(event.currentTarget);
      all[all.indexOf(event.currentTarget) + step]?.focus();
    } else if (event.key === "ArrowRight" && !row.isOpen && row.node.inside.length > 0) toggle(row);
    else if (event.key === "ArrowLeft" && row.isOpen) toggle(row);
    else return;
    event.preventDefault();
  };
  return (
    <>
      <div className="bill-levels">
        <button type="button" className="link-button" onClick={() => setOpen(new Set([ROOT]))}>
          {words.oneLevel}
        </button>
        <button type="button" className="link-button" onClick={() => setOpen(null)}>
          {words.allLevels}
        </button>
      </div>
      <TableScroll>
        <table className="plain bill-tree">
          <caption className="visually-hidden">{words.tabs.bill}</caption>
          <thead>
            <tr>
              <th scope="col">{words.part}</th>
              <th scope="col" className="end minor">
                {words.quantity}
              </th>
              <th scope="col" className="end">
                {words.inMachine}
              </th>
              <th scope="col" className="end minor">
                {words.costEach}
              </th>
              <th scope="col" className="end" aria-sort={isByCost ? "descending" : "none"}>
                <button type="button" className="sort-button" onClick={() => setByCost(!isByCost)}>
                  {words.costMachine}
                  {isByCost && <IconArrowDown size={14} aria-hidden />}
                </button>
              </th>
              <th scope="col">{words.flags}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, most).map((row) => (
              <TreeRow
                key={row.key}
                row={row}
                cost={costs?.get(row.node.id)}
                flagged={flags?.get(row.node.id)}
                isChosen={row.node.id === chosenId}
                isNarrowed={narrowed !== null}
                toggle={() => toggle(row)}
                choose={() => choose(row.node.id)}
                pressed={(event) => pressed(event, row)}
              />
            ))}
          </tbody>
        </table>
      </TableScroll>
      {rows.length > most && (
        <button type="button" className="link-button" onClick={() => setMost(most + MORE)}>
          {words.moreLines(MORE)}
        </button>
      )}
    </>
  );
}

function TreeRow({
  row,
  cost,
  flagged,
  isChosen,
  isNarrowed,
  toggle,
  choose,
  pressed,
}: {
  readonly row: BillRow;
  readonly cost: ViewEntry<"billCosts"> | undefined;
  readonly flagged: ViewEntry<"partFlags"> | undefined;
  readonly isChosen: boolean;
  readonly isNarrowed: boolean;
  readonly toggle: () => void;
  readonly choose: () => void;
  readonly pressed: (event: KeyboardEvent<HTMLElement>) => void;
}) {
  const words = useWords().parts;
  const pick = usePick();
  const { node, inside, depth } = row;
  const name = pick(node.label, node.labelZh) || node.id;
  const hasInside = node.inside.length > 0 && !row.isCircle;
  return (
    <tr aria-current={isChosen ? "true" : undefined}>
      <th scope="row">
        <span className="bill-name" style={{ paddingInlineStart: `calc(${depth} * var(--indent))` }}>
          {hasInside && !isNarrowed ? (
            <button
              type="button"
              className="unfold"
              aria-expanded={row.isOpen}
              aria-label={words.contentsOf(name)}
              onClick={toggle}
            >
              <IconChevronRight size={16} aria-hidden />
            </button>
          ) : (
            <span className="unfold" />
          )}
          <button
            type="button"
            className="bill-pick"
            data-row
            aria-pressed={isChosen}
            onClick={choose}
            onKeyDown={pressed}
          >
            <span>
              {name} {inside !== null && inside.colour !== "" && <WireColour code={inside.colour} />}
            </span>
            <small>
              {node.kind === "part" ? node.id : words.kinds[node.kind]}
              {inside !== null && inside.why !== node.kind && ` · ${words.why[inside.why]}`}
              {row.isCircle && ` · ${words.circle}`}
            </small>
          </button>
        </span>
      </th>
      <td className="end minor">{inside === null ? "" : quantityText(inside.quantity, node.unit)}</td>
      <td className="end">
        {node.total === null ? "–" : node.id === ROOT ? "" : quantityText(node.total, node.unit)}
      </td>
      <td className="end minor">
        {cost !== undefined && node.id !== ROOT && (
          <TotalText total={cost.each} currency={cost.currency} isPrice />
        )}
      </td>
      <td className="end">
        {cost !== undefined && <TotalText total={cost.ofMachine} currency={cost.currency} />}
      </td>
      <td>
        <Flags flagged={flagged} />
      </td>
    </tr>
  );
}
