import type { BillNodeKind, BillWhy } from "@pinwright/engine";
import type { Decimal } from "@pinwright/kernel";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** So much of something, directly inside something else. */
export interface Inside {
  readonly childId: string;
  readonly why: BillWhy;
  /** Colour of a wire; else blank. */
  readonly colour: string;
  readonly quantity: Decimal;
}

/** Something in the bill, with what is directly inside. */
export interface BillEntry extends NamedId {
  readonly kind: BillNodeKind;
  readonly partId: string | null;
  readonly unit: string;
  /** How much of it is in one machine, at all levels; null: it contains itself, so that nobody can say. */
  readonly total: Decimal | null;
  readonly inside: readonly Inside[];
}

/** Assemblies before loose parts, as a reader looks for them. */
const RANKS: Readonly<Record<BillNodeKind, number>> = {
  machine: 0,
  panel: 1,
  board: 2,
  harness: 3,
  mechanism: 4,
  part: 6,
  unnamed: 7,
};
const RANK_OF_ASSEMBLY = 5;

/** Everything in the bill of the machine with its usual options; `machine` comes first. */
export const billNodes = view<null, BillEntry>({
  uses: ({ line }) => [line.parts.bill],
  entries: ({ line }) => {
    const { nodes, lines, totals } = line.parts.bill;
    const inside = new Map<string, Inside[]>();
    for (const { parentId, childId, why, colour, quantity } of lines) {
      const own = inside.get(parentId);
      const line: Inside = { childId, why, colour, quantity };
      if (own === undefined) inside.set(parentId, [line]);
      else own.push(line);
    }
    const rank = ({ childId }: Inside): number => {
      const own = RANKS[nodes.get(childId)?.kind ?? "part"];
      return own === RANKS.part && inside.has(childId) ? RANK_OF_ASSEMBLY : own;
    };
    for (const own of inside.values()) own.sort((a, b) => rank(a) - rank(b));
    const ids = [...nodes.keys()].sort((a, b) => Number(b === "machine") - Number(a === "machine"));
    return new Map(
      ids.flatMap((id) => {
        const node = nodes.get(id);
        if (node === undefined) return [];
        const entry: BillEntry = {
          id,
          label: node.labels.en,
          labelZh: node.labels.zh,
          kind: node.kind,
          partId: node.partId,
          unit: node.unit,
          total: totals.get(id) ?? null,
          inside: inside.get(id) ?? [],
        };
        return [[id, entry] as const];
      }),
    );
  },
  restsInPreview: true,
});
