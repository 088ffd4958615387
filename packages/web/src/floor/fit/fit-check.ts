import type { Block, KeptUnit } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import type { Place } from "../tasks/tasks.ts";

/** Something to look at before a unit is fitted. It warns and never refuses: what is fitted is a fact. */
export type FitWarning =
  | { readonly kind: "elsewhere"; readonly into: string; readonly place: string }
  | { readonly kind: "type"; readonly has: string; readonly wants: string }
  | { readonly kind: "revision"; readonly has: string; readonly wants: string }
  | { readonly kind: "defects"; readonly whats: readonly string[] }
  | { readonly kind: "failed" | "untested" | "steps"; readonly count: number }
  | { readonly kind: "recalled" }
  /** The server does not answer: what only it knows is not known. */
  | { readonly kind: "unknown" };

/** A revision that was released, and not only the book as it was at some change. */
const isReleased = (revision: string): boolean => revision !== "" && !revision.startsWith("@");

/** What is known of a unit that is about to be fitted, and of the place. */
export interface FitCase {
  readonly unit: Pick<KeptUnit, "unit" | "what" | "type" | "revision">;
  readonly state: UnitState | undefined;
  /** Null: none of the places takes its kind. */
  readonly place: Pick<Place, "what" | "type"> | null;
  readonly machine: string;
  readonly machineRevision: string;
  /** What keeps the unit from being released; those of its own that nobody lifted count. */
  readonly blocks: readonly Block[];
  /** Whether the blocks are the server's, which knows of recalls. */
  readonly isServers: boolean;
}

/** Everything that speaks against fitting a unit, the gravest first. */
export function fitWarnings(given: FitCase): readonly FitWarning[] {
  const { unit, state, place, machine, machineRevision, isServers } = given;
  const blocks = given.blocks.filter((block) => block.unit === unit.unit && !block.lifted);
  const of = (gate: Block["gate"], ...whys: readonly Block["why"][]): number =>
    blocks.filter((block) => block.gate === gate && (whys.length === 0 || whys.includes(block.why))).length;
  const elsewhere = state?.within.find(({ until }) => until === null);
  const defects = [...(state?.defects.values() ?? [])].filter(({ mended }) => mended === null);
  const [failed, untested, steps] = [of("test", "failed"), of("test", "missing", "not-retested"), of("step")];
  return [
    ...(of("recall") > 0 ? [{ kind: "recalled" } as const] : []),
    ...(place !== null && (place.type !== unit.type || place.what !== unit.what)
      ? [{ kind: "type", has: unit.type, wants: place.type } as const]
      : []),
    ...(defects.length > 0 ? [{ kind: "defects", whats: defects.map(({ what }) => what) } as const] : []),
    ...(failed > 0 ? [{ kind: "failed", count: failed } as const] : []),
    ...(elsewhere !== undefined && elsewhere.unit !== machine
      ? [{ kind: "elsewhere", into: elsewhere.unit, place: elsewhere.place } as const]
      : []),
    // Every change of a book makes another number; only releases are told apart on purpose.
    ...((isReleased(unit.revision) || isReleased(machineRevision)) && unit.revision !== machineRevision
      ? [{ kind: "revision", has: unit.revision, wants: machineRevision } as const]
      : []),
    ...(untested > 0 ? [{ kind: "untested", count: untested } as const] : []),
    ...(steps > 0 ? [{ kind: "steps", count: steps } as const] : []),
    ...(isServers ? [] : [{ kind: "unknown" } as const]),
  ];
}

/** Whether a warning alone makes the builder stop: that the server is away alone does not. */
export const stops = (warnings: readonly FitWarning[]): boolean =>
  warnings.some(({ kind }) => kind !== "unknown");
