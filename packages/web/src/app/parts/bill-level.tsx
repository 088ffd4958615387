import { Button } from "@mantine/core";
import { numberOfDecimal } from "@pinwright/kernel";
import { IconArrowUp, IconChevronRight } from "@tabler/icons-react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useWords } from "../words.tsx";
import { quantityText } from "./amounts.ts";
import { type BillNodes, type Inside, ROOT } from "./bill-rows.ts";
import { Flags } from "./flags.tsx";
import { NodeName } from "./node-name.tsx";
import { TotalText } from "./total-text.tsx";

/** What is directly in one thing, and the way one level down or up. */
export function BillLevel({
  nodes,
  costs,
  flags,
  atId,
  go,
  chosenId,
  choose,
}: {
  readonly nodes: BillNodes;
  readonly costs: ReadonlyMap<string, ViewEntry<"billCosts">> | null;
  readonly flags: ReadonlyMap<string, ViewEntry<"partFlags">> | null;
  readonly atId: string;
  readonly go: (id: string) => void;
  readonly chosenId: string | null;
  readonly choose: (id: string) => void;
}) {
  const words = useWords().parts;
  const pick = usePick();
  const at = nodes.get(atId);
  const parents = [...nodes.values()].filter(({ inside }) => inside.some(({ childId }) => childId === atId));
  const name = (id: string): string => {
    const node = nodes.get(id);
    return node === undefined ? id : pick(node.label, node.labelZh) || id;
  };
  if (at === undefined)
    return (
      <p>
        {words.noSuchPart(atId)}{" "}
        <button type="button" className="link-button" onClick={() => go(ROOT)}>
          {words.toMachine}
        </button>
      </p>
    );
  return (
    <>
      <h3>{words.contentsOf(name(atId))}</h3>
      {parents.length > 0 && (
        <p className="way-links">
          {parents.map(({ id }) => (
            <Button
              key={id}
              variant="default"
              size="compact-sm"
              leftSection={<IconArrowUp size={14} />}
              onClick={() => go(id)}
            >
              {name(id)}
            </Button>
          ))}
        </p>
      )}
      {at.inside.length === 0 ? (
        <p className="dim">{words.nothingInside}</p>
      ) : (
        <DataTable<Inside>
          caption={words.contentsOf(name(atId))}
          rows={at.inside}
          rowKey={({ childId, why, colour }) => `${childId} ${why} ${colour}`}
          isCurrent={({ childId }) => childId === chosenId}
          columns={[
            {
              key: "part",
              header: words.part,
              value: ({ childId }) => name(childId),
              text: ({ childId }) => `${name(childId)} ${childId}`,
              cell: ({ childId }) => {
                const node = nodes.get(childId);
                return (
                  <span className="bill-name">
                    {node !== undefined && node.inside.length > 0 && (
                      <button
                        type="button"
                        className="unfold"
                        aria-label={words.contentsOf(name(childId))}
                        onClick={() => go(childId)}
                      >
                        <IconChevronRight size={16} aria-hidden />
                      </button>
                    )}
                    <button type="button" className="bill-pick" onClick={() => choose(childId)}>
                      <span>
                        <NodeName id={childId} label={node?.label ?? ""} labelZh={node?.labelZh ?? ""} />
                      </span>
                    </button>
                  </span>
                );
              },
            },
            {
              key: "why",
              header: words.whyHere,
              value: ({ why }) => words.why[why],
              minor: true,
            },
            {
              key: "colour",
              header: words.colour,
              value: ({ colour }) => colour,
              cell: ({ colour }) => (colour === "" ? "" : <WireColour code={colour} />),
            },
            {
              key: "quantity",
              header: words.quantity,
              value: ({ quantity }) => numberOfDecimal(quantity),
              text: ({ childId, quantity }) => quantityText(quantity, nodes.get(childId)?.unit ?? "each"),
              cell: ({ childId, quantity }) => quantityText(quantity, nodes.get(childId)?.unit ?? "each"),
              align: "end",
            },
            {
              key: "each",
              header: words.costEach,
              value: ({ childId }) => numberOfDecimal(costs?.get(childId)?.each.value ?? 0n),
              cell: ({ childId }) => {
                const cost = costs?.get(childId);
                return cost === undefined ? (
                  ""
                ) : (
                  <TotalText total={cost.each} currency={cost.currency} isPrice />
                );
              },
              align: "end",
            },
            {
              key: "flags",
              header: words.flags,
              value: ({ childId }) =>
                (flags?.get(childId)?.flags ?? []).map(({ rule }) => words.flagNames[rule]).join(", "),
              cell: ({ childId }) => <Flags flagged={flags?.get(childId)} />,
            },
          ]}
        />
      )}
    </>
  );
}
