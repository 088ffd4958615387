import { compareText } from "@pinwright/kernel";
import type {
  Machine,
  ShortRating,
  SizedWire,
  UnfusedWire,
  WeakWire,
  WireRating,
} from "../../model/index.ts";
import { isLoad } from "../network/feeds.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { type Conditions, sourceVolts } from "../network/values.ts";
import { adiabaticA2s, adiabaticK, harmS, shortCircuitC } from "../physics/adiabatic.ts";
import type { Opening, ShortCurrent } from "../physics/short-circuit.ts";
import { type CopperGraph, copperGraph, type Feeding, feedingOf } from "./reach.ts";
import { currentOf, type Fuse, firstOpening, fusesOf, shortRating, sourceId, wayBack } from "./short.ts";

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
}

export interface Protection {
  readonly fuses: ReadonlyMap<string, Protected>;
  readonly unfused: readonly UnfusedWire[];
  /** Fuses on the way to each load from its source, the nearest first, by the load's element id. */
  readonly fusesOfLoad: ReadonlyMap<string, readonly Fuse[]>;
}

interface Task {
  readonly machine: Machine;
  readonly wires: ReadonlyMap<string, SizedWire>;
  readonly ratings: ReadonlyMap<string, WireRating>;
  readonly fuses: ReadonlyMap<string, Fuse>;
}

/**
 * What each fuse protects, and how: a short circuit at every point behind it, at the corner where it is slowest to open
 * (supply low, wires hot, contacts worn), against the wires that it passes; one right behind it at the corner with the
 * most current, for its breaking capacity; and the wires before the first fuse.
 */
export function protect(
  machine: Machine,
  parts: readonly Part[],
  wires: ReadonlyMap<string, SizedWire>,
  ratings: ReadonlyMap<string, WireRating>,
): Protection {
  const { numbers } = machine.shop;
  const lengthsMm = new Map([...wires].map(([id, wire]) => [id, wire.finishedMm]));
  const slow: Conditions = {
    corner: { contacts: "worn", supply: "low", temperature: "hot" },
    numbers,
    lengthsMm,
  };
  const high: Conditions = {
    corner: { contacts: "new", supply: "high", temperature: "cold" },
    numbers,
    lengthsMm,
  };
  const task: Task = { machine, wires, ratings, fuses: fusesOf(machine, parts) };
  const slowCopper = copperGraph(parts, slow);
  const highCopper = copperGraph(parts, high);
  const fuses = new Map<string, Protected>();
  const unfused: UnfusedWire[] = [];
  const fusesOfLoad = new Map<string, readonly Fuse[]>();
  for (const source of parts) {
    if (source.kind !== "source") continue;
    const feeding = feedingOf(slowCopper, source);
    const area = new Area(task, parts, feeding, sourceVolts(source, slow.corner));
    const breaks = new Breaking(task, highCopper, source, sourceVolts(source, high.corner));
    for (const own of area.protected((fuse, node) => breaks.amps(fuse, node)))
      fuses.set(own.fuse.part.id, own);
    unfused.push(...area.unfused());
    for (const [loadId, chain] of area.chains) if (!fusesOfLoad.has(loadId)) fusesOfLoad.set(loadId, chain);
  }
  return { fuses, unfused: unfused.sort((a, b) => compareText(a.wireId, b.wireId)), fusesOfLoad };
}

/** A short circuit at one node, with every wire that its current passes. */
interface Fault {
  readonly rating: ShortRating;
  readonly current: ShortCurrent;
  readonly opening: Opening;
  readonly wireIds: readonly string[];
}

/** What one source feeds. */
class Area {
  readonly #task: Task;
  readonly #feeding: Feeding;
  readonly #volts: number;
  readonly #returnsAt = new Map<string, string[]>();
  /** Points behind each fuse, and before the first one under "". */
  readonly #behind = new Map<string, string[]>();
  readonly #fusesTo = new Map<string, readonly Fuse[]>();
  readonly #drives = new Map<string, readonly string[]>();
  /** Fuses on the way to each load that it feeds. */
  readonly chains = new Map<string, readonly Fuse[]>();

  constructor(task: Task, parts: readonly Part[], feeding: Feeding, volts: number) {
    this.#task = task;
    this.#feeding = feeding;
    this.#volts = volts;
    for (const node of feeding.back.nodes) {
      const itemId = task.machine.points.get(node)?.itemId;
      if (itemId !== undefined) push(this.#returnsAt, itemId, node);
    }
    for (const node of feeding.feed.nodes) {
      const fuses = this.#chain(node);
      this.#fusesTo.set(node, fuses);
      if (task.machine.points.has(node)) push(this.#behind, fuses[0]?.part.id ?? "", node);
    }
    const drive = driveWires(parts, feeding);
    for (const part of parts) {
      if (!isLoad(part)) continue;
      for (const [node, other] of [
        [part.a, part.b],
        [part.b, part.a],
      ] as const) {
        const fuses = this.#fusesTo.get(node);
        if (fuses === undefined || this.#fusesTo.has(other)) continue;
        if (!this.chains.has(part.id)) this.chains.set(part.id, fuses);
        this.#drives.set(node, [...(this.#drives.get(node) ?? []), ...drive(other)]);
      }
    }
  }

  #chain(node: string): readonly Fuse[] {
    const fuses: Fuse[] = [];
    for (const { part } of this.#feeding.feed.back(node)) {
      const fuse = this.#task.fuses.get(part.id);
      if (fuse !== undefined) fuses.push(fuse);
    }
    return fuses;
  }

  #fault(node: string, fuses: readonly Fuse[]): Fault | null {
    const { feed, back, source } = this.#feeding;
    const way = wayBack(this.#task.machine, this.#feeding, this.#returnsAt, node);
    if (way === null) return null;
    const loopOhm = feed.ohm(node) + way.ohm;
    const current = currentOf(source, this.#volts, loopOhm);
    const opening = firstOpening(current, fuses);
    const wireIds = new Set(this.#drives.get(node) ?? []);
    for (const { part } of feed.back(node)) {
      if (fuses[0] !== undefined && part.id === fuses[0].part.id) break;
      if (part.kind === "wire") wireIds.add(part.id);
    }
    for (const end of way.nodes)
      for (const { part } of back.back(end)) if (part.kind === "wire") wireIds.add(part.id);
    return {
      rating: shortRating(source, node, loopOhm, current, opening),
      current,
      opening,
      wireIds: [...wireIds],
    };
  }

  *protected(breaksA: (fuse: Fuse, node: string) => number): Iterable<Protected> {
    for (const [fuseId, nodes] of this.#behind) {
      const chain = this.#fusesTo.get(nodes[0] ?? "") ?? [];
      const fuse = chain[0];
      if (fuseId === "" || fuse === undefined) continue;
      const faults = nodes.flatMap((node) => this.#fault(node, chain) ?? []);
      const own = nodes.flatMap((node) => this.#fault(node, [fuse])?.rating ?? []);
      yield {
        fuse,
        source: this.#feeding.source,
        upstream: chain.slice(1),
        far: own.reduce<ShortRating | null>(
          (far, r) => (far === null || r.loopOhm > far.loopOhm ? r : far),
          null,
        ),
        thinnest: this.#thinnest(nodes),
        weakest: this.#weakest(faults),
        loadIds: [...this.chains]
          .flatMap(([loadId, fuses]) => (fuses[0] === fuse ? [loadId] : []))
          .sort(compareText),
        breaksA: Math.max(0, ...nodes.map((node) => breaksA(fuse, node))),
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
      if (
        best === null ||
        limitA < best.limitA ||
        (limitA === best.limitA && compareText(wireId, best.wireId) < 0)
      )
        best = { wireId, limitA };
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

  #weakest(faults: readonly Fault[]): WeakWire | null {
    let worst: WeakWire | null = null;
    for (const fault of faults)
      for (const wireId of fault.wireIds) {
        const weak = this.#strain(wireId, fault);
        if (weak !== null && (worst === null || weak.used > worst.used)) worst = weak;
      }
    return worst;
  }

  /** How much of what a wire stands a short circuit uses: its stored energy's I²t, and the time of its held current. */
  #strain(wireId: string, { rating, current, opening }: Fault): WeakWire | null {
    const { wires, ratings, machine } = this.#task;
    const [wire, own] = [wires.get(wireId), ratings.get(wireId)];
    if (wire === undefined || own === undefined) return null;
    const { area_mm2: areaMm2, temperature_c: insulationC, insulation } = wire.wireType;
    const k = adiabaticK(insulation, insulationC);
    const stands = adiabaticA2s(k, areaMm2);
    const strength = {
      limitA: own.limitA,
      adiabaticA2s: stands,
      insulationC,
      shortC: shortCircuitC(insulation),
      airC: machine.shop.numbers.ambient_c,
    };
    const held = harmS(strength, current.heldA);
    const lastsS = Math.min(opening.opensS, current.heldS);
    const heldUse = held === Number.POSITIVE_INFINITY ? 0 : lastsS / held;
    const used = current.storedA2s / stands + (current.heldA > 0 ? heldUse : 0);
    return { wireId, areaMm2, k, adiabaticA2s: stands, limitA: own.limitA, harmS: held, used, short: rating };
  }

  /** Wires before the first fuse that their supply's limit does not protect. */
  unfused(): readonly UnfusedWire[] {
    const found = new Map<string, UnfusedWire>();
    for (const node of this.#behind.get("") ?? []) {
      const fault = this.#fault(node, []);
      if (fault === null) continue;
      for (const wireId of this.#wiresTo(node)) {
        const weak = this.#strain(wireId, fault);
        const wire = this.#task.wires.get(wireId);
        if (weak === null || wire === undefined || weak.used < 1 || found.has(wireId)) continue;
        const { heldA, firstA } = fault.current;
        const supplyId = sourceId(this.#feeding.source);
        found.set(wireId, {
          wireId,
          supplyId,
          lengthMm: wire.finishedMm,
          limitA: weak.limitA,
          heldA,
          firstA,
        });
      }
    }
    return [...found.values()];
  }
}

/** Most current that a fuse has to break: in a short circuit as near behind it as can be. */
class Breaking {
  readonly #task: Task;
  readonly #volts: number;
  readonly #feeding: Feeding;
  readonly #returnsAt = new Map<string, string[]>();

  constructor(task: Task, copper: CopperGraph, source: SourcePart, volts: number) {
    this.#task = task;
    this.#volts = volts;
    this.#feeding = feedingOf(copper, source);
    for (const node of this.#feeding.back.nodes) {
      const itemId = task.machine.points.get(node)?.itemId;
      if (itemId !== undefined) push(this.#returnsAt, itemId, node);
    }
  }

  amps(fuse: Fuse, node: string): number {
    const way = wayBack(this.#task.machine, this.#feeding, this.#returnsAt, node);
    if (way === null) return 0;
    const current = currentOf(this.#feeding.source, this.#volts, this.#feeding.feed.ohm(node) + way.ohm);
    return firstOpening(current, [fuse]).breaksA;
  }
}

/** Wires from the far side of a load on, to the drivers and contacts that switch it. */
function driveWires(parts: readonly Part[], { feed, back }: Feeding): (node: string) => readonly string[] {
  const at = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.kind === "source" || (part.kind === "element" && part.element.row.kind !== "link")) continue;
    push(at, part.a, part);
    push(at, part.b, part);
  }
  return (start) => {
    const wires: string[] = [];
    const seen = new Set([start]);
    for (const node of seen) {
      if (Number.isFinite(feed.ohm(node)) || Number.isFinite(back.ohm(node))) continue;
      for (const part of at.get(node) ?? []) {
        if (part.kind === "wire" && !wires.includes(part.id)) wires.push(part.id);
        seen.add(part.a === node ? part.b : part.a);
      }
    }
    return wires;
  };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
