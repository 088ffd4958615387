import type { MachineFunction } from "./functions.ts";
import type { ServiceNetwork } from "./network.ts";

/** What a function hangs on in a sound machine. */
interface Hold {
  readonly nodes: readonly number[];
  /** Index of the needs of the items that it has to do with. */
  readonly needs: readonly number[];
}

/**
 * Which functions can do anything else than in a sound machine: only their symptoms have to be worked out. A function is
 * concerned where one of its nodes is in another set of joined nodes, where something came into its set, where one of its
 * items died, or where a supply did.
 */
export class Affected {
  readonly #poles: readonly number[];
  readonly #holds: readonly Hold[];
  readonly #sound: Int32Array;
  readonly #labels: Int32Array;
  /** Label of each set, by its number, while labels are given. */
  readonly #labelOf: Int32Array;
  /** 1: something came into the set with this label. */
  readonly #entered: Uint8Array;

  constructor(
    network: ServiceNetwork,
    functions: readonly MachineFunction[],
    needsOf: ReadonlyMap<string, number>,
    soundSets: Int32Array,
  ) {
    const { joints, nodes, sources } = network;
    this.#poles = sources.flatMap(({ plus, minus }) => [plus, minus]);
    this.#labels = new Int32Array(nodes.length);
    this.#labelOf = new Int32Array(nodes.length);
    this.#entered = new Uint8Array(nodes.length);
    this.#label(soundSets);
    this.#sound = this.#labels.slice();
    this.#holds = functions.map(({ joint, controls, between, commands, boardIds, itemId }) => {
      const own = [joint, ...controls, ...between].flatMap((n) => joints[n] ?? []);
      const itemIds = [itemId, ...boardIds, ...own.flatMap(({ element }) => element?.itemId ?? [])];
      return {
        nodes: [...new Set([...own.flatMap(({ a, b }) => [a, b]), ...commands.flat()])],
        needs: [...new Set(itemIds.flatMap((id) => needsOf.get(id) ?? []))],
      };
    });
  }

  /**
   * @param sets number of the set that each node is in
   * @param isAlive whether what has these needs does its work
   * @param isEverything the supplies are not as they are in a sound machine
   * @returns by function whether it is concerned
   */
  of(sets: Int32Array, isAlive: (needs: number) => boolean, isEverything: boolean): readonly boolean[] {
    if (isEverything) return this.#holds.map(() => true);
    this.#label(sets);
    this.#entered.fill(0);
    for (let node = 0; node < this.#labels.length; node++) {
      const label = this.#labels[node] ?? 0;
      if (label !== this.#sound[node]) this.#entered[label] = 1;
    }
    return this.#holds.map(
      ({ nodes, needs }) =>
        nodes.some((node) => {
          const label = this.#labels[node] ?? 0;
          return label !== this.#sound[node] || this.#entered[label] === 1;
        }) || needs.some((n) => !isAlive(n)),
    );
  }

  /** Gives each set the lowest of its nodes, a supply's pole before any other, so that what splits off changes and the rest not. */
  #label(sets: Int32Array): void {
    this.#labelOf.fill(-1);
    for (const pole of this.#poles) {
      const set = sets[pole] ?? 0;
      if (this.#labelOf[set] === -1) this.#labelOf[set] = pole;
    }
    for (let node = 0; node < sets.length; node++) {
      const set = sets[node] ?? 0;
      if (this.#labelOf[set] === -1) this.#labelOf[set] = node;
      this.#labels[node] = this.#labelOf[set] ?? node;
    }
  }
}
