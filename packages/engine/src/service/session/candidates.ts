import { compareText } from "@pinwright/kernel";
import type { FaultModel, Suspect } from "../faults/index.ts";
import { lookKey, type SessionLook } from "./session.ts";

/** Nodes between which is measured. */
const MOST_NODES = 24;
/** Functions that somebody is asked to try. */
const MOST_TRIED = 40;
/** Above this a supply is not measured by an owner: the limit of extra-low direct voltage in dry places of IEC 61140, from memory. */
const MOST_MEASURED_V = 60;

/** Elements that can be measured by themselves. */
const PARTS: ReadonlySet<string> = new Set(["coil", "motor", "speaker", "led", "contact", "diode"]);

/** What looks are made of. */
export interface LookSubjects {
  readonly model: FaultModel;
  /** Suspects that are in question, the likeliest first. */
  readonly suspects: readonly Suspect[];
  /** Functions that one of the causes would break and that nobody has looked at. */
  readonly untried: readonly number[];
  readonly dead: readonly number[];
  readonly mains: ReadonlySet<number>;
  readonly voltsOf: (source: number) => number;
  readonly isLive: (node: number, source: number) => boolean;
}

/**
 * Looks that could tell suspects apart, each once, in code-point order of their keys. Nothing is measured at the mains, and
 * no volts above extra-low ones: that is for a licensed electrician.
 */
export function candidateLooks(subjects: LookSubjects): readonly SessionLook[] {
  const { model, suspects, untried } = subjects;
  const { joints } = model.network;
  const looks = new Map<string, SessionLook>();
  const add = (look: SessionLook): void => void looks.set(lookKey(look), look);
  for (const f of untried.slice(0, MOST_TRIED)) {
    const one = model.functions[f];
    if (one !== undefined) add({ kind: "try", id: one.id });
  }
  for (const { fault, kind } of suspects) {
    if (fault.kind === "mechanical") add({ kind: "inspect", id: joints[fault.joint]?.id ?? "" });
    if (fault.kind === "mechanical" || fault.kind === "open" || fault.kind === "closed") {
      const joint = joints[fault.joint];
      if (joint === undefined || isMains(subjects, joint.a, joint.b)) continue;
      if (kind === "fuse-open") add({ kind: "inspect", id: joint.id });
      if (joint.kind === "contact") add({ kind: "reseat", id: landingOf(joint.id) });
      if (PARTS.has(joint.element?.row.kind ?? "")) add({ kind: "part", id: joint.id });
    }
  }
  for (const look of measurements(subjects)) add(look);
  return [...looks.values()].sort((p, q) => compareText(lookKey(p), lookKey(q)));
}

function isMains({ mains }: LookSubjects, ...nodes: readonly number[]): boolean {
  return nodes.some((node) => mains.has(node));
}

/** Ohms between the ends of what is suspected and of what does not work, and volts there. */
function measurements(subjects: LookSubjects): readonly SessionLook[] {
  const { model, suspects, dead } = subjects;
  const { nodes, joints, sources } = model.network;
  const found = new Set<number>();
  const take = (...some: readonly number[]): void => {
    for (const node of some)
      if (found.size < MOST_NODES && node >= 0 && !isMains(subjects, node)) found.add(node);
  };
  for (const f of dead.slice(0, 3)) {
    const joint = joints[model.functions[f]?.joint ?? -1];
    if (joint !== undefined) take(joint.a, joint.b);
  }
  for (const { fault } of suspects) {
    if (fault.kind === "open" || fault.kind === "closed") {
      const joint = joints[fault.joint];
      if (joint !== undefined) take(joint.a, joint.b);
    } else if (fault.kind === "short") take(fault.a, fault.b);
    else if (fault.kind === "dead")
      for (const { itemId, plus, minus } of sources) if (itemId === fault.itemId) take(plus, minus);
  }
  const some = [...found].sort((p, q) => p - q);
  const name = (node: number): string => nodes[node] ?? "";
  const ohms = some.flatMap((a, i) =>
    some.slice(i + 1).map((b): SessionLook => ({ kind: "ohms", a: name(a), b: name(b) })),
  );
  const volts = sources.flatMap(({ id }, source) =>
    subjects.voltsOf(source) > MOST_MEASURED_V
      ? []
      : some.flatMap((node): readonly SessionLook[] =>
          subjects.isLive(node, source) ? [{ kind: "volts", node: name(node), source: id }] : [],
        ),
  );
  return [...ohms, ...volts];
}

/** Landing of a point: what stands before its last dot; of a terminal the item. */
function landingOf(pointId: string): string {
  const dot = pointId.lastIndexOf(".");
  const colon = pointId.lastIndexOf(":");
  return dot > colon ? pointId.slice(0, dot) : pointId;
}
