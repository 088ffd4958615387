import { type Named, namedElement } from "../electric/naming.ts";
import { view } from "./view.ts";

/** Loads that are switched on in a moment, beside what is always on. */
export const electricMoment = view<string, Named>({
  uses: ({ line }) => [line.electric, line.machine.items],
  entries: ({ line }, id) => {
    const { moments } = line.electric;
    const always = new Set(moments.get("always")?.loadIds ?? []);
    const own = (moments.get(id)?.loadIds ?? []).filter((loadId) => !always.has(loadId));
    return new Map(own.map((loadId) => [loadId, namedElement(line, loadId)] as const));
  },
  restsInPreview: true,
});
