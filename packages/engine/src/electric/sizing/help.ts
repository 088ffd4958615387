import type { BookRow } from "@pinwright/book";
import type { DropSection, Machine, NetDrop, SizedWire } from "../../model/index.ts";
import { contactTakes, stockedTypes } from "../../wire/index.ts";

type WireType = BookRow<"wire_types">;

/** A change to a net that lowers its worst drop, with the drop that is left. */
export interface Help {
  /** `thicker`: a thicker wire type for one section; `second-feed`: a second wire beside it; `shorter-chain`: a chain of its own from there on. */
  readonly kind: "thicker" | "second-feed" | "shorter-chain" | "none";
  readonly wireId: string;
  /** Of `thicker`: the type to take. */
  readonly wireTypeId: string;
  readonly dropV: number;
}

/**
 * What lowers a net's worst drop most: a thicker wire for one section, as thick as its contacts take and as stocked; a
 * second wire beside one section, with half the current each; or a second chain that feeds all from one section on, by
 * wires as long as those on the way there. All with the currents as they are, and the contacts left as they are.
 */
export function bestHelp(machine: Machine, wires: ReadonlyMap<string, SizedWire>, drop: NetDrop): Help {
  const options = [
    ...drop.sections.flatMap((section) => thicker(machine, wires.get(section.wireId), section, drop.dropV)),
    ...drop.sections.map((section) => secondFeed(section, drop.dropV)),
    ...drop.sections.flatMap((_, at) => shorterChain(drop, at)),
  ];
  const none: Help = { kind: "none", wireId: "", wireTypeId: "", dropV: drop.dropV };
  return options.reduce((best, help) => (help.dropV < best.dropV - 1e-9 ? help : best), none);
}

function thicker(
  machine: Machine,
  wire: SizedWire | undefined,
  section: DropSection,
  dropV: number,
): readonly Help[] {
  if (wire === undefined) return [];
  const type = stockedTypes(machine).findLast(
    (t) => t.area_mm2 > wire.wireType.area_mm2 && fits(machine, wire, t),
  );
  if (type === undefined) return [];
  const saved = section.dropV * (1 - wire.wireType.area_mm2 / type.area_mm2);
  return [{ kind: "thicker", wireId: wire.id, wireTypeId: type.id, dropV: dropV - saved }];
}

/** Whether both ends of a wire take a type whose insulation stands the net's voltage and that may carry its class. */
export function fits(
  machine: Machine,
  wire: Pick<SizedWire, "a" | "b" | "netId" | "netClass" | "wireType">,
  type: WireType,
): boolean {
  const families = [wire.a, wire.b].flatMap((end) => machine.points.get(end)?.family ?? []);
  const earthOnly = (t: WireType): boolean =>
    t.colours.length > 0 && t.colours.every((colour) => colour === "GNYE");
  return (
    families.every((family) => contactTakes(family, type)) &&
    type.volts >= Math.abs(machine.nets.get(wire.netId)?.volts ?? 0) &&
    type.volts >= (wire.netClass === "mains" ? wire.wireType.volts : 0) &&
    earthOnly(type) === (wire.netClass === "earth" && earthOnly(wire.wireType))
  );
}

const secondFeed = (section: DropSection, dropV: number): Help => ({
  kind: "second-feed",
  wireId: section.wireId,
  wireTypeId: "",
  dropV: dropV - section.dropV / 2,
});

/** The chain is cut before a section: what lies behind gets wires of its own from the feed on. */
function shorterChain({ sections, dropV }: NetDrop, at: number): readonly Help[] {
  const cut = sections[at];
  if (cut === undefined || at === 0) return [];
  const before = sections.slice(0, at);
  const wasV = sections.reduce((sum, section) => sum + section.dropV, 0);
  const farV = sections.slice(at).reduce((sum, section) => sum + section.dropV, 0);
  const ownV = before.reduce((sum, section) => sum + cut.amps * section.ohm, 0) + farV;
  const leftV = before.reduce((sum, section) => sum + Math.max(0, section.amps - cut.amps) * section.ohm, 0);
  const dropLeft = dropV - wasV + Math.max(ownV, leftV);
  return [{ kind: "shorter-chain", wireId: cut.wireId, wireTypeId: "", dropV: dropLeft }];
}
