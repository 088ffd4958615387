import { type Housing, housingOf } from "../wires/housing.ts";
import { view } from "./view.ts";

/** Which landings: those of a harness, of an item and its children, or one. */
export interface HousingsOf {
  readonly of: "harness" | "item" | "landing";
  readonly id: string;
}

/** Housings and bare terminals with what is in them. */
export const housings = view<HousingsOf, Housing>({
  uses: ({ line }) => [
    line.machine.landings,
    line.keys,
    line.machine.nets,
    line.machine.ends,
    ...line.harnesses.values(),
  ],
  entries: ({ line }, { of, id }) => {
    const { machine } = line;
    const wanted =
      of === "harness"
        ? (line.harnesses.get(id)?.landingIds ?? []).flatMap(
            (landingId) => machine.landings.get(landingId) ?? [],
          )
        : [...machine.landings.values()].filter((landing) =>
            of === "landing"
              ? landing.id === id
              : landing.itemId === id || machine.items.get(landing.itemId)?.parentId === id,
          );
    return new Map(wanted.map((landing) => [landing.id, housingOf(line, landing)]));
  },
  restsInPreview: true,
});
