import type { Machine, PlacedElement, ServiceNetwork } from "../../packages/engine/src/index.ts";
import { type Built, touchesData, type Wires } from "./built.ts";
import { across, type Circuit, type Volts } from "./circuit.ts";

/** Less than this share of what there is in a sound machine does not feed a board, light a lamp or pull a coil. */
export const ENOUGH = 0.6;
/** Which boards and other items of a machine are alive: they are fed and hear. */
export class Life {
  readonly #machine: Machine;
  readonly #circuit: Circuit;
  readonly #sound: Built;
  readonly #rest: Volts;
  /** Loads that feed boards and supplies, by item. */
  readonly #feeds: ReadonlyMap<string, readonly PlacedElement[]>;
  /** Message inputs by item, and the drivers of other items that are on the same wires in a sound machine. */
  readonly #hears: ReadonlyMap<
    string,
    readonly { readonly input: PlacedElement; readonly from: readonly PlacedElement[] }[]
  >;

  /** @param rest volts of the sound machine that does nothing */
  constructor(machine: Machine, network: ServiceNetwork, circuit: Circuit, sound: Built, rest: Volts) {
    this.#machine = machine;
    this.#circuit = circuit;
    this.#sound = sound;
    this.#rest = rest;
    const feeds = new Map<string, PlacedElement[]>();
    for (const one of machine.elements)
      if (one.row.kind === "load") feeds.set(one.itemId, [...(feeds.get(one.itemId) ?? []), one]);
    this.#feeds = feeds;
    this.#hears = this.#messages(network);
  }

  /** Inputs, each with the drivers that speak on its wires: found by putting volts on one end of a circuit of wires alone. */
  #messages({ joints, messages }: ServiceNetwork) {
    const hears = new Map<string, { input: PlacedElement; from: PlacedElement[] }[]>();
    const drivers = this.#machine.elements.filter(({ row }) => row.kind === "driver");
    for (const joint of messages) {
      const input = joints[joint]?.element;
      if (input === null || input === undefined) continue;
      const reach = this.#circuit.reach(this.#sound, input);
      const from = drivers.filter(
        (one) => one.itemId !== input.itemId && reach(one.fromPointId, one.toPointId),
      );
      if (from.length > 0) hears.set(input.itemId, [...(hears.get(input.itemId) ?? []), { input, from }]);
    }
    return hears;
  }

  /** Items that are fed and hear. */
  alive(built: Built, rest: Volts): ReadonlySet<string> {
    const there = new Set(built.elements.map(({ id }) => id));
    const alive = new Set<string>();
    for (const { itemId } of this.#sound.elements) {
      if (built.dead.has(itemId)) continue;
      const loads = this.#feeds.get(itemId) ?? [];
      const isFed = loads.every((load) => {
        const sound = across(this.#rest, load);
        return there.has(load.id) && across(rest, load) >= ENOUGH * sound;
      });
      if (isFed) alive.add(itemId);
    }
    for (let dies = true; dies; ) {
      dies = false;
      for (const [itemId, all] of this.#hears) {
        if (!alive.has(itemId)) continue;
        const isHearing = all.every(({ input, from }) => {
          if (!there.has(input.id)) return false;
          const speaking = from.filter(({ id, itemId: of }) => there.has(id) && alive.has(of));
          if (speaking.length === 0) return false;
          const reach = this.#heard(built, input);
          return speaking.some((one) => reach(one.fromPointId, one.toPointId));
        });
        if (isHearing) continue;
        alive.delete(itemId);
        dies = true;
      }
    }
    return alive;
  }

  /** Reach of an input; where nothing on its wires is another than in a sound machine it is that of the sound one. */
  #heard(built: Built, input: PlacedElement): (a: string, b: string) => boolean {
    if (built.wires === this.#sound.wires && built.elements === this.#sound.elements) return () => true;
    if (this.#reachesOf !== built.wires) {
      this.#reachesOf = built.wires;
      this.#reaches.clear();
    }
    const leading = built.elements.flatMap(({ id, row }) =>
      row.kind === "link" || row.kind === "fuse" ? [id] : [],
    );
    const key = `${input.id} ${leading.join(" ")}`;
    const known = this.#reaches.get(key);
    if (known !== undefined) return known;
    const made = touchesData(this.#machine, this.#sound, built)
      ? this.#circuit.reach(built, input)
      : () => true;
    this.#reaches.set(key, made);
    return made;
  }
  /** Reaches of inputs with the wires that were asked last, by the input and what leads. */
  readonly #reaches = new Map<string, (a: string, b: string) => boolean>();
  #reachesOf: Wires | null = null;
}
