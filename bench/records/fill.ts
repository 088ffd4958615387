import type { UnitKind } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { BOARDS, HARNESSES, type RecordingFloor, revisionOf } from "./floor.ts";

/** Types of Tidewatch's book, so that the gate knows what each needs. */
const BOARD_TYPES = ["bt.switch16", "bt.lamp16", "bt.lamp4", "bt.dist48"] as const;
const HARNESS_TYPES = ["hs.mains", "hs.dc", "hs.earth-supplies"] as const;
/** Machines that are not released yet. */
const IN_WORK = 12;

/** Records invented machines with everything in them into a store, as stations would. */
export class Filler {
  readonly #store: Store;
  readonly #floor: RecordingFloor;
  readonly #inWork: string[] = [];
  #count = 0;
  #facts = 0;

  constructor(store: Store, floor: RecordingFloor) {
    this.#store = store;
    this.#floor = floor;
  }

  /** Facts that were recorded. */
  get facts(): number {
    return this.#facts;
  }

  /** Records machines until there are so many; all but the last ones are released. */
  async fillTo(machines: number): Promise<void> {
    const { records } = this.#store;
    for (; this.#count < machines; this.#count++) {
      const [machine = ""] = await this.#begin("machine", ["tidewatch"], 1);
      const boards = await this.#begin("board", BOARD_TYPES, BOARDS);
      const harnesses = await this.#begin("harness", HARNESS_TYPES, HARNESSES);
      const facts = this.#floor.machine(this.#count, { machine, boards, harnesses });
      await records.take(facts, () => null);
      this.#facts += facts.length;
      this.#inWork.push(machine);
      if (this.#inWork.length <= IN_WORK) continue;
      await records.addOwn({ kind: "released", unit: this.#inWork.shift() ?? "", heads: [] }, "lead");
      this.#facts += 1;
    }
  }

  async #begin(what: UnitKind, types: readonly string[], count: number): Promise<readonly string[]> {
    const n = this.#count;
    const units = Array.from({ length: count }, (_, i) => ({
      ...{ what, type: types[i % types.length] ?? "", book: "tidewatch", run: `run-${Math.floor(n / 20)}` },
      ...{ revision: revisionOf(n), options: [] },
    }));
    const begun = await this.#store.records.begin(units, "lead");
    this.#facts += count;
    return begun.flatMap(({ fact: { body } }) => (body.kind === "begun" ? [body.unit] : []));
  }
}
