import type { BookContext } from "./context.ts";

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
