import { type Finding, type HarnessRoute, type Machine, makeFinding } from "../../model/index.ts";

/** `tail-long`: a tail that a person pinned is longer than the shop's longest. */
export function tailLong({ shop }: Pick<Machine, "shop">, route: HarnessRoute): readonly Finding[] {
  const longestMm = shop.numbers.tail_max_mm;
  return route.branches
    .filter((b) => b.kind === "tail" && b.routeMm > longestMm)
    .map((b) =>
      makeFinding("tail-long", "warning", [b.id.slice("tail:".length), route.harnessId], {
        tail_mm: b.routeMm,
        tail_max_mm: longestMm,
      }),
    );
}
