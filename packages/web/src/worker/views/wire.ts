import { type WireWay, wireWay } from "../wires/wire-way.ts";
import { findWire } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** One wire by its id or printed number; nothing when there is none. */
export const wire = view<string, WireWay>({
  uses: ({ line }, id) => {
    const harness = findWire(line, id)?.harness;
    return [harness, line.machine.shop, line.machine.items, line.machine.nets];
  },
  entries: ({ line }, id) => {
    const found = findWire(line, id);
    return new Map(found === null ? [] : [["", wireWay(line, found)]]);
  },
});
