import type { FaultModel, FaultTable, Suspect } from "../faults/index.ts";
import { landingOfPoint } from "./landing-of-point.ts";
import { Meter } from "./meter.ts";
import type { SessionLook } from "./session.ts";

/** Chance that a reading or a look tells what is not so (common practice, no source). */
export const MISREAD = 0.02;
/** Chance that reseating a plug brings back a contact of it that is out (common practice, no source). */
const RESEAT_HELPS = 0.6;
/** Chance that whoever looks at what moves, or at a fuse, sees what is wrong with it (common practice, no source). */
const INSPECT_SEES = 0.8;
/** Chance that something is found wrong that is not (common practice, no source). */
const INSPECT_ERRS = 0.05;
/** Chance that a part that is measured by itself reads what is not so (common practice, no source). */
const PART_MISREAD = 0.03;

const sure = (says: boolean): number => (says ? 1 - MISREAD : MISREAD);

/** What suspects would make each look say. */
export class Says {
  readonly meter: Meter;
  readonly #model: FaultModel;
  readonly #table: FaultTable;
  /** Class of each suspect that shows. */
  readonly #classOf: ReadonlyMap<number, number>;
  readonly #functionOf: ReadonlyMap<string, number>;
  readonly #sourceOf: ReadonlyMap<string, number>;

  constructor(model: FaultModel, table: FaultTable) {
    this.#model = model;
    this.#table = table;
    this.meter = new Meter(model, table.suspects);
    this.#classOf = new Map(table.classes.flatMap((one, c) => one.suspects.map((s) => [s, c] as const)));
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

  /** @param s index of the suspect; -1: none */
  #one(look: SessionLook, s: number): number | null {
    const node = (name: string): number => this.#model.network.nodeOf.get(name) ?? -1;
    const suspect = this.#table.suspects[s];
    switch (look.kind) {
      case "try": {
        const f = this.#functionOf.get(look.id);
        const symptoms = this.#table.classes[this.#classOf.get(s) ?? -1]?.symptoms;
        return f === undefined ? null : sure(symptoms?.has(f) !== true);
      }
      case "inspect":
        return this.#inspected(look.id, suspect);
      case "reseat": {
        const out = suspect?.kind === "contact-open" ? landingOfPoint(suspect.subjects[0] ?? "") : "";
        return look.ids.includes(out) ? RESEAT_HELPS : MISREAD;
      }
      case "part":
        return this.#partReads(look.id, suspect);
      case "ohms": {
        const [a, b] = [node(look.a), node(look.b)];
        if (a < 0 || b < 0) return null;
        const sets = this.meter.joined(s);
        return sure(sets[a] === sets[b]);
      }
      case "volts": {
        const source = this.#sourceOf.get(look.source);
        if (source === undefined || node(look.node) < 0) return null;
        return sure(this.meter.isLive(s, node(look.node), source));
      }
    }
  }

  #inspected(id: string, suspect: Suspect | undefined): number | null {
    const joint = this.#model.network.jointOf.get(id);
    if (joint === undefined) return null;
    const isSeen =
      (suspect?.fault.kind === "mechanical" && suspect.fault.joint === joint) ||
      (suspect?.kind === "fuse-open" && suspect.fault.kind === "open" && suspect.fault.joint === joint);
    return isSeen ? 1 - INSPECT_SEES : 1 - INSPECT_ERRS;
  }

  /** A part reads wrong when it is open or shorted itself, when a contact of it does not move, when its ends touch. */
  #partReads(id: string, suspect: Suspect | undefined): number | null {
    const { network } = this.#model;
    const joint = network.jointOf.get(id);
    const own = joint === undefined ? undefined : network.joints[joint];
    if (joint === undefined || own === undefined) return null;
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
}
