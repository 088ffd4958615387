import type { Machine, Wire } from "../model/index.ts";
import { mayWear, stockedColours } from "./palette.ts";

/** A wire to be coloured. Others are named by their index. */
interface ColourWire {
  readonly wire: Wire;
  /** Colours that it may wear; one list for all wires of like type. */
  readonly palette: readonly string[];
  /** Wires of other nets in the same housing or on the same device. */
  readonly hard: readonly number[];
  /** Wires of the same net in other cavities of the same housing. */
  readonly same: readonly number[];
  /** Wires of other nets that leave the bundle at the same place. */
  readonly soft: readonly number[];
}

export interface ColourProblem {
  readonly wires: readonly ColourWire[];
  /** For each landing the wires that end there, with the point of each. */
  readonly landings: ReadonlyMap<string, readonly { readonly wire: number; readonly pointId: string }[]>;
  /** For each breakout the wires that leave there. */
  readonly breakouts: readonly (readonly number[])[];
}

/** Earth wires are all alike by law and may meet. */
export const isEarth = (wire: Wire): boolean => wire.netClass === "earth";

/** Gathers which wires must not, and which should not, look alike. */
export function colourProblem(
  machine: Machine,
  wires: readonly Wire[],
  breakouts: readonly (readonly string[])[],
): ColourProblem {
  const stocked = stockedColours(machine);
  const landings = new Map<string, { wire: number; pointId: string }[]>();
  wires.forEach((wire, i) => {
    for (const end of [wire.a, wire.b]) {
      const landingId = machine.points.get(end)?.landingId;
      if (landingId === undefined) continue;
      const list = landings.get(landingId);
      if (list === undefined) landings.set(landingId, [{ wire: i, pointId: end }]);
      else list.push({ wire: i, pointId: end });
    }
  });
  const hard = wires.map(() => new Set<number>());
  const same = wires.map(() => new Set<number>());
  const soft = wires.map(() => new Set<number>());
  const tell = (sets: readonly Set<number>[], i: number, j: number): void => {
    sets[i]?.add(j);
    sets[j]?.add(i);
  };
  for (const list of landings.values()) {
    list.forEach((p, n) => {
      for (const q of list.slice(n + 1)) {
        const [a, b] = [wires[p.wire], wires[q.wire]];
        // Two wires in one contact cannot be mistaken for each other: either may lie left or right.
        if (a === undefined || b === undefined || a === b || p.pointId === q.pointId) continue;
        if (isEarth(a) && isEarth(b)) continue;
        tell(a.netId === b.netId ? same : hard, p.wire, q.wire);
      }
    });
  }
  const indexOf = new Map(wires.map((wire, i) => [wire.id, i]));
  const groups = breakouts.map((ids) => [...new Set(ids)].flatMap((id) => indexOf.get(id) ?? []));
  for (const group of groups) {
    group.forEach((i, n) => {
      for (const j of group.slice(n + 1)) {
        const [a, b] = [wires[i], wires[j]];
        if (a === undefined || b === undefined || a.netId === b.netId || hard[i]?.has(j)) continue;
        if (isEarth(a) && isEarth(b)) continue;
        tell(soft, i, j);
      }
    });
  }
  const ordered = (set: ReadonlySet<number> | undefined): readonly number[] =>
    [...(set ?? [])].sort((a, b) => a - b);
  const palettes = new Map<string, readonly string[]>();
  const paletteOf = (wire: Wire): readonly string[] => {
    const key = `${wire.wireType.id}|${isEarth(wire)}`;
    const known = palettes.get(key);
    if (known !== undefined) return known;
    const colours = [...new Set(stocked(wire.wireType))];
    const made = colours.filter((colour) => mayWear(wire.netClass, colour, colours));
    palettes.set(key, made);
    return made;
  };
  return {
    wires: wires.map((wire, i) => {
      return {
        wire,
        palette: paletteOf(wire),
        hard: ordered(hard[i]),
        same: ordered(same[i]),
        soft: ordered(soft[i]),
      };
    }),
    landings,
    breakouts: groups,
  };
}
