import { first, ids, isFreeOf, least, most, ofNet, singleBoards, some, wiresOf } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";

/** Rated currents of the R10 series, as fuses are made. Source: IEC 60127-2, standard sheets. */
const SERIES_A = [0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 32];

const ratingAbove = (amps: number): number => SERIES_A.find((rating) => rating > amps) ?? 40;
const ratingBelow = (amps: number): number => SERIES_A.findLast((rating) => rating < amps) ?? 0.4;

/** Item of a placed element. */
const itemOf = (elementId: string): string => elementId.slice(0, elementId.lastIndexOf(":"));

/** Fuses that have a row of their own and are in no finding of a rule. */
function fusesFor(sound: Sound, rule: string) {
  const isFree = isFreeOf(sound, rule);
  return [...sound.ratings.fuses.values()].flatMap((fuse) => {
    const { fuseId, elementId } = fuse;
    const itemId = itemOf(elementId);
    return fuseId === null || !isFree(fuseId) ? [] : [{ ...fuse, fuseId, itemId }];
  });
}

export const protection: readonly Mutation[] = [
  {
    name: "the fuse nearest to the limit of a wire behind it, one rating above that limit",
    rule: "fuse-large",
    plan: (sound) => {
      const fuse = most(
        fusesFor(sound, "fuse-large").filter(({ thinnest }) => thinnest !== null),
        ({ ratedA, thinnest }) => ratedA / (thinnest?.limitA ?? 1),
      );
      return {
        victim: [fuse.fuseId, fuse.thinnest?.wireId ?? ""],
        change: (edit) =>
          edit.set("fuses", { id: fuse.fuseId }, { rated_a: ratingAbove(fuse.thinnest?.limitA ?? 0) }),
        follows: [first("fuse-slow", ids(fuse.itemId)), some("fuse-never-opens", ids(fuse.fuseId))],
      };
    },
  },
  {
    name: "the fuse with the least current to open it, too large for its supply to open",
    rule: "fuse-never-opens",
    plan: (sound) => {
      const fuse = least(
        fusesFor(sound, "fuse-never-opens").filter(({ far }) => far !== null && far.heldA > 0),
        ({ far, ratedA }) => (far?.heldA ?? 0) / ratedA,
      );
      return {
        victim: [fuse.fuseId, fuse.far?.supplyId ?? ""],
        change: (edit) =>
          edit.set(
            "fuses",
            { id: fuse.fuseId },
            { rated_a: ratingAbove((fuse.far?.heldA ?? 0) / 1.5), melting_a2s: "" },
          ),
        // Such a fuse protects no wire behind it either.
        follows: [some("fuse-large", ids(fuse.fuseId)), some("fuse-slow", ids(fuse.fuseId))],
      };
    },
  },
  {
    name: "the supply with most fuses that shuts off in a short circuit, sooner than it opens one",
    rule: "fuse-never-opens",
    plan: (sound) => {
      const fuses = fusesFor(sound, "fuse-never-opens");
      const bursting = sound.machine.book.tables.supplies.filter(({ burst_ms }) => (burst_ms ?? 0) > 0);
      const supply = most(bursting, ({ id }) => fuses.filter(({ far }) => far?.supplyId === id).length);
      const own = fuses.filter(({ far }) => far?.supplyId === supply.id);
      const slowest = most(own, ({ far }) => far?.opensS ?? 0);
      return {
        victim: [slowest.fuseId, supply.id],
        change: (edit) => edit.set("supplies", { id: supply.id }, { burst_ms: 5 }),
        follows: [some("fuse-never-opens", ids(supply.id))],
      };
    },
  },
  {
    name: "the fuse with the highest load for its rating, one rating below that load",
    rule: "fuse-overloaded",
    plan: (sound) => {
      const fuse = most(fusesFor(sound, "fuse-overloaded"), ({ steadyA, ratedA }) => steadyA / ratedA);
      return {
        victim: [fuse.fuseId],
        change: (edit) => edit.set("fuses", { id: fuse.fuseId }, { rated_a: ratingBelow(fuse.steadyA) }),
      };
    },
  },
  {
    name: "the fuse that is pulsed hardest, as quick as it can be had",
    rule: "fuse-pulsed",
    plan: (sound) => {
      const fuse = most(fusesFor(sound, "fuse-pulsed"), ({ neededA2s }) => neededA2s ?? 0);
      return {
        victim: [fuse.fuseId],
        change: (edit) =>
          edit.set(
            "fuses",
            { id: fuse.fuseId },
            { speed: "ff", melting_a2s: Math.round((fuse.neededA2s ?? 0) / 2) },
          ),
        // So quick, it has to break what the supply's capacitors give.
        follows: [some("fuse-breaking", ids(fuse.fuseId))],
      };
    },
  },
  {
    name: "the fuse with the hardest short circuit behind it, with glass that breaks ten times its rating",
    rule: "fuse-breaking",
    plan: (sound) => {
      const fuse = most(fusesFor(sound, "fuse-breaking"), ({ breaksA }) => breaksA);
      return {
        victim: [fuse.fuseId],
        change: (edit) =>
          edit.set("fuses", { id: fuse.fuseId }, { breaking_a: Math.max(35, 10 * fuse.ratedA) }),
      };
    },
  },
  {
    name: "the fuse of the highest voltage, made for half of it",
    rule: "fuse-volts",
    plan: (sound) => {
      const fuse = most(fusesFor(sound, "fuse-volts"), ({ volts }) => volts);
      return {
        victim: [fuse.fuseId],
        change: (edit) => edit.set("fuses", { id: fuse.fuseId }, { rated_v: 125 }),
      };
    },
  },
  {
    name: "the wire that a short circuit strains most, in the thinnest wire of the shop",
    rule: "fuse-slow",
    plan: (sound) => {
      // The mains has fuses that open at once; a supply that limits its current lets it flow for longer.
      const { supplies } = sound.machine.book.tables;
      const limited = new Set(supplies.flatMap(({ id, limit_mode }) => (limit_mode === "none" ? [] : [id])));
      const fuse = most(
        fusesFor(sound, "fuse-slow").filter(
          ({ weakest, supplyId }) => weakest !== null && limited.has(supplyId),
        ),
        ({ weakest }) => weakest?.used ?? 0,
      );
      const wire = wiresOf(sound).find(({ id }) => id === fuse.weakest?.wireId);
      const net = wire?.netId ?? "";
      const own = ofNet(sound, net);
      return {
        victim: [fuse.fuseId],
        change: (edit) => edit.set("nets", { id: net }, { wire_type: thinnestType(sound) }),
        // What so thin a wire does besides: it is hot, it loses volts, and its contacts are made for thicker wire.
        follows: [
          some("fuse-slow", own),
          some("fuse-large", own),
          first("wire-hot", own),
          first("net-drop", own),
          first("contact-conductor", own),
          some("crimp-height-missing", ids(thinnestType(sound))),
        ],
      };
    },
  },
  {
    name: "the fuse of the mains with the highest load, bridged by copper",
    rule: "wire-unprotected",
    plan: (sound) => {
      const { elements, ends } = sound.machine;
      const highest = Math.max(...[...sound.ratings.fuses.values()].map(({ volts }) => volts));
      const fuse = most(
        fusesFor(sound, "").filter(({ volts }) => volts === highest),
        ({ rmsA }) => rmsA,
      );
      const element = elements.find(({ id }) => id === fuse.elementId);
      const net = ends.find(({ point }) => point === element?.toPointId)?.net;
      const wire = wiresOf(sound).find(({ netId }) => netId === net);
      return {
        victim: [fuse.supplyId, wire?.id ?? ""],
        change: (edit) => {
          edit.set("elements", { id: element?.row.id ?? "" }, { kind: "link", amp: "" });
          edit.remove("fuses", { id: fuse.fuseId });
        },
        // The wires before the fuse were without one before, and were accepted.
        ends: [first("wire-unprotected", ids(fuse.supplyId))],
      };
    },
  },
  {
    name: "the most loaded fuse whose supply can hold more for ever than the wire behind it may carry, bridged by copper",
    rule: "wire-unprotected",
    plan: (sound) => {
      const { elements, ends, book } = sound.machine;
      const holds = new Map(
        book.tables.supplies.map((s) => [s.id, s.limit_mode === "constant" ? (s.limit_a ?? 0) : 0]),
      );
      const behind = [...sound.ratings.fuses.values()].flatMap((fuse) => {
        const element = elements.find(({ id }) => id === fuse.elementId);
        const net = ends.find(({ point }) => point === element?.toPointId)?.net;
        const wire = wiresOf(sound).find(({ netId }) => netId === net);
        const limitA = sound.ratings.wires.get(wire?.id ?? "")?.limitA ?? Number.POSITIVE_INFINITY;
        const isWeak = limitA < (holds.get(fuse.supplyId) ?? 0);
        return element !== undefined && wire !== undefined && fuse.fuseId !== null && isWeak
          ? [{ fuse, element, wire }]
          : [];
      });
      const { fuse, element, wire } = most(behind, (one) => one.fuse.rmsA);
      return {
        victim: [fuse.supplyId, wire.id],
        change: (edit) => {
          edit.set("elements", { id: element.row.id }, { kind: "link", amp: "" });
          edit.remove("fuses", { id: fuse.fuseId ?? "" });
        },
      };
    },
  },
  {
    name: "the resettable fuse of a single board with most lamps behind it, below what they draw",
    rule: "fuse-overloaded",
    plan: (sound) => {
      const single = new Set(singleBoards(sound).map(({ id }) => id));
      const fuses = [...sound.ratings.fuses.values()].flatMap((fuse) => {
        const itemId = itemOf(fuse.elementId);
        const lamps = sound.ratings.lampBoards.get(itemId)?.lamps ?? 0;
        return fuse.fuseId === null && single.has(itemId) && lamps > 0 ? [{ ...fuse, lamps }] : [];
      });
      const fuse = most(fuses, ({ lamps }) => lamps);
      const element = sound.machine.elements.find(({ id }) => id === fuse.elementId);
      return {
        victim: [fuse.elementId],
        change: (edit) =>
          edit.set("elements", { id: element?.row.id ?? "" }, { amp: Math.floor(fuse.steadyA * 50) / 100 }),
      };
    },
  },
];

/** The hook-up wire with the least copper that nets of coils could be given. */
const thinnestType = (sound: Sound): string =>
  least(
    wiresOf(sound).filter(({ netClass }) => netClass === "switch"),
    ({ wireType }) => wireType.area_mm2,
  ).wireType.id;
