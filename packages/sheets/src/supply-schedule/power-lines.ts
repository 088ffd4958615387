import type { ElectricRatings, LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { FuseNode, SupplyNode } from "../circuits/index.ts";
import { shortNumber } from "../compose/number.ts";
import { say } from "../compose/say.ts";
import type { TreeRow } from "../compose/tree-table.ts";
import { itemName, someOf, supplyTitle } from "../machine-facts.ts";
import { fuseName, ratingText } from "./fuses.ts";

/** The tree from mains over supplies to every fuse and what hangs on it, a line for each. */
export function powerLines(
  line: LineResult,
  supplies: readonly SupplyNode[],
  ratings: ElectricRatings,
  language: SheetLanguage,
): readonly TreeRow[] {
  const byId = new Map(supplies.map((node) => [node.supply.id, node]));
  const rows: TreeRow[] = [];
  const seen = new Set<string>();
  const hanging = (node: Pick<FuseNode, "loadIds" | "fuses" | "supplyIds">): string => {
    const items = node.loadIds.flatMap((id) => line.electric.loads.get(id)?.itemId ?? []);
    const own = items.map((id) => itemName(line, id, language));
    return own.length === 0
      ? ""
      : `${say(language, (w) => w.machine.loads(node.loadIds.length), " · ")}: ${someOf(own, 4, language)}`;
  };
  const addFuse = (node: FuseNode, depth: number): void => {
    const fuse = { node, depth, rating: ratings.fuses.get(node.element.id) ?? null };
    rows.push({
      depth,
      begins: true,
      content: {
        text: `${fuseName(line, fuse, language)} · ${ratingText(fuse, language).split("\n").join(" ")}`,
        detail: hanging(node),
      },
    });
    inside(node, depth + 1);
  };
  const inside = (node: Pick<FuseNode, "fuses" | "supplyIds">, depth: number): void => {
    for (const fuse of node.fuses) addFuse(fuse, depth);
    for (const id of node.supplyIds) {
      const made = byId.get(id);
      if (made !== undefined) addSupply(made, depth);
    }
  };
  const addSupply = (node: SupplyNode, depth: number): void => {
    const { supply } = node;
    if (seen.has(supply.id)) return;
    seen.add(supply.id);
    rows.push({
      depth,
      begins: true,
      content: {
        text: `${supplyTitle(line, supply.id, language)}, ${shortNumber(supply.rated_a, 2)} A`,
        detail: hanging(node),
      },
    });
    inside(node, depth + 1);
  };
  for (const node of supplies) addSupply(node, 0);
  return rows;
}
