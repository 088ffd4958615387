import { type Finding, makeFinding } from "../../model/index.ts";
import { leastTypeId } from "../sizing/needs.ts";
import { type ElectricFacts, percent, rounded } from "./facts.ts";
import { subjectsOf } from "./fuse-small.ts";

/** `fuse-slow`: in a short circuit a wire's insulation is harmed before the fuse is open. */
export function fuseSlow({ ratings, machine, harnesses }: ElectricFacts): readonly Finding[] {
  return [...ratings.fuses.values()].flatMap((fuse) => {
    const weak = fuse.weakest;
    if (weak === null || weak.used < 1) return [];
    const { short } = weak;
    const numbers = {
      loop_ohm: rounded(short.loopOhm),
      first_a: rounded(short.firstA),
      stored_a2s: rounded(short.storedA2s),
      held_a: rounded(short.heldA),
      opens_s: Number.isFinite(short.opensS) ? rounded(short.opensS) : "∞",
      area_mm2: weak.areaMm2,
      k: rounded(weak.k),
      adiabatic_a2s: rounded(weak.adiabaticA2s),
      harm_s: Number.isFinite(weak.harmS) ? rounded(weak.harmS) : "∞",
      least_type: leastTypeId(machine, harnesses, ratings, weak.wireId),
      used_pct: Number.isFinite(weak.used) ? percent(weak.used) : "∞",
    };
    return [makeFinding("fuse-slow", "error", [...subjectsOf(fuse), weak.wireId], numbers)];
  });
}
