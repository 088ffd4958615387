import {
  type Corner,
  type LineResult,
  type WorkedCurrent,
  type WorkedLoad,
  type WorkedStep,
  type WorkedUnit,
  workedCurrent,
  workedLoad,
} from "@pinwright/engine";
import type { Named } from "../electric/naming.ts";
import { findWire, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** A unit of loads that are switched as one, by the names of its items. */
interface NamedUnit extends WorkedUnit {
  readonly items: readonly Named[];
}

/** How a conductor's currents come about at the corner where they are largest. */
interface CurrentFigures extends Omit<WorkedCurrent, "units"> {
  readonly corner: Corner;
  readonly units: readonly NamedUnit[];
}

interface NamedStep extends WorkedStep {
  /** `4-6` of a wire; else its id. */
  readonly name: string;
}

/** How a load's volts come about at the corner where they are least. */
interface LoadFigures extends Omit<WorkedLoad, "forth" | "back"> {
  readonly corner: Corner;
  readonly forth: readonly NamedStep[];
  readonly back: readonly NamedStep[];
}

/** One wire, contact or element, laid out unit by unit; nothing when it carries no current. */
export const electricWorkedCurrent = view<string, CurrentFigures>({
  uses: ({ line }) => [line.electric, line.machine, ...line.harnesses.values()],
  entries: ({ line }, partId) => {
    const { machine, harnesses, electric } = line;
    const carried =
      electric.wires.get(partId) ?? electric.contacts.get(partId) ?? electric.elements.get(partId);
    const corner = carried?.peakA.mostAt ?? null;
    const worked = corner === null ? null : workedCurrent(machine, harnesses, electric, partId, corner);
    if (worked === null || corner === null) return new Map();
    const units = worked.units.map((unit) => ({
      ...unit,
      items: unit.itemIds.map((id) => ({
        id,
        itemId: id,
        label: line.machine.items.get(id)?.labels ?? { en: "", zh: "" },
      })),
    }));
    return new Map([["", { ...worked, corner, units }]]);
  },
  restsInPreview: true,
});

const named = (line: LineResult, step: WorkedStep): NamedStep => {
  const found = step.kind === "wire" ? findWire(line, step.partId) : null;
  return { ...step, name: found === null ? step.partId : printedNo(found.harness, found.wire) };
};

/** One load, laid out step by step from its source and back; nothing when it is not fed. */
export const electricWorkedLoad = view<string, LoadFigures>({
  uses: ({ line }) => [line.electric, line.machine, ...line.harnesses.values()],
  entries: ({ line }, loadId) => {
    const corner = line.electric.loads.get(loadId)?.worstV.leastAt ?? null;
    const worked =
      corner === null ? null : workedLoad(line.machine, line.harnesses, line.electric, loadId, corner);
    if (worked === null || corner === null) return new Map();
    const { forth, back, ...rest } = worked;
    const both = {
      forth: forth.map((step) => named(line, step)),
      back: back.map((step) => named(line, step)),
    };
    return new Map([["", { ...rest, ...both, corner }]]);
  },
  restsInPreview: true,
});
