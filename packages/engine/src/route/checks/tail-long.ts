import { makeFinding } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/** `tail-long`: a tail that a person pinned is longer than the shop's longest. */
export const tailLong: RouteRule = ({ machine, harnesses }) => {
  const longestMm = machine.shop.numbers.tail_max_mm;
  return harnesses.flatMap(({ route }) =>
    route.branches
      .filter((b) => b.kind === "tail" && b.routeMm > longestMm)
      .map((b) =>
        makeFinding("tail-long", "warning", [b.id.slice("tail:".length), route.harnessId], {
          tail_mm: b.routeMm,
          tail_max_mm: longestMm,
        }),
      ),
  );
};
