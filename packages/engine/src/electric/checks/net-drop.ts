import { type Finding, makeFinding } from "../../model/index.ts";
import { bestHelp } from "../sizing/help.ts";
import { type ElectricFacts, percent, rounded } from "./facts.ts";

/** `net-drop`: between where a net is fed and its worst end more voltage is lost than the net allows. */
export function netDrop({ ratings, machine, harnesses }: ElectricFacts): readonly Finding[] {
  const exceeded = [...ratings.drops.values()].filter((drop) => drop.dropV > drop.limitV);
  if (exceeded.length === 0) return [];
  const wires = new Map(
    [...harnesses.values()].flatMap((h) => h.wires.map((wire) => [wire.id, wire] as const)),
  );
  return exceeded.map((drop) => {
    const wiresV = drop.sections.reduce((sum, section) => sum + section.dropV, 0);
    const help = bestHelp(machine, wires, drop);
    return makeFinding("net-drop", "warning", [drop.netId, drop.toPointId, drop.fromPointId], {
      drop_v: rounded(drop.dropV),
      drop_pct: percent(drop.dropV / drop.nominalV),
      limit_v: rounded(drop.limitV),
      limit_pct: percent(drop.limitV / drop.nominalV),
      wires: drop.sections.length,
      wires_v: rounded(Math.min(wiresV, drop.dropV)),
      contacts_v: rounded(Math.max(0, drop.dropV - wiresV)),
      most_a: rounded(Math.max(0, ...drop.sections.map((section) => section.amps))),
      help: help.kind,
      help_wire: help.wireId,
      help_type: help.wireTypeId,
      help_v: rounded(help.dropV),
    });
  });
}
