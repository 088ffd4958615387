import type { FaultModel, ServiceFault, Suspect } from "../faults/index.ts";

/** What a meter reads of a machine with a suspect in it: worked out once for each suspect that is ever asked about. */
export class Meter {
  readonly #model: FaultModel;
  readonly #suspects: readonly Suspect[];
  readonly #joined = new Map<number, Int32Array>();
  readonly #live = new Map<number, (node: number, source: number) => boolean>();

  constructor(model: FaultModel, suspects: readonly Suspect[]) {
    this.#model = model;
    this.#suspects = suspects;
  }

  /**
   * Which nodes beep against each other with the power off: one number for each set of them.
   * @param s index of the suspect; -1: none
   */
  joined(s: number): Int32Array {
    const known = this.#joined.get(s);
    if (known !== undefined) return known;
    const made = this.#model.joined(this.#faults(s));
    this.#joined.set(s, made);
    return made;
  }

  /** Whether the volts of a source are at a node with the power on. */
  isLive(s: number, node: number, source: number): boolean {
    const known = this.#live.get(s) ?? this.#model.live(this.#faults(s));
    this.#live.set(s, known);
    return known(node, source);
  }

  #faults(s: number): readonly ServiceFault[] {
    const fault = this.#suspects[s]?.fault;
    return fault === undefined ? [] : [fault];
  }
}
