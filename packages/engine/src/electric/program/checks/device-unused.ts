import { type Finding, makeFinding } from "../../../model/index.ts";
import type { Traced } from "../traces.ts";
import type { ProgramFacts } from "./facts.ts";

/**
 * Whether nothing drives or reads an element, and it is in no circuit of its own. A contact between rails or in series
 * with a load does its work without the program; so does a load that contacts switch, and a lamp that always burns.
 */
function isUnused({ element, controls, feeds }: Traced): boolean {
  if (controls.some((control) => control.element.itemId !== element.itemId)) return false;
  const live = (side: "from" | "to"): boolean => feeds[side].rail || feeds[side].load;
  return !live("from") || !live("to");
}

const DRIVEN: ReadonlySet<string> = new Set(["contact", "coil", "motor", "led", "speaker"]);

/** A contact that no input reads, and a load that no driver switches. */
export function deviceUnused({ traced, machine }: ProgramFacts): readonly Finding[] {
  return traced.flatMap((one) => {
    const { row, itemId, id } = one.element;
    if (!DRIVEN.has(row.kind) || machine.items.get(itemId)?.kind === "board" || !isUnused(one)) return [];
    const isContact = row.kind === "contact";
    return [makeFinding(isContact ? "device-unread" : "device-undriven", "warning", [itemId, id])];
  });
}
