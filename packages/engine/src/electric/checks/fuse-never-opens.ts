import { type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";
import { subjectsOf } from "./fuse-small.ts";

/**
 * `fuse-never-opens`: the supply's limit is too low, or its burst too short, to open a fuse in a short circuit. The
 * circuit is not told apart from the others: the whole supply goes down. Of a resettable fuse that is its nature where
 * the supply hiccups, so that it is only a note.
 */
export function fuseNeverOpens({ ratings, machine }: ElectricFacts): readonly Finding[] {
  const supplies = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  return [...ratings.fuses.values()].flatMap((fuse) => {
    const { far } = fuse;
    if (far === null || Number.isFinite(far.opensS)) return [];
    const supply = supplies.get(far.supplyId);
    const numbers = {
      rated_a: fuse.ratedA,
      speed: fuse.speed,
      mode: supply?.limit_mode ?? "constant",
      held_a: rounded(far.heldA),
      held_multiple: rounded(far.heldA / fuse.ratedA),
      burst_ms: supply?.burst_ms ?? 0,
      stored_a2s: rounded(far.storedA2s),
      melting_a2s: fuse.meltingA2s === null ? "-" : rounded(fuse.meltingA2s),
      loop_ohm: rounded(far.loopOhm),
    };
    const severity = fuse.fuseId === null ? "note" : "warning";
    return [makeFinding("fuse-never-opens", severity, [...subjectsOf(fuse), far.supplyId], numbers)];
  });
}
