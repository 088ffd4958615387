import { colourGraph, compareText } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding, type Optimum } from "../model/index.ts";
import { optimum } from "../wire/index.ts";
import { type Harm, harmOf, type JointNets, jointNets, rankOf } from "./harm.ts";
import { goesOn, type KeyFreedom, keyFreedom } from "./keys.ts";
import { type SwapPair, shortPlugs, swapPairs } from "./pairs.ts";
import { harnessPlugs, type Joint, joints, type KeyedHarness, type Plug } from "./plugs.ts";

export interface KeyPlan {
  /** Cavities that a key blocks, by landing id; both halves of an in-line connector have the same. */
  readonly keys: ReadonlyMap<string, readonly number[]>;
  /** Pairs that can still be exchanged, against what no choice of keys can beat. */
  readonly swaps: Optimum;
  readonly findings: readonly Finding[];
}

/**
 * Keys the in-line connectors so that as few plugs as possible go where they do not belong, and tells what is left.
 *
 * Alike are housings of the same family, rows and ways. A plug reaches as far as its bundle is free from where it
 * is held. `plug-swap` grades what an exchange would do; `plugs-alike` gathers those of one function; `plug-offset` and `plug-reversed` are a plug one pin aside
 * or turned round on its own header, where no latch and no key stops it; `plug-on-longer` is a short plug on a long
 * header. What is out of reach is not told of: unequal tails keep apart what keys cannot.
 */
export function keyConnectors(machine: Machine, harnesses: readonly KeyedHarness[]): KeyPlan {
  return keyPlugs(
    machine,
    harnesses.flatMap((harness) => harnessPlugs(machine, harness)),
  );
}

/**
 * The same, when the plugs of all harnesses are at hand. Beside them it depends on the nets and ends, the `key`
 * choices, the in-line connectors, and on where the panels stand in the usual pose.
 */
export function keyPlugs(machine: Machine, plugs: readonly Plug[]): KeyPlan {
  const all = joints(machine, plugs);
  const freedom = keyFreedom(machine, all);
  const nets = jointNets(machine, all);
  const pairs = swapPairs(machine, all, nets);
  const keys = chooseKeys(freedom, pairs);
  const keyOf = (joint: Joint): readonly number[] => keys.get(joint.id) ?? [];
  const left = pairs.filter((pair) => swappable(pair, keyOf));
  const findings = [
    ...freedom.findings,
    ...alikeGroups(left.filter((pair) => pair.harm.severity === "note")),
    ...left
      .filter((pair) => pair.harm.severity !== "note")
      .map((pair) =>
        makeFinding("plug-swap", pair.harm.severity, [pair.a.id, pair.b.id], {
          ...harmNumbers(pair.harm),
          reach_mm: Math.round(pair.reach.freeMm),
          distance_mm: Math.round(pair.reach.distanceMm),
        }),
      ),
    ...shortPlugs(machine, all, nets)
      .filter(({ plug, socket, offset }) =>
        goesOn(keyOf(plug), keyOf(socket), socket.plug.connector.ways, (pin) => pin + offset),
      )
      .map(({ plug, socket, offset, harm, reach }) =>
        makeFinding("plug-on-longer", lessened(harm), [plug.id, socket.id], {
          ...harmNumbers(harm),
          offset,
          reach_mm: Math.round(reach.freeMm),
          distance_mm: Math.round(reach.distanceMm),
        }),
      ),
    ...all.flatMap((joint) => slips(nets, joint, keyOf(joint))),
  ];
  const byLanding = new Map<string, readonly number[]>();
  for (const joint of all) {
    const { landing } = joint.plug;
    if (landing.half === null) byLanding.set(landing.id, keyOf(joint));
    else for (const half of ["a", "b"]) byLanding.set(`${landing.itemId}:${half}`, keyOf(joint));
  }
  const named = findings.map((finding) => ({
    finding,
    name: `${finding.rule} ${finding.subjects.join(" ")}`,
  }));
  return {
    keys: byLanding,
    swaps: optimum(left.length, leastSwaps(freedom, pairs)),
    findings: named.sort((a, b) => compareText(a.name, b.name)).map(({ finding }) => finding),
  };
}

/** Plugs of one function that can be exchanged among each other: one note for each such set. */
function alikeGroups(pairs: readonly SwapPair[]): readonly Finding[] {
  const next = new Map<string, string[]>();
  const add = (from: string, to: string): void => {
    const list = next.get(from);
    if (list === undefined) next.set(from, [to]);
    else list.push(to);
  };
  const pairsFrom = new Map<string, number>();
  for (const { a, b } of pairs) {
    add(a.id, b.id);
    add(b.id, a.id);
    pairsFrom.set(a.id, (pairsFrom.get(a.id) ?? 0) + 1);
  }
  const seen = new Set<string>();
  return [...next.keys()].sort(compareText).flatMap((start) => {
    if (seen.has(start)) return [];
    const group: string[] = [];
    const todo = [start];
    seen.add(start);
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      group.push(at);
      for (const to of next.get(at) ?? []) {
        if (seen.has(to)) continue;
        seen.add(to);
        todo.push(to);
      }
    }
    const count = group.reduce((sum, id) => sum + (pairsFrom.get(id) ?? 0), 0);
    return [
      makeFinding("plugs-alike", "note", group.sort(compareText), { plugs: group.length, pairs: count }),
    ];
  });
}

const straight = (pin: number): number => pin;

function harmNumbers(harm: Harm): Finding["numbers"] {
  return { pins: harm.pins, plug_net: harm.plugNet, socket_net: harm.socketNet };
}

/** A slip that a look would show is one grade below an exchange. */
const lessened = (harm: Harm): Finding["severity"] => (harm.severity === "error" ? "warning" : "note");

function swappable(pair: SwapPair, keyOf: (joint: Joint) => readonly number[]): boolean {
  const [a, b] = [keyOf(pair.a), keyOf(pair.b)];
  const ways = pair.a.plug.connector.ways;
  return (pair.aReachesB && goesOn(a, b, ways, straight)) || (pair.bReachesA && goesOn(b, a, ways, straight));
}

/**
 * Keys of the joints that are free, one cavity each: pairs that must differ are coloured with cavities, lower
 * numbers first; a joint for which none is left takes the one that leaves least harm.
 */
function chooseKeys(freedom: KeyFreedom, pairs: readonly SwapPair[]): ReadonlyMap<string, readonly number[]> {
  const keys = new Map(freedom.fixed);
  const pairsOf = pairsByJoint(pairs);
  const ids = [...freedom.free.keys()].filter((id) => pairsOf.has(id)).sort(compareText);
  const place = new Map(ids.map((id, i) => [id, i]));
  const allowed = ids.map((id) => {
    const taken = new Set(
      (pairsOf.get(id) ?? []).flatMap((p) => {
        const fixed = freedom.fixed.get(p.a.id === id ? p.b.id : p.a.id);
        return fixed?.length === 1 ? fixed : [];
      }),
    );
    return (freedom.free.get(id) ?? [])
      .filter((pin) => !taken.has(pin))
      .map((colour) => ({ colour, cost: colour }));
  });
  const conflicts = pairs.flatMap((p): (readonly [number, number])[] => {
    const [a, b] = [place.get(p.a.id), place.get(p.b.id)];
    return a === undefined || b === undefined ? [] : [[a, b]];
  });
  const { colours } = colourGraph({ allowed, conflicts });
  ids.forEach((id, i) => {
    const pin = colours[i];
    if (pin !== null && pin !== undefined) keys.set(id, [pin]);
  });
  const keyOf = (joint: Joint): readonly number[] => keys.get(joint.id) ?? [];
  for (const id of ids) {
    if (keys.has(id)) continue;
    const own = pairsOf.get(id) ?? [];
    const harm = (): number =>
      own.reduce((sum, p) => sum + (swappable(p, keyOf) ? 1 + 1000 * rankOf(p.harm) : 0), 0);
    let best: { readonly key: readonly number[]; readonly harm: number } = { key: [], harm: harm() };
    for (const pin of freedom.free.get(id) ?? []) {
      keys.set(id, [pin]);
      const left = harm();
      if (left < best.harm) best = { key: [pin], harm: left };
    }
    keys.set(id, best.key);
  }
  return keys;
}

/** The pairs that each joint is one of, in their order. */
function pairsByJoint(pairs: readonly SwapPair[]): ReadonlyMap<string, readonly SwapPair[]> {
  const found = new Map<string, SwapPair[]>();
  for (const pair of pairs) {
    for (const { id } of [pair.a, pair.b]) {
      const own = found.get(id);
      if (own === undefined) found.set(id, [pair]);
      else own.push(pair);
    }
  }
  return found;
}

/**
 * Pairs that no choice can keep apart: both keyed already and alike, one without any cavity to spare and the other
 * unable to stop it, and beyond those nothing, so that the bound never exceeds the best.
 */
function leastSwaps(freedom: KeyFreedom, pairs: readonly SwapPair[]): number {
  const possible = (joint: Joint): readonly (readonly number[])[] => {
    const fixed = freedom.fixed.get(joint.id);
    if (fixed !== undefined) return [fixed];
    return [[], ...(freedom.free.get(joint.id) ?? []).map((pin) => [pin])];
  };
  return pairs.filter((pair) =>
    possible(pair.a).every((a) =>
      possible(pair.b).every((b) => swappable(pair, (joint) => (joint === pair.a ? a : b))),
    ),
  ).length;
}

/**
 * A plug on its own header, one pin aside or turned round, where neither latch nor key stops it and power meets
 * something else. Signals that change places on their own board show at the first test and are not told of.
 */
function slips(nets: JointNets, joint: Joint, key: readonly number[]): readonly Finding[] {
  const { family, connector } = joint.plug;
  if (family.kind !== "housing" || family.latch || connector.ways < 2) return [];
  const found: Finding[] = [];
  const columns = Math.ceil(connector.ways / connector.rows);
  const aside = (by: number) => (pin: number) => {
    const column = ((pin - 1) % columns) + by;
    return column < 0 || column >= columns ? 0 : pin + by;
  };
  const offsets = [1, -1].flatMap((by) => {
    if (!goesOn(key, key, connector.ways, aside(by))) return [];
    const harm = harmOf(nets, joint, joint, aside(by));
    return harm?.severity === "error" ? [{ by, harm }] : [];
  });
  const worst = offsets.sort((p, q) => rankOf(q.harm) - rankOf(p.harm))[0];
  if (worst !== undefined) {
    found.push(
      makeFinding("plug-offset", lessened(worst.harm), [joint.id], {
        ...harmNumbers(worst.harm),
        offset: worst.by,
      }),
    );
  }
  const turned = (pin: number): number => connector.ways + 1 - pin;
  if (goesOn(key, key, connector.ways, turned)) {
    const harm = harmOf(nets, joint, joint, turned);
    if (harm?.severity === "error") {
      found.push(makeFinding("plug-reversed", lessened(harm), [joint.id], harmNumbers(harm)));
    }
  }
  return found;
}
