import type { BookRow } from "@pinwright/book";
import { SharedMemory } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding } from "../model/index.ts";
import { mayWear, stockedColours } from "./palette.ts";
import type { ColourProblem } from "./problem.ts";

export interface FixedColours {
  /** Colour of each wire that is decided already, by index. */
  readonly colours: ReadonlyMap<number, string>;
  readonly findings: readonly Finding[];
}

/** Colour of each core as it is bought, by `cable|core`. */
const coloursOfCores = new SharedMemory<
  readonly BookRow<"cable_cores">[],
  ReadonlyMap<string, string | null>
>();

/**
 * Colours that are not the line's to decide: cores as bought, wires and nets that a person pinned, the colour that
 * a net asks for, and colours that are kept. A pinned colour is used as it is, and told of when it is not in stock
 * or not allowed; a kept one that is not in stock, not allowed or alike with a decided one in a housing is dropped.
 */
export function fixedColours(machine: Machine, problem: ColourProblem): FixedColours {
  const choices = machine.choices.get("colour");
  const stocked = stockedColours(machine);
  const { cable_cores } = machine.book.tables;
  const cores = coloursOfCores.ask(
    cable_cores,
    [],
    () => new Map(cable_cores.map((core) => [`${core.cable}|${core.core}`, core.colour])),
  );
  const colours = new Map<number, string>();
  const findings: Finding[] = [];
  problem.wires.forEach(({ wire }, i) => {
    const core = wire.cableId === null ? null : (cores.get(`${wire.cableId}|${wire.core}`) ?? null);
    const own = choices?.get(wire.id);
    const net = choices?.get(wire.netId);
    const pinned = own?.held === "pinned" ? own.value : net?.held === "pinned" ? net.value : null;
    const asked = core ?? pinned ?? machine.nets.get(wire.netId)?.colour ?? null;
    if (asked === null || asked === "") return;
    colours.set(i, asked);
    const stock = stocked(wire.wireType);
    if (!mayWear(wire.netClass, asked, stock)) {
      const numbers = { colour: asked, net_class: wire.netClass };
      findings.push(makeFinding("colour-earth", "error", [wire.id, wire.netId], numbers));
    } else if (core === null && !stock.includes(asked)) {
      const numbers = { colour: asked, wire_type: wire.wireType.id };
      findings.push(makeFinding("colour-not-stocked", "warning", [wire.id], numbers));
    }
  });
  problem.wires.forEach(({ wire, palette, hard }, i) => {
    if (colours.has(i)) return;
    const own = choices?.get(wire.id) ?? choices?.get(wire.netId);
    if (own?.held !== "settled") return;
    const clash = hard.some((j) => colours.get(j) === own.value);
    if (palette.includes(own.value) && !clash) colours.set(i, own.value);
    else {
      findings.push(
        makeFinding("settled-dropped", "note", [wire.id], { kind: "colour", value: own.value, clash }),
      );
    }
  });
  return { colours, findings };
}
