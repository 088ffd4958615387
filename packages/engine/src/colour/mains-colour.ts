import { splitColours } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding, type Wire } from "../model/index.ts";

/** Base colour that a neutral wears where it is told by its colour alone. */
const NEUTRAL = "BU";

const baseOf = (colour: string): string => splitColours(colour)?.[0]?.code ?? colour;

/**
 * `mains-colour`: a wire of the mains whose colour says the wrong thing. Blue is the neutral, and only the neutral
 * (EN 60204-1:2006, 13.2.3; IEC 60445), so that a builder never takes one for the other. A net of the mains is the
 * neutral when its nominal voltage is 0.
 * @param colours colour of each wire by its id
 */
export function checkMainsColours(
  machine: Pick<Machine, "nets">,
  wires: readonly Wire[],
  colours: ReadonlyMap<string, string>,
): readonly Finding[] {
  return wires.flatMap((wire) => {
    if (wire.netClass !== "mains") return [];
    const colour = colours.get(wire.id) ?? "";
    const neutral = machine.nets.get(wire.netId)?.volts === 0;
    if ((baseOf(colour) === NEUTRAL) === neutral) return [];
    return [makeFinding("mains-colour", "error", [wire.id, wire.netId], { colour, neutral })];
  });
}
