import type { ElectricSolution, Machine } from "../../../model/index.ts";
import type { Control } from "../trace.ts";
import { type Traced, traces } from "../traces.ts";

/** What the rules of the program map look at. */
export interface ProgramFacts {
  readonly machine: Machine;
  readonly solution: ElectricSolution | null;
  readonly traced: readonly Traced[];
  /** Loads of each driver point, each once, with the control that they hang on. */
  readonly loadsOf: ReadonlyMap<string, readonly { readonly load: Traced; readonly control: Control }[]>;
}

export const LOADS: ReadonlySet<string> = new Set(["coil", "motor", "led", "load"]);

export function programFacts(machine: Machine, solution: ElectricSolution | null): ProgramFacts {
  const traced = [...traces(machine).values()];
  const loadsOf = new Map<string, { load: Traced; control: Control }[]>();
  for (const load of traced) {
    if (!LOADS.has(load.element.row.kind)) continue;
    for (const control of load.controls) {
      if (control.element.row.kind !== "driver" || control.element.itemId === load.element.itemId) continue;
      const own = loadsOf.get(control.element.id);
      if (own === undefined) loadsOf.set(control.element.id, [{ load, control }]);
      else own.push({ load, control });
    }
  }
  return { machine, solution, traced, loadsOf };
}

/** Drivers or inputs of other items that an element hangs on. */
export const controlsOf = (traced: Traced, kind: "driver" | "input"): readonly Control[] =>
  traced.controls.filter(
    ({ element }) => element.row.kind === kind && element.itemId !== traced.element.itemId,
  );
