import type { MachineFacts, WireFact } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { both, colourName, endName } from "./places.ts";
import type { KitWire } from "./retrofit-kit.ts";

/** A wire that is at most so much shorter than wanted still reaches: common practice, no source. */
const REACHES_MM = 5;

/** What becomes of wires in a machine that was built before. */
export interface WireWork {
  /** As the revision before has them. */
  readonly out: readonly WireFact[];
  /** As the revision after has them. */
  readonly added: readonly WireFact[];
  /** The same wire under another number. */
  readonly renumbered: readonly { readonly from: WireFact; readonly to: WireFact }[];
}

/** Whether a wire that is there cannot stay: it ends elsewhere, looks otherwise, or is too short. */
function isOther(was: WireFact, is: WireFact): boolean {
  const ends = (wire: WireFact): string => [wire.a.point, wire.b.point].sort(compareText).join(" ");
  return (
    ends(was) !== ends(is) ||
    was.colour !== is.colour ||
    was.type !== is.type ||
    is.finishedMm > was.finishedMm + REACHES_MM
  );
}

/**
 * Wires that come out of a machine and go into it. One that is only shorter in the revision after stays: it still
 * reaches.
 */
export function wireWork(before: MachineFacts, after: MachineFacts): WireWork {
  const ids = [...new Set([...Object.keys(before.wires), ...Object.keys(after.wires)])].sort(compareText);
  const out: WireFact[] = [];
  const added: WireFact[] = [];
  const renumbered: { from: WireFact; to: WireFact }[] = [];
  for (const id of ids) {
    const [was, is] = [before.wires[id], after.wires[id]];
    const stays = was !== undefined && is !== undefined && !isOther(was, is);
    if (stays) {
      if (was.number !== is.number) renumbered.push({ from: was, to: is });
      continue;
    }
    if (was !== undefined) out.push(was);
    if (is !== undefined) added.push(is);
  }
  return { out, added, renumbered };
}

/** A wire as it is made up and looked for. */
export function kitWire(facts: MachineFacts, wire: WireFact): KitWire {
  const size = facts.rows.wire_types?.[wire.type];
  const area = size?.area_mm2 === undefined ? "" : `${size.area_mm2} mm²`;
  const end = (of: WireFact["a"]): KitWire["ends"][number] => ({
    place: both((language) => endName(facts, of, language)),
    terminal: of.part,
  });
  return {
    number: wire.number,
    colour: both((language) => colourName(wire.colour, language)),
    type: [wire.type, area].filter((text) => text !== "").join("\n"),
    lengthMm: wire.cutMm,
    ends: [end(wire.a), end(wire.b)],
  };
}

/** Work at mains and protective earth is for a licensed person alone. */
export const isLicensed = ({ netClass }: Pick<WireFact, "netClass">): boolean =>
  netClass === "mains" || netClass === "earth";
