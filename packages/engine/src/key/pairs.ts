import { type Machine, type Place, straightDistances } from "../model/index.ts";
import { type Harm, harmOf, type JointNets, worse } from "./harm.ts";
import type { Joint } from "./plugs.ts";
import { mates, type Reach, reachOf } from "./reach.ts";

/** Two joints whose plugs could be exchanged, as far as reach goes, and what the exchange would do. */
export interface SwapPair {
  readonly a: Joint;
  readonly b: Joint;
  readonly harm: Harm;
  /** Directions in which a plug reaches the other's socket. */
  readonly aReachesB: boolean;
  readonly bReachesA: boolean;
  /** Of the two directions the one with more to spare. */
  readonly reach: Reach;
}

/** A plug that reaches the socket of a longer connector. */
export interface ShortPlug {
  readonly plug: Joint;
  readonly socket: Joint;
  readonly offset: number;
  readonly harm: Harm;
  readonly reach: Reach;
}

const reaches = (reach: Reach | null): reach is Reach => reach !== null && reach.freeMm >= reach.distanceMm;
const spareMm = (reach: Reach | null): number =>
  reach === null ? Number.NEGATIVE_INFINITY : reach.freeMm - reach.distanceMm;
const straight = (pin: number): number => pin;

/** Pairs of alike joints that reach each other and are not wired alike; joints by code-point order of their ids. */
export function swapPairs(machine: Machine, all: readonly Joint[], nets: JointNets): readonly SwapPair[] {
  const distance = straightDistances(machine);
  const pairs: SwapPair[] = [];
  for (const group of byFamily(all)) {
    group.forEach((a, i) => {
      for (let j = i + 1; j < group.length; j++) {
        const b = group[j];
        if (b === undefined || a.plug.connector.ways !== b.plug.connector.ways) continue;
        const pair = mates(a, b) === "alike" ? swapPair(nets, a, b, distance) : null;
        if (pair !== null) pairs.push(pair);
      }
    });
  }
  return pairs;
}

function swapPair(
  nets: JointNets,
  a: Joint,
  b: Joint,
  distance: (p: Place, q: Place) => number,
): SwapPair | null {
  const ab = reachOf(a, b, distance);
  const ba = reachOf(b, a, distance);
  if (!reaches(ab) && !reaches(ba)) return null;
  const harms = [
    reaches(ab) ? harmOf(nets, a, b, straight) : null,
    reaches(ba) ? harmOf(nets, b, a, straight) : null,
  ].flatMap((h) => h ?? []);
  const [first, ...rest] = harms;
  const reach = spareMm(ab) >= spareMm(ba) ? ab : ba;
  if (first === undefined || reach === null) return null;
  return { a, b, harm: rest.reduce(worse, first), aReachesB: reaches(ab), bReachesA: reaches(ba), reach };
}

/** Plugs that go onto a longer header than their own, at the offset that does the most harm. */
export function shortPlugs(machine: Machine, all: readonly Joint[], nets: JointNets): readonly ShortPlug[] {
  const distance = straightDistances(machine);
  const found: ShortPlug[] = [];
  for (const group of byFamily(all)) {
    for (const plug of group) {
      for (const socket of group) {
        if (plug === socket || mates(plug, socket) !== "shorter") continue;
        const reach = reachOf(plug, socket, distance);
        if (!reaches(reach)) continue;
        let worst: { readonly offset: number; readonly harm: Harm } | null = null;
        const most = socket.plug.connector.ways - plug.plug.connector.ways;
        for (let offset = 0; offset <= most; offset++) {
          const harm = harmOf(nets, plug, socket, (pin) => pin + offset);
          if (harm !== null && (worst === null || worse(worst.harm, harm) !== worst.harm)) {
            worst = { offset, harm };
          }
        }
        if (worst !== null) found.push({ plug, socket, reach, ...worst });
      }
    }
  }
  return found;
}

function byFamily(all: readonly Joint[]): readonly (readonly Joint[])[] {
  const groups = new Map<string, Joint[]>();
  for (const joint of all) {
    const { family, rows } = joint.plug.connector;
    const list = groups.get(`${family}|${rows}`);
    if (list === undefined) groups.set(`${family}|${rows}`, [joint]);
    else list.push(joint);
  }
  return [...groups.values()];
}
