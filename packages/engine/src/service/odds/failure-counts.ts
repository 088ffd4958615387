import type { Machine } from "../../model/index.ts";
import type { FailureCounts, Suspect, SuspectKind } from "../faults/index.ts";

/** A defect that the floor or the field recorded, as far as it says what failed. */
export interface CountedDefect {
  /** What the unit is, and its type. */
  readonly what: string;
  readonly type: string;
  /** What is wrong, as the floor's tiles have it. */
  readonly kind: string;
  /** Cause once it was mended; blank: not yet. */
  readonly cause: string;
  readonly where: { readonly item?: string | undefined; readonly point?: string | undefined };
}

/** Units that were built, and what failed on them. */
export interface BuiltRecords {
  readonly units: readonly { readonly what: string; readonly type: string }[];
  readonly defects: readonly CountedDefect[];
}

/** What a defect says failed, whatever it was found on. */
const FAILED: Readonly<Record<string, SuspectKind>> = {
  "contact-out": "contact-open",
  "wrong-cavity": "cavities-swapped",
  swapped: "cavities-swapped",
  open: "wire-open",
  "missing-wire": "wire-open",
  "wire-damaged": "wire-open",
  "wire-pinched": "wire-open",
  short: "cavities-short",
  "dry-joint": "track-open",
  "out-of-adjustment": "out-of-adjustment",
  "does-not-move": "sticks",
};

/** Defects of a part that is named by where it is. */
const OF_A_PART: ReadonlySet<string> = new Set(["damaged-part", "wrong-part"]);

/** How an element fails most, by its kind. Common practice, no source. */
const BY_ELEMENT: Readonly<Record<string, SuspectKind>> = {
  contact: "switch-open",
  coil: "load-open",
  motor: "load-open",
  led: "load-open",
  speaker: "load-open",
  fuse: "fuse-open",
  source: "supply-dead",
  driver: "driver-open",
  input: "input-open",
};

/** What was drawn wrong fails on every unit until it is drawn right: that is a problem of the design and says nothing of parts. */
const OF_THE_DESIGN = "drawing";

/**
 * How often each kind of part failed among how many that were built, for the odds of suspects. A defect that does not say
 * what failed, or that the drawing caused, is not counted; parts are counted by the units that have them: machines, or the
 * boards, harnesses and mechanisms with serial numbers where there are more of these than machines need.
 */
export function failureCounts(
  machine: Machine,
  suspects: readonly Suspect[],
  { units, defects }: BuiltRecords,
): FailureCounts {
  const failed = new Map<SuspectKind, number>();
  for (const defect of defects) {
    const kind = defect.cause === OF_THE_DESIGN ? null : failedKind(machine, defect);
    if (kind !== null) failed.set(kind, (failed.get(kind) ?? 0) + 1);
  }
  const built = builtOf(machine, units);
  const places = placesOf(machine);
  const counts = new Map<SuspectKind, { failed: number; parts: number }>();
  for (const { kind, subjects } of suspects) {
    const known = counts.get(kind) ?? { failed: failed.get(kind) ?? 0, parts: 0 };
    known.parts += built(places(subjects));
    counts.set(kind, known);
  }
  // Nothing built yet says nothing, however many defects somebody noted.
  return new Map([...counts].filter(([, { parts }]) => parts > 0));
}

function failedKind(machine: Machine, { what, kind, where }: CountedDefect): SuspectKind | null {
  const plain = FAILED[kind];
  if (plain !== undefined) return plain;
  if (!OF_A_PART.has(kind)) return null;
  if (what === "board") return "board-dead";
  const item = machine.items.get(where.item ?? machine.points.get(where.point ?? "")?.itemId ?? "");
  if (item === undefined) return null;
  if (item.kind === "board") return "board-dead";
  for (const { itemId, row } of machine.elements) {
    const found = itemId === item.id ? BY_ELEMENT[row.kind] : undefined;
    if (found !== undefined) return found;
  }
  return null;
}

/** What is a unit of its own in a machine, and how many of it one machine has. */
interface Place {
  readonly what: string;
  readonly type: string;
}

/** Copies of what stands at a place that were built. */
function builtOf(machine: Machine, units: BuiltRecords["units"]): (place: Place) => number {
  const count = new Map<string, number>();
  for (const { what, type } of units) {
    const key = what === "machine" ? what : `${what} ${type}`;
    count.set(key, (count.get(key) ?? 0) + 1);
  }
  const inOne = new Map<string, number>();
  for (const item of machine.items.values()) {
    const key = `${item.kind} ${item.type.id}`;
    inOne.set(key, (inOne.get(key) ?? 0) + 1);
  }
  const machines = count.get("machine") ?? 0;
  return ({ what, type }) => {
    const key = `${what} ${type}`;
    return Math.max(machines, (count.get(key) ?? 0) / (inOne.get(key) ?? 1));
  };
}

/** Where subjects of a suspect stand: in a harness, on a board, in a mechanism, else in the machine itself. */
function placesOf(machine: Machine): (subjects: readonly string[]) => Place {
  const harnessOf = new Map(machine.ends.map(({ point, harness }) => [point, harness]));
  const itemOf = new Map(machine.elements.map(({ id, itemId }) => [id, itemId]));
  return ([subject = ""]) => {
    // A wire is named by its net, harness and ends.
    const harness = harnessOf.get(subject) ?? subject.split("|")[1];
    if (harness !== undefined) return { what: "harness", type: harness };
    const item = machine.items.get(itemOf.get(subject) ?? subject);
    const owner = machine.items.get(item?.parentId ?? item?.id ?? "");
    if (owner?.kind === "board" || owner?.kind === "mechanism")
      return { what: owner.kind, type: owner.type.id };
    return { what: "machine", type: "" };
  };
}
