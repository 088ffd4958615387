import { itemName } from "../machine-facts.ts";
import type { BookContext } from "./context.ts";

/** A point by the name of what it is on, then connector and pin or terminal: `Coil supply v48`. */
export function pointText({ line, language }: BookContext, pointId: string): string {
  const itemId = line.machine.points.get(pointId)?.itemId;
  if (itemId === undefined) return pointId;
  return `${itemName(line, itemId, language)} ${pointId.slice(pointId.indexOf(":") + 1)}`;
}

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
