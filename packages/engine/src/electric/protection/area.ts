import { compareText } from "@pinwright/kernel";
import type {
  Machine,
  ShortRating,
  SizedWire,
  UnfusedWire,
  WeakWire,
  WireRating,
  WireStrain,
} from "../../model/index.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import type { Opening, ShortCurrent } from "../physics/short-circuit.ts";
import type { Feeding } from "./reach.ts";
import { currentOf, type Fuse, firstOpening, shortRating, sourceId, wayBack } from "./short.ts";
import type { Strengths } from "./strength.ts";

/** What lies behind one fuse, up to the next fuses and loads. */
export interface Protected {
  readonly fuse: Fuse;
  readonly source: SourcePart;
  /** Fuses between it and the source, the nearest first. */
  readonly upstream: readonly Fuse[];
  readonly far: ShortRating | null;
  readonly thinnest: { readonly wireId: string; readonly limitA: number } | null;
  readonly weakest: WeakWire | null;
  /** Loads that hang on it. */
  readonly loadIds: readonly string[];
  readonly breaksA: number;
  /** Wires that a short circuit behind it passes. */
  readonly strains: ReadonlyMap<string, WireStrain>;
}

/** What all sources of a machine share. */
export interface AreaTask {
  readonly machine: Machine;
  readonly wires: ReadonlyMap<string, SizedWire>;
  readonly ratings: ReadonlyMap<string, WireRating>;
  readonly fuses: ReadonlyMap<string, Fuse>;
  readonly strengths: Strengths;
  readonly drives: (feeding: Feeding) => (node: string) => readonly string[];
}

/** A short circuit at one node, with every wire that its current passes. */
interface Fault {
  readonly nodeId: string;
  readonly loopOhm: number;
  readonly current: ShortCurrent;
  readonly back: string;
}

/** What one source feeds, at one corner. */
export class Area {
  readonly #task: AreaTask;
  readonly #feeding: Feeding;
  readonly #volts: number;
  readonly #returnsAt = new Map<string, string[]>();
  /** Points behind each fuse, and before the first one under "". */
  readonly #behind = new Map<string, string[]>();
  readonly #fusesTo = new Map<string, readonly Fuse[]>();
  readonly #drives = new Map<string, readonly string[]>();
  /** Fuses on the way to each load that it feeds. */
  readonly chains = new Map<string, readonly Fuse[]>();

  constructor(task: AreaTask, feeding: Feeding, volts: number) {
    this.#task = task;
    this.#feeding = feeding;
    this.#volts = volts;
    for (const node of feeding.back.steps.keys()) {
      const itemId = task.machine.points.get(node)?.itemId;
      if (itemId !== undefined) push(this.#returnsAt, itemId, node);
    }
    // Nearest first: the fuses up to the node before are known.
    for (const [node, step] of feeding.feed.steps) {
      const before = this.#fusesTo.get(step?.before?.far ?? feeding.source.a) ?? [];
      const fuse = step === null ? undefined : task.fuses.get(step.part.id);
      const fuses = fuse === undefined ? before : [fuse, ...before];
      this.#fusesTo.set(node, fuses);
      if (task.machine.points.has(node)) push(this.#behind, fuses[0]?.part.id ?? "", node);
    }
  }

  /** Adds the loads that hang on it, with the wires from their far side to what switches them. */
  takeLoads(loads: readonly Part[]): void {
    const drive = this.#task.drives(this.#feeding);
    for (const load of loads) {
      for (const [node, other] of [
        [load.a, load.b],
        [load.b, load.a],
      ] as const) {
        const fuses = this.#fusesTo.get(node);
        if (fuses === undefined || this.#fusesTo.has(other)) continue;
        if (!this.chains.has(load.id)) this.chains.set(load.id, fuses);
        this.#drives.set(node, [...(this.#drives.get(node) ?? []), ...drive(other)]);
      }
    }
  }

  /** The short circuit at a node; null where nothing leads back. */
  #fault(nodeId: string): Fault | null {
    const way = wayBack(this.#task.machine, this.#feeding, this.#returnsAt, nodeId);
    if (way === null) return null;
    const loopOhm = this.#feeding.feed.ohm(nodeId) + way.ohm;
    const current = currentOf(this.#feeding.source, this.#volts, loopOhm);
    return { nodeId, loopOhm, current, back: way.node };
  }

  #rating({ nodeId, loopOhm, current }: Fault, opening: Opening): ShortRating {
    return shortRating(this.#feeding.source, nodeId, loopOhm, current, opening);
  }

  /** Most current that a fuse has to break in a short circuit at one of these nodes. */
  breaksA(fuse: Fuse, nodes: readonly string[]): number {
    const faults = nodes.flatMap((node) => this.#fault(node) ?? []);
    const nearest = faults.reduce<Fault | null>(
      (p, q) => (p === null || q.loopOhm < p.loopOhm ? q : p),
      null,
    );
    return nearest === null ? 0 : firstOpening(nearest.current, [fuse]).breaksA;
  }

  /** @param near the same at the corner with the most current */
  *protected(near: Area): Iterable<Protected> {
    for (const [fuseId, nodes] of this.#behind) {
      const chain = this.#fusesTo.get(nodes[0] ?? "") ?? [];
      const fuse = chain[0];
      if (fuseId === "" || fuse === undefined) continue;
      const faults = nodes.flatMap((node) => this.#fault(node) ?? []);
      const far = faults.reduce<Fault | null>((p, q) => (p === null || q.loopOhm > p.loopOhm ? q : p), null);
      yield {
        fuse,
        source: this.#feeding.source,
        upstream: chain.slice(1),
        far: far === null ? null : this.#rating(far, firstOpening(far.current, [fuse])),
        thinnest: this.#thinnest(nodes),
        loadIds: [...this.chains]
          .flatMap(([loadId, fuses]) => (fuses[0] === fuse ? [loadId] : []))
          .sort(compareText),
        breaksA: near.breaksA(fuse, nodes),
        ...this.#harm(faults, chain),
      };
    }
  }

  /** The wire with the least lasting limit between a fuse and the next fuses, and from its loads on. */
  #thinnest(nodes: readonly string[]): Protected["thinnest"] {
    let best: Protected["thinnest"] = null;
    const ids = nodes.flatMap((node) => {
      const [last] = this.#wiresTo(node);
      return [...(last === undefined ? [] : [last]), ...(this.#drives.get(node) ?? [])];
    });
    for (const wireId of new Set(ids)) {
      const limitA = this.#task.ratings.get(wireId)?.limitA ?? Number.POSITIVE_INFINITY;
      const first = best !== null && limitA === best.limitA && compareText(wireId, best.wireId) < 0;
      if (best === null || limitA < best.limitA || first) best = { wireId, limitA };
    }
    return best;
  }

  /** Wires on the way to a node, the last first, up to the nearest fuse. */
  *#wiresTo(node: string): Iterable<string> {
    for (const { part } of this.#feeding.feed.back(node)) {
      if (this.#task.fuses.has(part.id)) return;
      if (part.kind === "wire") yield part.id;
    }
  }

  /** Every wire on the way back from a short circuit to the source. */
  *#wiresBack({ back }: Fault): Iterable<string> {
    for (const { part } of this.#feeding.back.back(back)) if (part.kind === "wire") yield part.id;
  }

  /** What the short circuits behind a fuse ask of every wire that they pass, and the wire that they harm most. */
  #harm(
    faults: readonly Fault[],
    chain: readonly Fuse[],
  ): { readonly strains: ReadonlyMap<string, WireStrain>; readonly weakest: WeakWire | null } {
    const ratedA = chain[0]?.ratedA ?? 0;
    const strains = new Map<string, WireStrain>();
    let weakest: WeakWire | null = null;
    for (const fault of faults) {
      const opening = firstOpening(fault.current, chain);
      const own = new Set([...(this.#drives.get(fault.nodeId) ?? []), ...this.#wiresTo(fault.nodeId)]);
      for (const wireId of [...own, ...this.#wiresBack(fault)]) {
        const used = this.#task.strengths.used(wireId, fault.current, opening);
        const before = strains.get(wireId);
        if (before === undefined || before.shortUsed < (used ?? 0))
          strains.set(wireId, { fuseA: own.has(wireId) ? ratedA : 0, shortUsed: used ?? 0 });
        if (used === null || (weakest !== null && used <= weakest.used)) continue;
        weakest = this.#task.strengths.weak(wireId, fault.current, used, this.#rating(fault, opening));
      }
    }
    return { strains, weakest };
  }

  /** Wires before the first fuse that their supply's limit does not protect. */
  unfused(): readonly UnfusedWire[] {
    const found = new Map<string, UnfusedWire>();
    const supplyId = sourceId(this.#feeding.source);
    for (const node of this.#behind.get("") ?? []) {
      const fault = this.#fault(node);
      if (fault === null) continue;
      const opening = firstOpening(fault.current, []);
      for (const wireId of this.#wiresTo(node)) {
        const used = this.#task.strengths.used(wireId, fault.current, opening);
        if (used === null || used < 1 || found.has(wireId)) continue;
        const lengthMm = this.#task.wires.get(wireId)?.finishedMm ?? 0;
        const limitA = this.#task.ratings.get(wireId)?.limitA ?? 0;
        const { heldA, firstA } = fault.current;
        found.set(wireId, { wireId, supplyId, lengthMm, limitA, heldA, firstA });
      }
    }
    return [...found.values()];
  }
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
