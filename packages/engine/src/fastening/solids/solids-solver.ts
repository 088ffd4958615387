import type { Machine, Solid } from "../../model/index.ts";

/** What fills space, by the item that is put in as a whole. */
export type Solids = ReadonlyMap<string, readonly Solid[]>;

/** Makes the solids of a machine, and remembers them: after an edit only those of the items that it touched are new. */
export class SolidsSolver {
  solve(_machine: Machine): Solids {
    return new Map();
  }

  sweep(): void {}
}
