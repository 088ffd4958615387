import type { Item } from "@pinwright/engine";
import type { BookContext } from "./context.ts";
import { runsText } from "./runs-text.ts";

/** Points of an item by their own names, each with the wires that end there: `no 12-4 WHRD`. */
export function wireLines({ facts }: BookContext, itemId: string): readonly string[] {
  const landings = facts.landingsOf.get(itemId) ?? [];
  return landings.flatMap((landing) =>
    landing.pointIds.flatMap((pointId) => {
      const local = pointId.slice(pointId.indexOf(":") + 1);
      return (facts.wiresAt.get(pointId) ?? []).map(
        ({ number, wire }) => `${local} ${number} ${wire.colour}`,
      );
    }),
  );
}

/** Landings of an item with a housing, with their pins: `j1 (5)`. */
function housingNames({ facts }: BookContext, item: Item): readonly string[] {
  return (facts.landingsOf.get(item.id) ?? []).flatMap((landing) =>
    landing.connector === null ? [] : [landing.id.slice(landing.id.indexOf(":") + 1)],
  );
}

/** Numbers drawn together, from texts: those that are none stay as they are. */
function numbersOf(texts: readonly string[]): string {
  const numbers = texts.map(Number).filter((n) => Number.isInteger(n));
  return runsText(numbers);
}
