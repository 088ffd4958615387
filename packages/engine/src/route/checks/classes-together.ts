import { NET_CLASSES } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { mustBeApart } from "../apart.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `mains-together`: mains lies in one lane or crossing with something else than its earth. `classes-together`: coil
 * or motor wires lie beside audio or sensor wires. Within one harness and between harnesses alike.
 */
export const classesTogether: RouteRule = ({ graph, wiresIn }) =>
  graph.lanes.flatMap((lane): readonly Finding[] => {
    const wires = wiresIn.get(lane.id) ?? [];
    const present = NET_CLASSES.filter((c) => wires.some((w) => w.netClass === c));
    return present.flatMap((a, i) =>
      present.slice(i + 1).flatMap((b) => {
        if (!mustBeApart(a, b)) return [];
        const concerned = wires.filter((w) => w.netClass === a || w.netClass === b);
        const harnessIds = [...new Set(concerned.map((w) => w.harnessId))].sort(compareText);
        const mains = a === "mains" || b === "mains";
        return [
          makeFinding(
            mains ? "mains-together" : "classes-together",
            mains ? "error" : "warning",
            [lane.id, ...harnessIds],
            {
              class: a,
              other_class: b,
              length_mm: lane.lengthMm,
            },
          ),
        ];
      }),
    );
  });
