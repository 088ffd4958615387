import type { BookRow } from "@pinwright/book";
import type { Machine, Severity } from "../model/index.ts";
import { netIndex } from "../wire/index.ts";
import type { Joint } from "./plugs.ts";

type Net = BookRow<"nets">;

/** What a wrong mating does, at its worst pin. */
export interface Harm {
  readonly severity: Severity;
  /** Pins that meet another net than their own. */
  readonly pins: number;
  /** The worst of them: net of the plug's wire and net of the socket's pin. */
  readonly plugNet: string;
  readonly socketNet: string;
}

/** Classes that feed power; a lamp or motor net counts when it comes from a supply. */
const FEEDS: readonly string[] = ["mains", "coil", "motor"];

const feeds = (net: Net): boolean =>
  FEEDS.includes(net.class) || (net.supply !== null && net.volts !== null && net.volts !== 0);

/**
 * Power on anything that is not power of the same class and voltage is an error: it burns, or blows a fuse. Other
 * nets of unlike class, and like power from another supply, are a warning: it does not work, but nothing burns.
 * Nets of one class are a note: the wrong one answers.
 */
function severityOf(a: Net, b: Net): Severity {
  if (feeds(a) || feeds(b)) {
    if (a.class !== b.class || a.volts !== b.volts || feeds(a) !== feeds(b)) return "error";
    return a.supply === b.supply ? "note" : "warning";
  }
  return a.class === b.class ? "note" : "warning";
}

const RANK: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };

/** Nets by cavity number, cavity 1 first, of every joint. */
export type JointNets = ReadonlyMap<Joint, ReadonlyMap<number, Net>>;

export function jointNets(machine: Machine, all: readonly Joint[]): JointNets {
  return new Map(all.map((joint) => [joint, netsOf(machine, joint)]));
}

function netsOf(machine: Machine, joint: Joint): ReadonlyMap<number, Net> {
  const index = netIndex(machine);
  const nets = new Map<number, Net>();
  for (const pointId of joint.plug.landing.pointIds) {
    const pin = machine.points.get(pointId)?.pin ?? null;
    const net = machine.nets.get(index.endsByPoint.get(pointId)?.[0]?.net ?? "");
    if (pin !== null && net !== undefined) nets.set(pin, net);
  }
  return nets;
}

/**
 * Compares pin by pin what happens when the plug of one joint sits in the socket of another.
 * @param at cavity of the socket that a cavity of the plug meets; 0 or less, or beyond the last: none
 * @returns null when every pin meets its own net or nothing
 */
export function harmOf(nets: JointNets, from: Joint, to: Joint, at: (pin: number) => number): Harm | null {
  const sockets = nets.get(to);
  let harm: Harm | null = null;
  let pins = 0;
  for (const [pin, net] of nets.get(from) ?? []) {
    const socket = sockets?.get(at(pin));
    if (socket === undefined || socket === net) continue;
    pins++;
    const severity = severityOf(net, socket);
    if (harm === null || RANK[severity] > RANK[harm.severity]) {
      harm = { severity, pins, plugNet: net.id, socketNet: socket.id };
    }
  }
  return harm === null ? null : { ...harm, pins };
}

export const worse = (a: Harm, b: Harm): Harm => (RANK[b.severity] > RANK[a.severity] ? b : a);
export const rankOf = (harm: Harm): number => RANK[harm.severity];
