import { compareText } from "@pinwright/kernel";
import {
  type Item,
  type LineResult,
  labelsOf,
  type Machine,
  type StationPlan,
  type WorkStep,
} from "../../model/index.ts";
import { countFasteners, fastenersOf } from "./count.ts";
import type { KitPart, StationKit } from "./kit.ts";

type Lined = Pick<LineResult, "machine" | "fastening" | "steps" | "harnesses">;
type PartOfStep = Omit<KitPart, "stepIds">;

/**
 * What each place of a plan needs for one machine, in the order of the plan. Steps that no place can do are in no
 * kit; when there are none, the fasteners of all kits together are those of the whole machine.
 */
export function stationKits(line: Lined, plan: StationPlan): readonly StationKit[] {
  const steps = new Map(line.steps.steps.map((step) => [step.id, step]));
  return plan.loads.map(({ placeId, stationId, labels, stepIds }) => {
    const own = stepIds.flatMap((id) => steps.get(id) ?? []);
    const fasteners = fastenersOf(
      line.machine,
      own.flatMap((step) => step.fastenerIds),
    );
    return {
      placeId,
      stationId,
      labels,
      stepIds,
      parts: partsOf(line, own),
      fasteners: countFasteners(fasteners, line.fastening.symbols),
    };
  });
}

/** Parts that one step uses, as often as it uses them; of a mechanism's bench, the devices that are built in. */
export function partsOfStep(line: Lined, step: WorkStep): readonly KitPart[] {
  return partsOf(line, [step]);
}

function partsOf(line: Lined, steps: readonly WorkStep[]): readonly KitPart[] {
  const parts = new Map<string, { part: PartOfStep; count: number; stepIds: string[] }>();
  for (const step of steps) {
    for (const part of usedBy(line, step)) {
      const key = `${part.kind}|${part.typeId}`;
      const known = parts.get(key) ?? { part, count: 0, stepIds: [] };
      known.count += part.count;
      if (known.stepIds.at(-1) !== step.id) known.stepIds.push(step.id);
      parts.set(key, known);
    }
  }
  return [...parts.values()]
    .map(({ part, count, stepIds }) => ({ ...part, count, stepIds }))
    .sort((a, b) => KINDS[a.kind] - KINDS[b.kind] || compareText(a.typeId, b.typeId));
}

/** Big things first. */
const KINDS: Readonly<Record<KitPart["kind"], number>> = {
  mechanism: 0,
  board: 1,
  device: 2,
  harness: 3,
};

function usedBy({ machine, harnesses }: Lined, step: WorkStep): readonly PartOfStep[] {
  const mounted = step.itemIds.flatMap((id) => itemPart(machine.items.get(id)));
  const built = step.mechanismTypeId === null ? [] : insides(machine, step.mechanismTypeId, step.times);
  const harness = step.harnessId === null ? undefined : harnesses.get(step.harnessId);
  if (harness === undefined) return [...mounted, ...built];
  const { labels } = harness;
  const laid: PartOfStep = { kind: "harness", typeId: harness.harness.id, labels, partId: null, count: 1 };
  return [...mounted, ...built, laid];
}

function itemPart(item: Item | undefined): readonly PartOfStep[] {
  if (item === undefined || item.kind === "fastener" || item.kind === "inline") return [];
  const { kind, type } = item;
  return [{ kind, typeId: type.id, labels: labelsOf(type, type.id), partId: type.part, count: 1 }];
}

/** Devices within mechanisms of a type. */
function insides(machine: Machine, typeId: string, times: number): readonly PartOfStep[] {
  const { mechanism_devices, device_types } = machine.book.tables;
  return mechanism_devices.flatMap((row): PartOfStep[] => {
    const type =
      row.mechanism_type === typeId ? device_types.find((t) => t.id === row.device_type) : undefined;
    if (type === undefined) return [];
    const labels = labelsOf(type, type.id);
    return [{ kind: "device", typeId: type.id, labels, partId: type.part, count: times }];
  });
}
