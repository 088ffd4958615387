import { linkedPoints, netIndex } from "@pinwright/engine";
import { first, type Ids, ids, isFreeOf, least, most, ofNet, some, wiresOf } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";

/** What happens to a net in other wire: its limits, its drop, its crimps, and the fuse before it. */
const inOtherWire = (sound: Sound, netId: string, type: string): readonly Consequence[] => {
  const own = ofNet(sound, netId);
  return [
    first("wire-hot", own),
    first("net-drop", own),
    some("fuse-large", own),
    some("fuse-slow", own),
    some("wire-unprotected", own),
    first("contact-conductor", own),
    first("contact-insulation", own),
    some("crimp-height-missing", ids(type)),
  ];
};

const harnessesOf = ({ machine }: Sound, netId: string): Ids =>
  ids(...machine.ends.flatMap(({ net, harness }) => (net === netId ? [harness] : [])));

/** The hook-up wire with the least copper that any net of a class has. */
const thinnest = (sound: Sound, netClass: string): string =>
  least(
    wiresOf(sound).filter((wire) => wire.netClass === netClass),
    ({ wireType }) => wireType.area_mm2,
  ).wireType.id;

export const currents: readonly Mutation[] = [
  {
    name: "the feed of lamps nearest to its drop limit, in the thinnest wire of the lamps",
    rule: "net-drop",
    plan: (sound) => {
      const isFree = isFreeOf(sound, "net-drop");
      const drops = [...sound.ratings.drops.values()].filter(
        ({ netId }) => isFree(netId) && sound.machine.nets.get(netId)?.class === "lamp",
      );
      const drop = most(drops, ({ dropV, limitV }) => dropV / limitV);
      const type = thinnest(sound, "switch");
      return {
        victim: [drop.netId],
        change: (edit) => edit.set("nets", { id: drop.netId }, { wire_type: type }),
        follows: inOtherWire(sound, drop.netId, type),
      };
    },
  },
  {
    name: "the two chains of one supply with most boards in a harness, the second one taken on from the end of the first",
    rule: "net-drop",
    plan: (sound) => {
      const { one, other } = most(
        chainPairs(sound),
        (pair) => pair.one.boards.length + pair.other.boards.length,
      );
      const { machine } = sound;
      const own = ofNet(sound, one.net);
      const left = machine.ends.filter(
        ({ net, point }) => net === other.net && !other.boards.includes(point),
      );
      const fuses = [...sound.ratings.fuses.values()].filter(({ elementId }) => {
        const element = machine.elements.find(({ id }) => id === elementId);
        return machine.ends.some(({ net, point }) => net === one.net && point === element?.toPointId);
      });
      const isFuse = ids(...fuses.flatMap(({ fuseId }) => fuseId ?? []));
      return {
        victim: [one.net],
        change: (edit) => {
          edit.remove("choices", { kind: "spare", subject: one.out });
          edit.add("ends", { point: one.out, net: one.net, harness: one.harness });
          for (const point of other.boards) edit.set("ends", { point }, { net: one.net });
          for (const { point } of left) edit.remove("ends", { point });
          edit.remove("choices", { kind: "chain", subject: other.subject });
          edit.remove("nets", { id: other.net });
          edit.set(
            "choices",
            { kind: "chain", subject: one.subject },
            { value: [...one.steps, one.out, ...other.boards].join(" ") },
          );
        },
        // Twice the loads on one wire and one fuse; the other's output is free.
        follows: [
          first("wire-hot", own),
          first("contact-hot", own),
          ...["fuse-overloaded", "fuse-pulsed", "fuse-slow", "fuse-large", "fuse-never-opens"].map((rule) =>
            some(rule, isFuse),
          ),
          first("pin-unwired", ids(...left.map(({ point }) => point))),
        ],
      };
    },
  },
  {
    name: "the wire that is nearest to its limit, in the thinnest wire of the shop",
    rule: "wire-hot",
    plan: (sound) => {
      const isFree = isFreeOf(sound, "wire-hot");
      const rating = most(
        [...sound.ratings.wires.values()].filter(({ wireId }) => isFree(wireId)),
        ({ share }) => share,
      );
      const net = wiresOf(sound).find(({ id }) => id === rating.wireId)?.netId ?? "";
      const type = thinnest(sound, "switch");
      return {
        victim: [rating.wireId],
        change: (edit) => edit.set("nets", { id: net }, { wire_type: type }),
        follows: inOtherWire(sound, net, type),
        // A bundle with a thinner wire in it turns more easily.
        ends: [some("bend-tight", harnessesOf(sound, net))],
      };
    },
  },
  {
    name: "the wire in the fullest bundle, of a type that would do in a bundle of its own",
    rule: "wire-hot",
    plan: (sound) => {
      const isFree = isFreeOf(sound, "wire-hot");
      const ratings = [...sound.ratings.wires.values()];
      const all = new Map(wiresOf(sound).map((wire) => [wire.id, wire]));
      const alone = new Map(
        ratings.map((one) => [all.get(one.wireId)?.wireType.id ?? "", one.singleA * one.ambientShare]),
      );
      const found = ratings.flatMap(({ wireId, rmsA, bundleShare, wires }) =>
        [...alone].flatMap(([type, amps]) =>
          isFree(wireId) && rmsA < amps * 0.95 && rmsA > amps * bundleShare * 1.05
            ? [{ wireId, type, wires }]
            : [],
        ),
      );
      const { wireId, type } = most(found, ({ wires }) => wires);
      const net = all.get(wireId)?.netId ?? "";
      return {
        victim: [wireId],
        change: (edit) => edit.set("nets", { id: net }, { wire_type: type }),
        follows: inOtherWire(sound, net, type),
        // A bundle with a thinner wire in it turns more easily.
        ends: [some("bend-tight", harnessesOf(sound, net))],
      };
    },
  },
  {
    name: "the cord of the mains, in cores of 0.22 mm²",
    rule: "wire-hot",
    plan: (sound) => {
      const inlet = wiresOf(sound).filter(
        ({ netClass, a, b }) =>
          netClass === "mains" &&
          [a, b].some((end) => {
            const item = sound.machine.items.get(sound.machine.points.get(end)?.itemId ?? "");
            return item?.kind === "device" && item.type.class === "inlet";
          }),
      );
      const wire = most(inlet, ({ id }) => sound.ratings.wires.get(id)?.rmsA ?? 0);
      const type = `${wire.wireType.id}-changed`;
      return {
        victim: [wire.id],
        change: (edit) => {
          edit.addLike("wire_types", { id: wire.wireType.id }, { id: type, area_mm2: 0.22, strands: 7 });
          edit.set("nets", { id: wire.netId }, { wire_type: type });
        },
        follows: inOtherWire(sound, wire.netId, type),
      };
    },
  },
  {
    name: "the contact nearest to its limit on a board of its own kind, made for half of its current",
    rule: "contact-hot",
    plan: (sound) => {
      const { connector, rating, ratedA, family } = hottestContact(sound);
      return {
        victim: [rating.pointId],
        change: (edit) => {
          edit.addLike(
            "connector_families",
            { id: family },
            { id: `${family}-changed`, rated_a: ratedA / 2 },
          );
          edit.set("connectors", { id: connector.id }, { family: `${family}-changed` });
        },
        follows: alongside(sound, rating.pointId),
      };
    },
  },
  {
    name: "the contact nearest to its limit on a board of its own kind, in a housing that its neighbours heat",
    rule: "contact-hot",
    plan: (sound) => {
      const { connector, rating, family } = hottestContact(sound);
      return {
        victim: [rating.pointId],
        change: (edit) => {
          edit.addLike("connector_families", { id: family }, { id: `${family}-changed`, shared: "steep" });
          edit.set("connectors", { id: connector.id }, { family: `${family}-changed` });
        },
        follows: alongside(sound, rating.pointId),
      };
    },
  },
];

/** The contact with the highest share of its limit, of those on boards that the machine has one of. */
function hottestContact(sound: Sound) {
  const { machine, ratings } = sound;
  const { boards } = machine.book.tables;
  const isFree = isFreeOf(sound, "contact-hot");
  const found = [...ratings.contacts.values()].flatMap((rating) => {
    const point = machine.points.get(rating.pointId);
    const connector = machine.landings.get(point?.landingId ?? "")?.connector;
    const isSingle = boards.filter(({ type }) => type === connector?.board_type).length === 1;
    if (connector == null || !isSingle || !isFree(rating.pointId) || rating.loaded < 2) return [];
    return [{ connector, rating, ratedA: rating.ratedA, family: connector.family }];
  });
  return most(found, ({ rating }) => rating.share);
}

/** The other contacts of its housing are of the weaker kind, too; the net may ask more of its feed than that gives. */
function alongside({ machine }: Sound, pointId: string): readonly Consequence[] {
  const landingId = machine.points.get(pointId)?.landingId;
  const isOwn = (id: string): boolean => machine.points.get(id)?.landingId === landingId;
  return [first("contact-hot", isOwn), first("contact-amps", isOwn)];
}

/** A chain over boards that a person pinned, from its supply's side on. */
interface Chain {
  readonly subject: string;
  readonly net: string;
  readonly harness: string;
  readonly steps: readonly string[];
  /** Contacts of its boards. */
  readonly boards: readonly string[];
  /** The free contact of its last board that the chain could go on from. */
  readonly out: string;
}

function feedChains({ machine }: Sound): readonly Chain[] {
  const index = netIndex(machine);
  return machine.book.tables.choices.flatMap(({ kind, held, subject, value }) => {
    const [net = "", harness = ""] = subject.split("|");
    const steps = (value ?? "").split(" ");
    const isFeed = kind === "chain" && held === "pinned" && (machine.nets.get(net)?.volts ?? 0) > 0;
    const out = linkedPoints(index, steps.at(-1) ?? "").find((id) => machine.choices.get("spare")?.has(id));
    const boards = steps.filter(
      (id) => machine.items.get(machine.points.get(id)?.itemId ?? "")?.kind === "board",
    );
    return isFeed && out !== undefined && !steps.includes("/")
      ? [{ subject, net, harness, steps, boards, out }]
      : [];
  });
}

/** Chains of feeds of one supply in one harness. */
function chainPairs(sound: Sound): readonly { readonly one: Chain; readonly other: Chain }[] {
  const supplyOf = ({ net }: Chain) => sound.machine.nets.get(net)?.supply ?? "";
  const chains = feedChains(sound).filter(({ net }) => sound.ratings.drops.has(net));
  return chains.flatMap((one) =>
    chains.flatMap((other) =>
      one !== other && one.harness === other.harness && supplyOf(one) === supplyOf(other)
        ? [{ one, other }]
        : [],
    ),
  );
}
