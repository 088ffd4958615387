import type { Carried, ContactRating, LineResult, SizedWire, WireRating } from "@pinwright/engine";
import { type Electric, electricOf } from "../electric/of-line.ts";
import { netOfPoint } from "../wires/housing.ts";
import { type Both, bothOf, findWire, gaugeOf, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** A wire or contact with what it carries, and how near that is to its limit. */
export interface Conductor {
  readonly kind: "wire" | "contact";
  readonly id: string;
  /** `4-6` of a wire; of a contact its point. */
  readonly printed: string;
  /** Gauge, or what its contacts are called. */
  readonly what: Both;
  readonly netId: string | null;
  readonly harness: { readonly id: string; readonly number: number; readonly label: Both } | null;
  readonly carried: Carried;
  /** How its limit is made up; null where nothing is known of it. */
  readonly wire: WireRating | null;
  readonly contact: ContactRating | null;
  /** Part of its limit that it uses all the time, 1 at the limit; null where no limit is known. */
  readonly share: number | null;
}

/** Which wires and contacts: all, those of a net, of an item, or a wire with its ends. */
export interface ConductorsOf {
  readonly of: "all" | "net" | "item" | "wire";
  readonly id: string;
}

type In = LineResult["harnesses"] extends ReadonlyMap<string, infer H> ? H : never;

function wireConductor({ solution, ratings }: Electric, harness: In, wire: SizedWire): readonly Conductor[] {
  const carried = solution.wires.get(wire.id);
  if (carried === undefined) return [];
  const rating = ratings.wires.get(wire.id) ?? null;
  const gauge = gaugeOf(wire.wireType);
  return [
    {
      kind: "wire",
      id: wire.id,
      printed: printedNo(harness, wire),
      what: { en: gauge, zh: gauge },
      netId: wire.netId,
      harness: { id: harness.harness.id, number: harness.harness.number, label: harness.labels },
      carried,
      wire: rating,
      contact: null,
      share: rating?.share ?? null,
    },
  ];
}

function contactConductor(
  line: LineResult,
  { solution, ratings }: Electric,
  pointId: string,
): readonly Conductor[] {
  const carried = solution.contacts.get(pointId);
  const point = line.machine.points.get(pointId);
  if (carried === undefined || point === undefined) return [];
  const rating = ratings.contacts.get(pointId) ?? null;
  return [
    {
      kind: "contact",
      id: pointId,
      printed: pointId,
      what: bothOf(point.family),
      netId: netOfPoint(line, pointId),
      harness: null,
      carried,
      wire: null,
      contact: rating,
      share: rating?.share ?? 0,
    },
  ];
}

function* conductorsOf(line: LineResult, { of, id }: ConductorsOf): Generator<Conductor> {
  const electric = electricOf(line);
  const one = of === "wire" ? (findWire(line, id)?.wire ?? null) : null;
  for (const harness of line.harnesses.values())
    for (const wire of harness.wires)
      if (of === "all" || wire === one || (of === "net" && wire.netId === id))
        yield* wireConductor(electric, harness, wire);
  for (const pointId of electric.solution.contacts.keys()) {
    const point = line.machine.points.get(pointId);
    const isAsked =
      of === "all" ||
      (of === "net" && netOfPoint(line, pointId) === id) ||
      (one !== null && (one.a === pointId || one.b === pointId)) ||
      (of === "item" &&
        point !== undefined &&
        (point.itemId === id || line.machine.items.get(point.itemId)?.parentId === id));
    if (isAsked) yield* contactConductor(line, electric, pointId);
  }
}

/** Wires and contacts by their ids; those that use most of their limit first. */
export const electricConductors = view<ConductorsOf, Conductor>({
  uses: ({ line }) => [electricOf(line), line.machine.nets],
  entries: ({ line }, asked) =>
    new Map(
      [...conductorsOf(line, asked)]
        .sort((a, b) => (b.share ?? 0) - (a.share ?? 0) || b.carried.rmsA.most - a.carried.rmsA.most)
        .map((one) => [one.id, one] as const),
    ),
  restsInPreview: true,
});
