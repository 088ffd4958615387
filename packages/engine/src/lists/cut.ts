import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine, Optimum, SizedWire } from "../model/index.ts";
import { optimum } from "../wire/index.ts";
import { byNumber, type ListEnd, listEnd } from "./ends.ts";

export interface CutRow {
  readonly wireId: string;
  readonly number: number;
  readonly cutMm: number;
  /** IEC 60757 code; of a core the cable's own colour. */
  readonly colour: string;
  readonly a: ListEnd;
  readonly b: ListEnd;
  /** Cable that the wire is twisted or bound into; null: it stays single. */
  readonly cableId: string | null;
}

/** Everything that is cut from one reel without changing it. */
export interface CutGroup {
  readonly wireType: BookRow<"wire_types">;
  readonly colour: string;
  readonly rows: readonly CutRow[];
  readonly count: number;
  readonly metres: number;
}

/** A length of bought cable, cut as a whole; its cores are then ordinary wires with two ends. */
export interface CableCut {
  readonly cable: BookRow<"cables">;
  readonly cutMm: number;
  /** Sheath taken off at each end, within the finished length. */
  readonly sheathStripMm: number;
  readonly cores: readonly CutRow[];
}

export interface CutList {
  readonly groups: readonly CutGroup[];
  readonly cables: readonly CableCut[];
  /** Reels put on the bench, against one for each wire type and colour. */
  readonly reelChanges: Optimum;
  /** Minutes by the shop's times for a cut and for a change of reel. */
  readonly minutes: number;
}

/**
 * What is cut for a harness, grouped by wire type and colour: each reel goes on the bench once, and no order needs
 * fewer changes. Groups run from thin to thick wire, then by colour; in a group the longest wire is cut first, so
 * that a reel that runs out leaves the short ones. Cores of bought cables are cut with their cable.
 */
export function cutList(machine: Machine, harness: HarnessResult): CutList {
  const bought = new Map(
    machine.book.tables.cables.filter((cable) => cable.part !== null).map((cable) => [cable.id, cable]),
  );
  const groups = new Map<string, SizedWire[]>();
  const cores = new Map<string, SizedWire[]>();
  for (const wire of byNumber(harness)) {
    const cable = wire.cableId === null ? undefined : bought.get(wire.cableId);
    const [map, key] =
      cable === undefined ? [groups, `${wire.wireType.id}|${wire.colour}`] : [cores, cable.id];
    const list = map.get(key);
    if (list === undefined) map.set(key, [wire]);
    else list.push(wire);
  }
  const row = (wire: SizedWire): CutRow => ({
    wireId: wire.id,
    number: wire.number,
    cutMm: wire.cutMm,
    colour: wire.colour,
    a: listEnd(machine, wire, "a"),
    b: listEnd(machine, wire, "b"),
    cableId: wire.cableId,
  });
  const made = [...groups.values()].flatMap((wires): readonly CutGroup[] => {
    const first = wires[0];
    if (first === undefined) return [];
    const rows = wires.map(row).sort((a, b) => b.cutMm - a.cutMm || a.number - b.number);
    return [
      {
        wireType: first.wireType,
        colour: first.colour,
        rows,
        count: rows.length,
        metres: rows.reduce((sum, r) => sum + r.cutMm, 0) / 1000,
      },
    ];
  });
  made.sort(
    (a, b) =>
      a.wireType.area_mm2 - b.wireType.area_mm2 ||
      compareText(a.wireType.id, b.wireType.id) ||
      compareText(a.colour, b.colour),
  );
  const cables = [...cores].flatMap(([id, wires]): readonly CableCut[] => {
    const cable = bought.get(id);
    const cutMm = Math.max(...wires.map((wire) => wire.cutMm));
    if (cable === undefined) return [];
    return [{ cable, cutMm, sheathStripMm: machine.shop.numbers.sheath_strip_mm, cores: wires.map(row) }];
  });
  cables.sort((a, b) => compareText(a.cable.id, b.cable.id));
  const cuts = made.reduce((sum, group) => sum + group.count, 0) + cables.length;
  const { cut_min, reel_change_min } = machine.shop.numbers;
  return {
    groups: made,
    cables,
    reelChanges: optimum(made.length, groups.size),
    minutes: cuts * cut_min + (made.length + cables.length) * reel_change_min,
  };
}
