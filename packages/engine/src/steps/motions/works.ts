import { deepEqual, Query } from "@pinwright/kernel";
import type { FastenerItem, FasteningResult, HarnessResult, Machine } from "../../model/index.ts";
import type { Draft } from "../derive/draft.ts";
import type { OrderedSteps } from "../derive/order-steps.ts";
import { type BenchWork, benchWork, type HarnessWork, harnessWork } from "./motions.ts";
import { drivesOf, type StepWork, workOf } from "./work.ts";

/** The work of every step, with a memory: it is found anew when something in the step, or a tool, is another. */
export class StepWorks {
  readonly #harnesses = new Query<HarnessWork>(deepEqual);
  readonly #benches = new Query<BenchWork>(deepEqual);
  readonly #works = new Query<StepWork>(deepEqual);

  solve(
    machine: Machine,
    fastening: FasteningResult,
    harnesses: ReadonlyMap<string, HarnessResult>,
    { drafts, layers }: OrderedSteps,
  ): ReadonlyMap<string, StepWork> {
    return new Map(
      drafts.map((draft) => {
        const own = layers.get(draft.id) ?? NO_LAYERS;
        return [draft.id, this.#workOf(machine, fastening, harnesses, draft, own)];
      }),
    );
  }

  sweep(): void {
    for (const query of [this.#harnesses, this.#benches, this.#works]) query.sweep();
  }

  /** How many steps had their work found so far. */
  get computed(): number {
    return this.#works.computed;
  }

  #workOf(
    machine: Machine,
    fastening: FasteningResult,
    harnesses: ReadonlyMap<string, HarnessResult>,
    draft: Draft,
    layers: readonly (readonly [string, number])[],
  ): StepWork {
    const harness = this.#harnessOf(machine, harnesses, draft.harnessId);
    const bench = this.#benchOf(machine, draft.mechanismTypeId);
    const { numbers } = machine.shop;
    const ids = draft.kind === "recheck" ? draft.recheckIds : draft.fastenerIds;
    const inputs: unknown[] = [draft, harness, bench, numbers, layers];
    for (const id of draft.itemIds) inputs.push(machine.items.get(id));
    for (const id of ids) {
      const reach = fastening.reaches.get(id);
      inputs.push(machine.items.get(id), reach?.driverId, reach?.nutDriverId);
    }
    return this.#works.ask(draft.id, inputs, () => {
      const items = draft.itemIds.flatMap((id) => machine.items.get(id) ?? []);
      const drives = drivesOf(machine, fastening, ids, depths(layers));
      return workOf({ draft, items, drives, harness, bench, numbers });
    });
  }

  #harnessOf(
    machine: Machine,
    harnesses: ReadonlyMap<string, HarnessResult>,
    id: string | null,
  ): HarnessWork | null {
    const harness = id === null ? undefined : harnesses.get(id);
    if (harness === undefined) return null;
    const { wires, branches, pinboard, landingIds } = harness;
    const connectors = landingIds.map((landingId) => machine.landings.get(landingId)?.connector);
    return this.#harnesses.ask(harness.harness.id, [wires, branches, pinboard, ...connectors], () =>
      harnessWork(machine, harness),
    );
  }

  #benchOf(machine: Machine, typeId: string | null): BenchWork | null {
    if (typeId === null) return null;
    const { mechanism_steps, mechanism_devices, mechanism_fasteners } = machine.book.tables;
    return this.#benches.ask(typeId, [mechanism_steps, mechanism_devices, mechanism_fasteners], () =>
      benchWork(machine, typeId),
    );
  }
}

const NO_LAYERS: readonly (readonly [string, number])[] = [];

/** The layer of a fastener is that of what it holds. */
function depths(layers: readonly (readonly [string, number])[]): (fastener: FastenerItem) => number {
  if (layers.length === 0) return () => 0;
  const byId = new Map(layers);
  return ({ id, holds }) => byId.get(id) ?? byId.get(holds?.split("/")[0] ?? "") ?? 0;
}
