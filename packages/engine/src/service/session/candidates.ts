import { compareText } from "@pinwright/kernel";
import type { FaultModel, Suspect } from "../faults/index.ts";
import type { Hypothesis } from "./hypotheses.ts";
import { landingOfPoint } from "./landing-of-point.ts";
import { lookKey, type SessionLook } from "./session.ts";

/** Nodes between which is measured. */
const MOST_NODES = 32;
/** Functions that somebody is asked to try. */
const MOST_TRIED = 40;
/** Plugs that are reseated in one go (common practice, no source). */
const MOST_PLUGS = 4;
/** Above this a supply is not measured by an owner: the limit of extra-low direct voltage in dry places of IEC 61140, from memory. */
const MOST_MEASURED_V = 60;

/** Elements that can be measured by themselves. */
const PARTS: ReadonlySet<string> = new Set(["coil", "motor", "speaker", "led", "contact", "diode"]);

/** What looks are made of. */
export interface LookSubjects {
  readonly model: FaultModel;
  readonly suspects: readonly Suspect[];
  /** What is in question, the likeliest first. */
  readonly asked: readonly Hypothesis[];
  /** Functions that one of the causes would break and that nobody has looked at. */
  readonly untried: readonly number[];
  readonly dead: readonly number[];
  /** Plugs that were reseated in vain. */
  readonly reseated: ReadonlySet<string>;
  readonly mains: ReadonlySet<number>;
  readonly voltsOf: (source: number) => number;
  readonly isLive: (node: number, source: number) => boolean;
}

/**
 * Looks that could tell suspects apart, each once, in code-point order of their keys; ohms are measured between any two of
 * the nodes. Nothing is measured at the mains, and no volts above extra-low ones: that is for a licensed electrician.
 */
export function candidateLooks(subjects: LookSubjects): {
  readonly looks: readonly SessionLook[];
  readonly nodes: readonly number[];
} {
  const { model, untried } = subjects;
  const { joints } = model.network;
  const looks = new Map<string, SessionLook>();
  const add = (look: SessionLook): void => void looks.set(lookKey(look), look);
  for (const f of untried.slice(0, MOST_TRIED)) {
    const one = model.functions[f];
    if (one !== undefined) add({ kind: "try", id: one.id });
  }
  for (const { fault, kind } of suspectsIn(subjects)) {
    if (fault.kind === "mechanical") add({ kind: "inspect", id: joints[fault.joint]?.id ?? "" });
    if (fault.kind === "mechanical" || fault.kind === "open" || fault.kind === "closed") {
      const joint = joints[fault.joint];
      if (joint === undefined || isMains(subjects, joint.a, joint.b)) continue;
      if (kind === "fuse-open") add({ kind: "inspect", id: joint.id });
      if (PARTS.has(joint.element?.row.kind ?? "")) add({ kind: "part", id: joint.id });
    }
  }
  for (const look of reseats(subjects)) add(look);
  const nodes = measured(subjects);
  for (const look of volts(subjects, nodes)) add(look);
  return { looks: [...looks.values()].sort((p, q) => compareText(lookKey(p), lookKey(q))), nodes };
}

/** Suspects of what is in question, each once, the likeliest first. */
function suspectsIn({ suspects, asked }: LookSubjects): readonly Suspect[] {
  return [...new Set(asked.flatMap((one) => one.suspects))].flatMap((s) => suspects[s] ?? []);
}

function isMains({ mains }: LookSubjects, ...nodes: readonly number[]): boolean {
  return nodes.some((node) => mains.has(node));
}

/** Plugs whose contacts are in question, each by itself, and the likeliest together in one go. */
function reseats(subjects: LookSubjects): readonly SessionLook[] {
  const { model, suspects, asked, reseated } = subjects;
  const weights = new Map<string, number>();
  for (const { suspects: own, weight } of asked)
    for (const s of own) {
      const fault = suspects[s]?.fault;
      const joint = fault?.kind === "open" ? model.network.joints[fault.joint] : undefined;
      if (joint?.kind !== "contact" || isMains(subjects, joint.a, joint.b)) continue;
      const landing = landingOfPoint(joint.id);
      if (!reseated.has(landing)) weights.set(landing, (weights.get(landing) ?? 0) + weight);
    }
  const plugs = [...weights].sort((p, q) => q[1] - p[1] || compareText(p[0], q[0])).map(([id]) => id);
  const together = plugs
    .slice(1, MOST_PLUGS)
    .map((_, n): SessionLook => ({ kind: "reseat", ids: plugs.slice(0, n + 2) }));
  return [...plugs.map((id): SessionLook => ({ kind: "reseat", ids: [id] })), ...together];
}

/** Nodes at the ends of what does not work and of what is suspected, in rising order. */
function measured(subjects: LookSubjects): readonly number[] {
  const { model, dead } = subjects;
  const { joints, sources } = model.network;
  const found = new Set<number>();
  const take = (...some: readonly number[]): void => {
    for (const node of some)
      if (found.size < MOST_NODES && node >= 0 && !isMains(subjects, node)) found.add(node);
  };
  for (const f of dead.slice(0, 3)) {
    const joint = joints[model.functions[f]?.joint ?? -1];
    if (joint !== undefined) take(joint.a, joint.b);
  }
  for (const { fault } of suspectsIn(subjects)) {
    if (fault.kind === "open" || fault.kind === "closed") {
      const joint = joints[fault.joint];
      if (joint !== undefined) take(joint.a, joint.b);
    } else if (fault.kind === "short") take(fault.a, fault.b);
    else if (fault.kind === "swapped")
      for (const n of [fault.a, fault.b]) take(joints[n]?.a ?? -1, joints[n]?.b ?? -1);
    else if (fault.kind === "dead")
      for (const { itemId, plus, minus } of sources) if (itemId === fault.itemId) take(plus, minus);
  }
  return [...found].sort((p, q) => p - q);
}

function volts(subjects: LookSubjects, nodes: readonly number[]): readonly SessionLook[] {
  const { model } = subjects;
  return model.network.sources.flatMap(({ id }, source) =>
    subjects.voltsOf(source) > MOST_MEASURED_V
      ? []
      : nodes.flatMap((node): readonly SessionLook[] =>
          subjects.isLive(node, source)
            ? [{ kind: "volts", node: model.network.nodes[node] ?? "", source: id }]
            : [],
        ),
  );
}
