import { type Disturbed, disturbed } from "./disturbed.ts";
import type { ServiceFault, Symptom } from "./fault.ts";
import type { MachineFunction } from "./functions.ts";
import { opensAtShort } from "./fuses.ts";
import type { ServiceNetwork } from "./network.ts";
import { Standing } from "./standing.ts";

/** Fuses that open one after the other before a short is given up. */
const MOST_FUSES = 8;

/** What the functions of a machine do under faults: which of them do anything else than they should. */
export class FaultModel {
  readonly network: ServiceNetwork;
  /** Those that work in a sound machine: what the model cannot make work tells nothing. */
  readonly functions: readonly MachineFunction[];
  readonly #standing: Standing;
  /** Receivers of light: each with the function that lights it, and what it does in the dark. */
  readonly #lit: readonly { readonly f: number; readonly from: number; readonly inDark: Symptom }[];

  constructor(network: ServiceNetwork, functions: readonly MachineFunction[]) {
    this.network = network;
    const all = new Standing(network, functions);
    const sound = disturbed([]);
    all.set(sound);
    this.functions = functions.filter((_, f) => all.symptom(f, sound) === "works");
    this.#standing = new Standing(network, this.functions);
    const lights = new Map(this.functions.map(({ joint }, f) => [joint, f]));
    this.#lit = this.functions.flatMap(({ joint, light }, f) => {
      const from = lights.get(light ?? -1);
      if (from === undefined) return [];
      // In the dark it lets nothing through, as if it were open.
      const open = this.#standing.symptoms(this.#settled(disturbed([{ kind: "open", joint }])));
      return [{ f, from, inDark: open.get(f) ?? "dead" }];
    });
  }

  /** Symptoms other than `works`, by index of the function. */
  symptoms(faults: readonly ServiceFault[]): ReadonlyMap<number, Symptom> {
    const now = this.#settled(disturbed(faults));
    const found = this.#standing.symptoms(now);
    const dark = this.#lit.filter(({ f, from }) => found.get(from) === "dead" && !found.has(f));
    return dark.length === 0
      ? found
      : new Map([...found, ...dark.map(({ f, inDark }) => [f, inDark] as const)]);
  }

  /** Which nodes a meter's beeper calls joined, with everything switched off: one number for each set of them. */
  joined(faults: readonly ServiceFault[]): Int32Array {
    return this.#standing.beeping(disturbed(faults));
  }

  /** Whether a node has the volts of a source under faults, by node and index of the source. */
  live(faults: readonly ServiceFault[]): (node: number, source: number) => boolean {
    this.#settled(disturbed(faults));
    const sets = this.#standing.sets();
    const alive = this.network.sources.map((_, s) => this.#standing.isAlive(s));
    return (node, source) =>
      alive[source] === true && sets[node] === sets[this.network.sources[source]?.plus ?? -1];
  }

  /** Where a supply is shorted, a fuse opens, or else the supply gives up. */
  #settled(faults: Disturbed): Disturbed {
    const standing = this.#standing;
    let now = faults;
    standing.set(now);
    for (let n = 0; n < MOST_FUSES; n++) {
      const short = standing.short(now);
      if (short === null) break;
      now = opensAtShort(this.network, now, short);
      standing.set(now);
    }
    return now;
  }
}
