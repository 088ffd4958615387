import type { BookRow } from "@pinwright/book";
import type { ElectricRatings, HarnessResult, Machine, SizedWire } from "../../model/index.ts";
import { stockedTypes } from "../../wire/index.ts";
import { adiabaticK } from "../physics/adiabatic.ts";
import { ambientShare, singleWireA } from "../physics/wire-limit.ts";
import { fits } from "./help.ts";

type WireType = BookRow<"wire_types">;
type Harnesses = ReadonlyMap<string, Pick<HarnessResult, "wires">>;

/** What a wire has to be. */
interface WireNeed {
  readonly wire: SizedWire;
  /** Lasting limit in its bundle: its rms, and the rating of the fuse that it lies behind. */
  readonly limitA: number;
  /** k × area that the worst short circuit asks for, A√s. */
  readonly shortKS: number;
  /** Area that the drop of its net asks for, all wires of the net alike; endless where contacts alone lose too much. */
  readonly dropMm2: number;
  /** The least stocked type that meets all this and fits both contacts; null when none does. */
  readonly leastType: WireType | null;
  /** The thickest stocked type that fits both contacts. */
  readonly mostType: WireType | null;
}

/** The least stocked wire type for a wire that carries current, by limit, protection, drop and contacts. */
function wireNeed(machine: Machine, wire: SizedWire, ratings: ElectricRatings): WireNeed | null {
  const rating = ratings.wires.get(wire.id);
  if (rating === undefined) return null;
  const strain = ratings.strains.get(wire.id) ?? { fuseA: 0, shortUsed: 0 };
  const { area_mm2, insulation, temperature_c } = wire.wireType;
  const limitA = Math.max(rating.rmsA, strain.fuseA);
  const shortKS = adiabaticK(insulation, temperature_c) * area_mm2 * Math.sqrt(strain.shortUsed);
  const dropMm2 = dropArea(ratings, wire);
  const airC = machine.shop.numbers.ambient_c;
  const fitting = stockedTypes(machine).filter((type) => fits(machine, wire, type));
  const meets = (type: WireType): boolean =>
    singleWireA(type.area_mm2) * ambientShare(type.temperature_c, airC) * rating.bundleShare >= limitA &&
    adiabaticK(type.insulation, type.temperature_c) * type.area_mm2 >= shortKS &&
    type.area_mm2 >= dropMm2;
  return {
    wire,
    limitA,
    shortKS,
    dropMm2,
    leastType: fitting.find(meets) ?? null,
    mostType: fitting.at(-1) ?? null,
  };
}

/** Area with which a net's wires lose what its limit leaves beside its contacts. */
function dropArea(ratings: ElectricRatings, wire: SizedWire): number {
  const drop = ratings.drops.get(wire.netId);
  if (drop === undefined || drop.dropV <= drop.limitV) return 0;
  const wiresV = Math.min(
    drop.dropV,
    drop.sections.reduce((sum, section) => sum + section.dropV, 0),
  );
  const leftV = drop.limitV - (drop.dropV - wiresV);
  if (!drop.sections.some((section) => section.wireId === wire.id)) return 0;
  return leftV > 0 ? (wire.wireType.area_mm2 * wiresV) / leftV : Number.POSITIVE_INFINITY;
}

/** Whether nothing but the line decides a wire's type: neither its net, nor a choice, nor a cable. */
function isFree(machine: Machine, wire: SizedWire): boolean {
  const chosen = machine.choices.get("wire-type");
  return (
    machine.nets.get(wire.netId)?.wire_type == null &&
    wire.cableId === null &&
    chosen?.get(wire.id) === undefined &&
    chosen?.get(wire.netId) === undefined
  );
}

/**
 * Wires that are free to be sized and have to be thicker than they are, with the type to take: the least that they
 * need, or the thickest that fits where none does. Types only grow. A net that is sized as one takes the thickest of
 * its wires' types wherever its contacts take it.
 */
export function growTypes(
  machine: Machine,
  harnesses: Harnesses,
  ratings: ElectricRatings,
): ReadonlyMap<string, string> {
  const grown = new Map<string, WireType>();
  const free = [...harnesses.values()].flatMap(({ wires }) => wires.filter((wire) => isFree(machine, wire)));
  for (const wire of free) {
    const need = wireNeed(machine, wire, ratings);
    const wanted = need?.leastType ?? need?.mostType ?? null;
    if (wanted !== null && wanted.area_mm2 > wire.wireType.area_mm2) grown.set(wire.id, wanted);
  }
  const ofNet = new Map<string, WireType>();
  for (const wire of free) {
    const type = grown.get(wire.id);
    if (type === undefined || machine.nets.get(wire.netId)?.sized !== "net") continue;
    if (type.area_mm2 > (ofNet.get(wire.netId)?.area_mm2 ?? 0)) ofNet.set(wire.netId, type);
  }
  for (const wire of free) {
    const type = ofNet.get(wire.netId);
    if (type !== undefined && type.area_mm2 > wire.wireType.area_mm2 && fits(machine, wire, type))
      grown.set(wire.id, type);
  }
  return new Map([...grown].map(([wireId, type]) => [wireId, type.id]));
}

/** Id of the least stocked type that a wire needs, for the words of a finding; `-` where none does or it is not known. */
export function leastTypeId(
  machine: Machine,
  harnesses: Harnesses,
  ratings: ElectricRatings,
  wireId: string,
): string {
  const harnessId = wireId.split("|")[1] ?? "";
  const wire = harnesses.get(harnessId)?.wires.find(({ id }) => id === wireId);
  return (wire === undefined ? null : wireNeed(machine, wire, ratings))?.leastType?.id ?? "-";
}
