import { deepEqual, Query, sameMembers } from "@pinwright/kernel";
import type { DriverReach, FastenerItem, Finding, Machine } from "../../model/index.ts";
import { type Solids, solidIndexOf } from "../solids/solids-solver.ts";
import { type Area, Changes, changedAreas } from "./changes.ts";
import { comesOff, merged } from "./comes-off.ts";
import { findAccess } from "./findings.ts";
import { type LiesOver, overItem, shareLiesOver } from "./lies-over.ts";
import { axisBox, type Belonging, belongingOf, type Reach, type Reached, reachOf } from "./reach.ts";
import { ToolBox } from "./tools.ts";

export interface Access {
  readonly reaches: ReadonlyMap<string, DriverReach>;
  readonly findings: readonly Finding[];
}

const NONE: readonly string[] = [];

/**
 * What tool and hand reach, with a memory: after an edit only fasteners near what has changed are looked at again.
 * Panels that stand beside each other and in-line connectors, which hang aside, are in nobody's way.
 */
export class AccessSolver {
  readonly #reaches = new Query<ReadonlyMap<string, DriverReach>>(Object.is);
  readonly #findings = new Query<readonly Finding[]>(deepEqual);
  #machine: Machine | null = null;
  #solids: Solids = new Map();
  #box: ToolBox | null = null;
  #reached: ReadonlyMap<string, Reached> = new Map();
  #over: ReadonlyMap<string, readonly string[]> = new Map();
  #driverReaches: ReadonlyMap<string, DriverReach> = new Map();
  #computed = 0;

  solve(machine: Machine, solids: Solids): Access {
    const fasteners = [...machine.items.values()].filter((item) => item.kind === "fastener");
    const anew = this.#machine?.panels !== machine.panels || this.#machine.shop !== machine.shop;
    if (anew || this.#box === null) this.#box = new ToolBox(machine.shop);
    const areas = changedAreas(this.#solids, solids);
    const belongings = fasteners.map((fastener) => belongingOf(machine, fastener));
    areas.push(...this.#regrouped(fasteners, belongings));
    const changes = new Changes(areas, anew);
    this.#reached = this.#reach(machine, solids, fasteners, belongings, this.#box, changes);
    this.#over = this.#lyingOver(machine, solids, changes);
    this.#machine = machine;
    this.#solids = solids;
    const over = shareLiesOver(machine, solids, () => withSome(this.#over));
    const reaches = this.#driversOf(over);
    return {
      reaches,
      findings: this.#findings.ask("all", [{}], () =>
        findAccess(this.#reached, reaches, over, machine.shop.numbers.service_most_off),
      ),
    };
  }

  sweep(): void {
    this.#reaches.sweep();
    this.#findings.sweep();
  }

  /** How often a fastener was looked at so far, for tests of growth. */
  get computed(): number {
    return this.#computed;
  }

  /** Places of fasteners that belong to something else than before: their solids are the same, but not whose they are. */
  #regrouped(fasteners: readonly FastenerItem[], belongings: readonly Belonging[]): readonly Area[] {
    return fasteners.flatMap((fastener, i) => {
      const known = this.#reached.get(fastener.id);
      if (known === undefined || known.reach.unitId === belongings[i]?.unitId) return [];
      return [{ panelId: fastener.place.panelId, box: axisBox(fastener) }];
    });
  }

  #reach(
    machine: Machine,
    solids: Solids,
    fasteners: readonly FastenerItem[],
    belongings: readonly Belonging[],
    box: ToolBox,
    changes: Changes,
  ): ReadonlyMap<string, Reached> {
    const reached = new Map<string, Reached>();
    fasteners.forEach((fastener, i) => {
      const known = this.#reached.get(fastener.id);
      const stands =
        known !== undefined &&
        known.fastener === fastener &&
        known.reach.unitId === belongings[i]?.unitId &&
        known.reach.carriedId === belongings[i]?.carriedId &&
        !changes.touch(fastener.place.panelId, axisBox(fastener), known.farthestMm);
      if (stands) {
        reached.set(fastener.id, known);
        return;
      }
      this.#computed++;
      const { reach, farthestMm } = reachOf(machine, fastener, box, solidIndexOf(solids));
      const same = known?.fastener === fastener && deepEqual(known.reach, reach);
      reached.set(fastener.id, { fastener, reach: same ? known.reach : reach, farthestMm });
    });
    return reached;
  }

  /** By item, also those that nothing lies over. */
  #lyingOver(machine: Machine, solids: Solids, changes: Changes): ReadonlyMap<string, readonly string[]> {
    const over = new Map<string, readonly string[]>();
    for (const [id, own] of solids) {
      const known = this.#over.get(id);
      const stands =
        known !== undefined &&
        this.#solids.get(id) === own &&
        !own.some(({ panelId, box }) => changes.touch(panelId, box, 0));
      over.set(id, stands ? known : overItem(machine, id, solids));
    }
    return over;
  }

  #driversOf(over: LiesOver): ReadonlyMap<string, DriverReach> {
    const inWayOf = new Map<string, readonly string[]>();
    for (const { reach } of this.#reached.values()) {
      const own = inWay(reach);
      if (own.length > 0) inWayOf.set(reach.unitId, merged(inWayOf.get(reach.unitId) ?? NONE, own));
    }
    const holding = (unitId: string): readonly string[] =>
      merged(inWayOf.get(unitId) ?? NONE, over.get(unitId) ?? NONE);
    const reaches = new Map<string, DriverReach>();
    for (const [id, { reach }] of this.#reached) {
      const fresh = driverReach(id, reach, holding);
      const known = this.#driverReaches.get(id);
      reaches.set(id, known !== undefined && sameReach(known, fresh) ? known : fresh);
    }
    this.#driverReaches = this.#reaches.ask("all", [...reaches.values()], () => reaches);
    return this.#driverReaches;
  }
}

/** What stands in the way of a fastener's tools, in code-point order. */
const inWay = ({ drive, nut }: Reach): readonly string[] =>
  merged(drive?.unitIds ?? NONE, nut?.unitIds ?? NONE);

function driverReach(
  fastenerId: string,
  reach: Reach,
  holding: (unitId: string) => readonly string[],
): DriverReach {
  const { drive, nut, carriedId, unitId } = reach;
  const first = carriedId === null ? inWay(reach) : [carriedId, ...inWay(reach)];
  return {
    fastenerId,
    driverId: drive?.tool.id ?? null,
    inWay: drive?.unitIds ?? NONE,
    nutDriverId: nut?.tool.id ?? null,
    nutInWay: nut?.unitIds ?? NONE,
    ownInWay: (drive?.own ?? false) || (nut?.own ?? false),
    comesOff: first.length === 0 ? NONE : comesOff(first, holding, unitId),
  };
}

const sameReach = (a: DriverReach, b: DriverReach): boolean =>
  a.driverId === b.driverId &&
  a.nutDriverId === b.nutDriverId &&
  a.ownInWay === b.ownInWay &&
  sameMembers(a.inWay, b.inWay) &&
  sameMembers(a.nutInWay, b.nutInWay) &&
  sameMembers(a.comesOff, b.comesOff);

const withSome = (over: ReadonlyMap<string, readonly string[]>): LiesOver =>
  new Map([...over].filter(([, uppers]) => uppers.length > 0));
