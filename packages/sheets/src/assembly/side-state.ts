import type { FastenerItem, Item, LineResult } from "@pinwright/engine";
import { type StepSide, sideKey, stepFasteners, stepItems } from "./step-facts.ts";
import type { SideState } from "./step-scene.ts";

interface Put<T> {
  readonly stepNumber: number;
  readonly item: T;
}

/** What the steps put on each panel side, in the order of assembly: gathered once for all maps of a machine. */
export class SideStates {
  readonly #fasteners = new Map<string, Put<FastenerItem>[]>();
  readonly #items = new Map<string, Put<Item>[]>();

  constructor(line: LineResult) {
    const put = <T extends Item>(into: Map<string, Put<T>[]>, item: T, stepNumber: number): void => {
      const key = sideKey(item.place.panelId, item.place.side);
      const list = into.get(key);
      if (list === undefined) into.set(key, [{ stepNumber, item }]);
      else list.push({ stepNumber, item });
    };
    for (const step of line.steps.steps) {
      // On its own bench a mechanism is on no panel, and a check puts nothing in.
      if (step.kind === "bench" || step.kind === "recheck") continue;
      for (const item of stepFasteners(line, step)) put(this.#fasteners, item, step.number);
      for (const item of stepItems(line, step)) put(this.#items, item, step.number);
    }
  }

  /** What stands on a panel side when a step is done there. */
  at(now: StepSide): SideState {
    const key = sideKey(now.panelId, now.side);
    const { number } = now.step;
    const own = new Set(now.fasteners.map((item) => item.id));
    const fasteners = (this.#fasteners.get(key) ?? []).filter(({ item }) => !own.has(item.id));
    return {
      now,
      earlier: {
        fasteners: fasteners.filter((put) => put.stepNumber < number).map((put) => put.item),
        items: (this.#items.get(key) ?? []).filter((put) => put.stepNumber < number).map((put) => put.item),
      },
      later: fasteners.filter((put) => put.stepNumber >= number).map((put) => put.item),
    };
  }
}
