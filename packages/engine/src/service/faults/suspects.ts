import { compareText } from "@pinwright/kernel";
import { wireEntryCell } from "../../lists/index.ts";
import type { Landing, Machine } from "../../model/index.ts";
import type { ServiceFault } from "./fault.ts";
import type { MachineFunction } from "./functions.ts";
import type { Joint, ServiceNetwork } from "./network.ts";

/** Kinds of part that fail, each in its way. */
export const SUSPECT_KINDS = [
  "wire-open",
  "contact-open",
  "cavities-short",
  "cavities-swapped",
  "fuse-open",
  "driver-open",
  "driver-closed",
  "input-open",
  "track-open",
  "load-open",
  "load-shorted",
  "diode-shorted",
  "switch-open",
  "switch-closed",
  "resistor-open",
  "sticks",
  "out-of-adjustment",
  "stuck-closed",
  "board-dead",
  "supply-dead",
] as const;
export type SuspectKind = (typeof SUSPECT_KINDS)[number];

/** One thing that can be wrong, before anything is known. */
export interface Suspect {
  readonly id: string;
  readonly kind: SuspectKind;
  readonly fault: ServiceFault;
  /** Ids of what it is about: wires, points, items, elements. */
  readonly subjects: readonly string[];
  /** How likely it is against the others; all add up to 1. */
  readonly odds: number;
}

/**
 * How often each kind of part fails in a machine that has been played and carried about, one part against another. From
 * memory and without a source; records of the own floor and field take over as they come in.
 */
const USUAL: Readonly<Record<SuspectKind, number>> = {
  "wire-open": 2,
  "contact-open": 6,
  "cavities-short": 0.3,
  "cavities-swapped": 0.1,
  "fuse-open": 6,
  "driver-open": 2,
  "driver-closed": 2,
  "input-open": 1,
  "track-open": 0.2,
  "load-open": 3,
  "load-shorted": 0.3,
  "diode-shorted": 0.5,
  "switch-open": 6,
  "switch-closed": 1,
  "resistor-open": 0.3,
  sticks: 8,
  "out-of-adjustment": 10,
  "stuck-closed": 3,
  "board-dead": 2,
  "supply-dead": 3,
};

/** Defects of the kind that were recorded among so many parts of it. */
export type FailureCounts = ReadonlyMap<SuspectKind, { readonly failed: number; readonly parts: number }>;

/** So many parts the usual rates are worth before records outweigh them. */
const USUAL_IS_WORTH_PARTS = 2000;
/** Failures among a thousand parts that a usual rate of 1 stands for. */
const USUAL_PER_THOUSAND = 0.5;

function rateOf(kind: SuspectKind, counts: FailureCounts | null): number {
  const usual = (USUAL[kind] * USUAL_PER_THOUSAND) / 1000;
  const seen = counts?.get(kind);
  if (seen === undefined) return usual;
  return (usual * USUAL_IS_WORTH_PARTS + seen.failed) / (USUAL_IS_WORTH_PARTS + seen.parts);
}

/**
 * Every single thing that can be wrong with a machine, in code-point order of the ids: what each wire, contact, element, board
 * and supply can do, what two neighbouring cavities can do to each other, and what wears.
 * @param counts what the floor and the field recorded; null: usual rates alone
 */
export function suspectsOf(
  machine: Machine,
  network: ServiceNetwork,
  functions: readonly MachineFunction[],
  counts: FailureCounts | null,
): readonly Suspect[] {
  const found: Omit<Suspect, "odds">[] = [];
  const suspect = (kind: SuspectKind, fault: ServiceFault, subjects: readonly string[]): void => {
    found.push({ id: `${kind} ${subjects.join(" ")}`, kind, fault, subjects });
  };
  network.joints.forEach((joint, n) => {
    for (const [kind, way] of waysOf(joint))
      suspect(kind, way === "open" ? { kind: "open", joint: n } : { kind: "closed", joint: n }, [joint.id]);
  });
  for (const { joint, kind, id, itemId } of functions) {
    if (kind === "read") {
      suspect("out-of-adjustment", { kind: "mechanical", joint, stuck: false }, [id]);
      suspect("stuck-closed", { kind: "mechanical", joint, stuck: true }, [id]);
    } else if (MOVES.has(network.joints[joint]?.element?.row.kind ?? ""))
      suspect("sticks", { kind: "mechanical", joint, stuck: false }, [id, itemId]);
  }
  const makers = new Set(network.sources.map(({ itemId }) => itemId));
  for (const item of machine.items.values())
    if (makers.has(item.id)) suspect("supply-dead", { kind: "dead", itemId: item.id }, [item.id]);
    else if (item.kind === "board") suspect("board-dead", { kind: "dead", itemId: item.id }, [item.id]);
  for (const [p, q] of neighbours(machine, network)) {
    const [a, b] = [network.nodeOf.get(p) ?? -1, network.nodeOf.get(q) ?? -1];
    suspect("cavities-short", { kind: "short", a, b }, [p, q]);
    const contacts = [network.jointOf.get(p), network.jointOf.get(q)] as const;
    if (contacts[0] !== undefined && contacts[1] !== undefined)
      suspect("cavities-swapped", { kind: "swapped", a: contacts[0], b: contacts[1] }, [p, q]);
  }
  const all = found.reduce((sum, { kind }) => sum + rateOf(kind, counts), 0);
  return found
    .map((one) => ({ ...one, odds: rateOf(one.kind, counts) / all }))
    .sort((p, q) => compareText(p.id, q.id));
}

const MOVES: ReadonlySet<string> = new Set(["coil", "motor"]);

/** What a joint can do that it should not. */
function waysOf({ kind, element }: Joint): readonly (readonly [SuspectKind, "open" | "closed"])[] {
  if (kind === "wire") return [["wire-open", "open"]];
  if (kind === "contact") return [["contact-open", "open"]];
  switch (element?.row.kind) {
    case "fuse":
      return [["fuse-open", "open"]];
    case "driver":
      return [
        ["driver-open", "open"],
        ["driver-closed", "closed"],
      ];
    case "input":
      return [["input-open", "open"]];
    case "link":
      return [["track-open", "open"]];
    case "coil":
    case "motor":
    case "led":
      return [
        ["load-open", "open"],
        ["load-shorted", "closed"],
      ];
    case "speaker":
      return [["load-open", "open"]];
    case "diode":
      return [["diode-shorted", "closed"]];
    case "contact":
      return [
        ["switch-open", "open"],
        ["switch-closed", "closed"],
      ];
    case "resistor":
      return [["resistor-open", "open"]];
    default:
      return [];
  }
}

/** Wired points that lie beside each other in one housing and belong to different nets. */
function neighbours(machine: Machine, network: ServiceNetwork): readonly (readonly [string, string])[] {
  const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
  const pairs: (readonly [string, string])[] = [];
  for (const landing of machine.landings.values()) {
    if (landing.connector === null) continue;
    const wired = landing.pointIds.filter((id) => netOf.has(id) && network.nodeOf.has(id)).sort(compareText);
    wired.forEach((p, i) => {
      for (const q of wired.slice(i + 1))
        if (netOf.get(p) !== netOf.get(q) && areBeside(machine, landing, p, q)) pairs.push([p, q]);
    });
  }
  return pairs;
}

function areBeside(machine: Machine, landing: Landing, p: string, q: string): boolean {
  const cell = (id: string) => {
    const pin = machine.points.get(id)?.pin ?? null;
    return pin === null ? null : wireEntryCell(machine, landing, pin);
  };
  const [a, b] = [cell(p), cell(q)];
  return a !== null && b !== null && Math.abs(a.column - b.column) <= 1 && Math.abs(a.row - b.row) <= 1;
}
