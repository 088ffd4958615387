import { makeFinding } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/** `landing-unreached`: no waypoint is near enough to a landing, or no lane joins it to the rest of its harness. */
export const landingUnreached: RouteRule = ({ machine, harnesses }) =>
  harnesses.flatMap(({ route, wires }) =>
    route.unreached.map((landingId) =>
      makeFinding("landing-unreached", "error", [landingId, route.harnessId], {
        tail_max_mm: machine.shop.numbers.tail_max_mm,
        wires_missing: wires.wires.filter((w) =>
          [w.a, w.b].some((end) => machine.points.get(end)?.landingId === landingId),
        ).length,
      }),
    ),
  );
