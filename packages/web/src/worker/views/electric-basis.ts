import type {
  Carried,
  CoilRating,
  ContactRating,
  ElectricRatings,
  FuseRating,
  LampRating,
  LineResult,
  NetDrop,
  SupplyRating,
  WireRating,
} from "@pinwright/engine";
import { computedFrom } from "../electric/computed.ts";
import { elementOf } from "../electric/naming.ts";
import { electricOf } from "../electric/of-line.ts";
import { findWire, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** What an electrical finding about something was computed from. */
type Basis =
  | { readonly kind: "wire"; readonly rating: WireRating; readonly carried: Carried }
  | { readonly kind: "contact"; readonly rating: ContactRating; readonly carried: Carried }
  | { readonly kind: "fuse"; readonly rating: FuseRating }
  | { readonly kind: "coil"; readonly rating: CoilRating }
  | { readonly kind: "lamp"; readonly rating: LampRating }
  | { readonly kind: "supply"; readonly rating: SupplyRating }
  | {
      readonly kind: "net";
      readonly rating: NetDrop;
      /** Printed numbers of its wires by their ids. */
      readonly printed: ReadonlyMap<string, string>;
    };

/** A basis with the name of what it is about. */
export type NamedBasis = Basis & { readonly name: string };

function* basesOf(line: LineResult, id: string): Generator<NamedBasis> {
  const { solution, ratings } = electricOf(line);
  const wire = findWire(line, id);
  if (wire !== null) {
    const [rating, carried] = [ratings.wires.get(wire.wire.id), solution.wires.get(wire.wire.id)];
    const name = printedNo(wire.harness, wire.wire);
    if (rating !== undefined && carried !== undefined) yield { kind: "wire", rating, carried, name };
    return;
  }
  const [contact, carried] = [ratings.contacts.get(id), solution.contacts.get(id)];
  if (contact !== undefined && carried !== undefined)
    yield { kind: "contact", rating: contact, carried, name: id };
  yield* elementBases(line, ratings, id);
  const supply = ratings.supplies.get(id);
  if (supply !== undefined) yield { kind: "supply", rating: supply, name: id };
  const drop = ratings.drops.get(id);
  if (drop !== undefined)
    yield {
      kind: "net",
      rating: drop,
      printed: new Map(
        drop.sections.map(({ wireId }) => {
          const found = findWire(line, wireId);
          return [wireId, found === null ? wireId : printedNo(found.harness, found.wire)];
        }),
      ),
      name: id,
    };
}

/** By element, by item, and for a fuse by its row. */
function* elementBases(line: LineResult, ratings: ElectricRatings, id: string): Generator<NamedBasis> {
  const isAbout = (elementId: string): boolean =>
    elementId === id || elementOf(line, elementId)?.itemId === id;
  for (const rating of ratings.fuses.values())
    if (rating.elementId === id || rating.fuseId === id)
      yield { kind: "fuse", rating, name: rating.fuseId ?? rating.elementId };
  for (const rating of ratings.coils.values())
    if (isAbout(rating.elementId)) yield { kind: "coil", rating, name: rating.elementId };
  for (const rating of ratings.lamps.values())
    if (isAbout(rating.elementId)) yield { kind: "lamp", rating, name: rating.elementId };
}

/** Subjects of a finding whose computation is shown; a finding may name hundreds. */
const MOST_SUBJECTS = 12;

/** What a finding was computed from; nothing where its rule is not electrical. */
export const electricBasis = view<
  { readonly rule: string; readonly subjects: readonly string[] },
  NamedBasis
>({
  uses: ({ line }) => [line.electric, line.machine, ...line.harnesses.values()],
  entries: ({ line }, { rule, subjects }) => {
    const kinds = computedFrom(rule);
    const bases = subjects
      .slice(0, MOST_SUBJECTS)
      .flatMap((id) => [...basesOf(line, id)])
      .filter((basis) => kinds.includes(basis.kind));
    return new Map(bases.map((basis) => [`${basis.kind} ${basis.name}`, basis]));
  },
  restsInPreview: true,
});
