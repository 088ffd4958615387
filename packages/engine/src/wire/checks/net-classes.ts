import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding, type NetClass } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** Classes whose currents disturb, and classes that are disturbed. */
const LOUD: readonly string[] = ["mains", "coil", "motor"];
const QUIET: readonly string[] = ["logic", "data", "audio", "sensor"];

const CLASS_OF_ELEMENT: Partial<Record<BookRow<"elements">["kind"], NetClass>> = {
  coil: "coil",
  motor: "motor",
  speaker: "audio",
};

/**
 * `net-classes-mixed`: one net joins contacts meant for coils, motors or mains with contacts meant for logic, data,
 * sensors or audio, so that their returns share a wire. What a contact is meant for is said by its pin, else by
 * the coil, motor or speaker behind it. `pin-class`: a contact is meant for another class than that of its net.
 */
export function netClasses({ machine, index }: WireFacts): readonly Finding[] {
  const meant = new Map<string, string>();
  for (const element of machine.elements) {
    const kind = CLASS_OF_ELEMENT[element.row.kind];
    if (kind === undefined) continue;
    meant.set(element.fromPointId, kind);
    meant.set(element.toPointId, kind);
  }
  const pinClass = new Map(
    machine.book.tables.pins.filter((p) => p.class !== "").map((p) => [`${p.connector}|${p.pin}`, p.class]),
  );
  const found: Finding[] = [];
  for (const [netId, ends] of index.endsByNet) {
    const netClass = machine.nets.get(netId)?.class ?? "";
    const points = new Map<string, string>();
    for (const pointId of [...new Set(ends.map((end) => end.point))].sort(compareText)) {
      const point = machine.points.get(pointId);
      const connector =
        point === undefined ? null : (machine.landings.get(point.landingId)?.connector ?? null);
      const said = connector === null ? undefined : pinClass.get(`${connector.id}|${point?.pin}`);
      if (said !== undefined && said !== netClass) {
        found.push(
          makeFinding("pin-class", "warning", [pointId, netId], { pin_class: said, net_class: netClass }),
        );
      }
      const wanted = said ?? meant.get(pointId);
      if (wanted !== undefined && !points.has(wanted)) points.set(wanted, pointId);
    }
    const loud = LOUD.filter((c) => points.has(c));
    const quiet = QUIET.filter((c) => points.has(c));
    if (loud.length === 0 || quiet.length === 0) continue;
    const named = [...loud, ...quiet].map((c) => points.get(c) ?? "");
    found.push(
      makeFinding("net-classes-mixed", "error", [netId, ...named], {
        loud: loud.join(" "),
        quiet: quiet.join(" "),
      }),
    );
  }
  return found;
}
