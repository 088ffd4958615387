import { type FaultModel, type Look, LookTable, type Suspect } from "../faults/index.ts";
import type { SessionLook } from "./session.ts";

/** Chance that whoever looks at what moves, or at a fuse, sees what is wrong with it (common practice, no source). */
const INSPECT_SEES = 0.8;
/** Chance that something is found wrong that is not (common practice, no source). */
const INSPECT_ERRS = 0.05;
/** Chance that a part that is measured by itself reads what is not so (common practice, no source). */
const PART_MISREAD = 0.03;

/** No suspect: what a sound machine says. */
const SOUND: Suspect = {
  id: "",
  kind: "wire-open",
  fault: { kind: "open", joint: -1 },
  subjects: [],
  odds: 1,
};

/** What suspects would make each look say; worked out once for each suspect that is ever asked about. */
export class Says {
  readonly #model: FaultModel;
  readonly #suspects: readonly Suspect[];
  readonly #tables = new Map<number, LookTable>();
  readonly #functionOf: ReadonlyMap<string, number>;
  readonly #sourceOf: ReadonlyMap<string, number>;

  constructor(model: FaultModel, suspects: readonly Suspect[]) {
    this.#model = model;
    this.#suspects = suspects;
    this.#functionOf = new Map(model.functions.map(({ id }, f) => [id, f]));
    this.#sourceOf = new Map(model.network.sources.map(({ id }, s) => [id, s]));
  }

  /** Chance that a look says yes when all of these suspects are the cause at once; null: there is no such look here. */
  chance(look: SessionLook, suspects: readonly number[]): number | null {
    const sound = this.#one(look, -1);
    if (sound === null) return null;
    // Two faults: what either changes is changed.
    let changed = sound;
    for (const s of suspects) {
      const one = this.#one(look, s) ?? sound;
      if (Math.abs(one - sound) > Math.abs(changed - sound)) changed = one;
    }
    return changed;
  }

  /** Whether the volts of a source are at a node of a sound machine. */
  isLive(node: number, source: number): boolean {
    return this.#table(-1).chance({ kind: "volts", node, source }, 0) > 0.5;
  }

  /** @param s index of the suspect; -1: none */
  #one(look: SessionLook, s: number): number | null {
    if (look.kind === "inspect") return this.#inspected(look.id, s);
    if (look.kind === "part") return this.#partReads(look.id, s);
    const known = this.#look(look);
    return known === null ? null : this.#table(s).chance(known, 0);
  }

  #inspected(id: string, s: number): number | null {
    const joint = this.#model.network.jointOf.get(id);
    if (joint === undefined) return null;
    const suspect = this.#suspects[s];
    const isSeen =
      (suspect?.fault.kind === "mechanical" && suspect.fault.joint === joint) ||
      (suspect?.kind === "fuse-open" && suspect.fault.kind === "open" && suspect.fault.joint === joint);
    return isSeen ? 1 - INSPECT_SEES : 1 - INSPECT_ERRS;
  }

  /** A part reads wrong when it is open or shorted itself, when a contact of it does not move, when its ends touch. */
  #partReads(id: string, s: number): number | null {
    const { network } = this.#model;
    const joint = network.jointOf.get(id);
    const own = joint === undefined ? undefined : network.joints[joint];
    if (joint === undefined || own === undefined) return null;
    const suspect = this.#suspects[s];
    const fault = suspect?.fault;
    const isOwn = (fault?.kind === "open" || fault?.kind === "closed") && fault.joint === joint;
    const isStuck =
      fault?.kind === "mechanical" && fault.joint === joint && own.element?.row.kind === "contact";
    const other = fault?.kind === "closed" ? network.joints[fault.joint] : undefined;
    const isBridged =
      other !== undefined &&
      ((other.a === own.a && other.b === own.b) || (other.a === own.b && other.b === own.a));
    return isOwn || isStuck || isBridged ? PART_MISREAD : 1 - PART_MISREAD;
  }

  #look(look: Exclude<SessionLook, { kind: "inspect" | "part" }>): Look | null {
    const node = (name: string): number => this.#model.network.nodeOf.get(name) ?? -1;
    switch (look.kind) {
      case "try": {
        const f = this.#functionOf.get(look.id);
        return f === undefined ? null : { kind: "try", f };
      }
      case "reseat":
        return { kind: "reseat", landingId: look.id };
      case "ohms": {
        const [a, b] = [node(look.a), node(look.b)];
        return a < 0 || b < 0 ? null : { kind: "ohms", a, b };
      }
      case "volts": {
        const source = this.#sourceOf.get(look.source);
        return source === undefined || node(look.node) < 0
          ? null
          : { kind: "volts", node: node(look.node), source };
      }
    }
  }

  #table(s: number): LookTable {
    const known = this.#tables.get(s);
    if (known !== undefined) return known;
    const made = new LookTable(this.#model, [this.#suspects[s] ?? SOUND]);
    this.#tables.set(s, made);
    return made;
  }
}
