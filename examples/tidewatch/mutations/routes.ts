import { type CrossingLength, crossingLengths, type LineResult, type SizedWire } from "@pinwright/engine";
import { at, first, ids, misplaced, most, some, wiresOf } from "./about.ts";
import type { Consequence, Mutation } from "./mutation.ts";

/** What is measured on the pinboards of some harnesses: their branches have other lengths. */
const onPinboards = (...harnessIds: readonly string[]): readonly Consequence[] =>
  ["pinboard-peg-moved", "pinboard-hand-room", "pinboard-direction-lost", "pinboard-overlap"].map((rule) =>
    some(rule, ids(...harnessIds)),
  );

/** Crossings of one kind with the wires over each. */
function crossed(sound: LineResult, ...kinds: readonly CrossingLength["crossing"]["kind"][]) {
  const wires = wiresOf(sound);
  return [...crossingLengths(sound.machine).values()]
    .filter(({ crossing }) => kinds.includes(crossing.kind))
    .map((one) => {
      const over = wires.filter(({ path }) => path.includes(one.crossing.id));
      return { ...one, wires: over, harnessIds: [...new Set(over.map(({ harnessId }) => harnessId))] };
    });
}

const farthestMm = ({ distances }: Pick<CrossingLength, "distances">): number =>
  Math.max(0, ...distances.map(({ distanceMm }) => distanceMm));

const areaOf = (wires: readonly SizedWire[]): number =>
  wires.reduce((sum, { wireType }) => sum + wireType.od_mm ** 2, 0);

export const routes: readonly Mutation[] = [
  {
    name: "the hinge with most wires, too short for the pose that pulls it longest",
    rule: "crossing-pull",
    plan: (sound) => {
      const hinge = most(crossed(sound, "hinge"), ({ wires }) => wires.length);
      return {
        victim: [hinge.crossing.id],
        change: (edit) =>
          edit.set("crossings", { id: hinge.crossing.id }, { length_mm: Math.floor(farthestMm(hinge)) - 20 }),
        follows: [first("crossing-bend", ids(hinge.crossing.id)), ...onPinboards(...hinge.harnessIds)],
      };
    },
  },
  {
    name: "the gap that is narrowest for its bundle, with so much slack that it makes half a circle",
    rule: "crossing-bend",
    plan: (sound) => {
      const chordMm = ({ shut }: Pick<CrossingLength, "shut">) =>
        shut?.distanceMm ?? Number.POSITIVE_INFINITY;
      const gap = most(crossed(sound, "gap"), (one) => Math.sqrt(areaOf(one.wires)) / chordMm(one));
      return {
        victim: [gap.crossing.id],
        change: (edit) =>
          edit.set(
            "crossings",
            { id: gap.crossing.id },
            { length_mm: Math.round((chordMm(gap) * Math.PI) / 2) },
          ),
        follows: onPinboards(...gap.harnessIds),
      };
    },
  },
  {
    name: "the hinge with the deepest loop, with half the room for it",
    rule: "crossing-pinch",
    plan: (sound) => {
      const hinge = most(
        crossed(sound, "hinge").filter(({ wires }) => wires.length > 0),
        ({ lengthMm, shut }) => (lengthMm ?? 0) - (shut?.distanceMm ?? 0),
      );
      return {
        victim: [hinge.crossing.id],
        change: (edit) =>
          edit.set("crossings", { id: hinge.crossing.id }, { room_mm: (hinge.crossing.room_mm ?? 0) / 2 }),
      };
    },
  },
  {
    name: "the gap with most earth wires beside others, which is a hinge after all",
    rule: "hinge-earth",
    plan: (sound) => {
      const isMixed = ({ wires }: { readonly wires: readonly SizedWire[] }) =>
        wires.some(({ netClass }) => netClass !== "earth");
      const gap = most(
        crossed(sound, "gap").filter(isMixed),
        ({ wires }) => wires.filter((w) => w.netClass === "earth").length,
      );
      const earth = gap.wires.find(({ netClass }) => netClass === "earth");
      return {
        victim: [earth?.id ?? "", gap.crossing.id],
        change: (edit) => edit.set("crossings", { id: gap.crossing.id }, { kind: "hinge" }),
        follows: [
          some("hinge-earth", ids(gap.crossing.id)),
          first("crossing-bend", ids(gap.crossing.id)),
          ...onPinboards(...gap.harnessIds),
        ],
      };
    },
  },
  {
    name: "the hole with the thickest bundle, bored too small for it",
    rule: "hole-overfull",
    plan: (sound) => {
      const hole = most(crossed(sound, "hole"), ({ wires }) => areaOf(wires));
      return {
        victim: [hole.crossing.id, ...hole.harnessIds],
        change: (edit) => edit.set("crossings", { id: hole.crossing.id }, { max_diameter_mm: 2 }),
      };
    },
  },
  {
    name: "the only crossing to a panel, with most wires, too narrow for them",
    rule: "crossing-overfull",
    plan: (sound) => {
      const bridge = most(bridges(sound), ({ wires }) => areaOf(wires));
      return {
        victim: [bridge.crossing.id, ...bridge.harnessIds],
        change: (edit) => edit.set("crossings", { id: bridge.crossing.id }, { max_diameter_mm: 3 }),
      };
    },
  },
  {
    name: "the only crossing to a panel, with most classes of wires in a harness, closed to the rarest of them",
    rule: "lane-class-barred",
    plan: (sound) => {
      const found = bridges(sound).flatMap((bridge) =>
        bridge.harnessIds.map((harnessId) => ({
          ...bridge,
          harnessId,
          classes: classesOf(bridge.wires, harnessId),
        })),
      );
      const { crossing, harnessId, classes, wires } = most(found, (one) => one.classes.size);
      const [barred] = most(classes, ([, count]) => -count);
      const allowed = new Set(wires.map(({ netClass }) => netClass).filter((one) => one !== barred));
      return {
        victim: [crossing.id, harnessId],
        change: (edit) =>
          edit.set("crossings", { id: crossing.id }, { classes: [...allowed].sort().join(" ") }),
      };
    },
  },
  {
    name: "the hole with most harnesses, closed to all of them",
    rule: "landing-unreached",
    plan: (sound) => {
      const hole = most(
        crossed(sound, "hole"),
        ({ harnessIds, wires }) => harnessIds.length * 100 + wires.length,
      );
      const harness = hole.harnessIds[0] ?? "";
      const beyond = sound.harnesses.get(harness)?.landingIds ?? [];
      const unreached = beyond.filter((id) => sound.machine.landings.get(id)?.place.side === "under");
      const isOwn = ids(...hole.harnessIds);
      return {
        victim: [unreached[0] ?? "", harness],
        change: (edit) => edit.set("crossings", { id: hole.crossing.id }, { classes: "mains" }),
        follows: [
          some("landing-unreached", isOwn),
          // What was kept of their pinboards is there no more.
          first("pinboard-peg-unknown", (id) => isOwn(id.split("|")[0] ?? "")),
          ...onPinboards(...hole.harnessIds),
        ],
      };
    },
  },
  {
    name: "the switch with the longest wire, moved by 0.8 m",
    rule: "tail-long",
    plan: (sound) => {
      const devices = new Map(sound.machine.book.tables.devices.map((row) => [row.id, row]));
      const wire = most(
        wiresOf(sound).filter((w) =>
          [w.a, w.b].some((end) => isSwitch(sound, end) && devices.has(itemAt(sound, end))),
        ),
        ({ finishedMm }) => finishedMm,
      );
      const end = [wire.a, wire.b].find((id) => isSwitch(sound, id)) ?? "";
      const itemId = itemAt(sound, end);
      return {
        victim: [at(sound, end).landing?.id ?? "", wire.harnessId],
        change: (edit) =>
          edit.set("devices", { id: itemId }, { x_mm: (devices.get(itemId)?.x_mm ?? 0) - 800 }),
        follows: [...onPinboards(wire.harnessId), ...misplaced(ids(itemId))],
      };
    },
  },
  {
    name: "the in-line connector nearest to a hinge, held where the hinge begins",
    rule: "joint-at-hinge",
    plan: (sound) => {
      const hinges = new Set(crossed(sound, "hinge").map(({ crossing }) => crossing.id));
      const found = [...sound.harnesses.values()].flatMap(({ harness, route, landingIds }) =>
        route.branches
          .filter(({ id }) => hinges.has(id))
          .flatMap((hinge) =>
            landingIds.flatMap((landingId) => {
              const landing = sound.machine.landings.get(landingId);
              const isPinned = sound.machine.choices.get("attach")?.has(landingId) === true;
              if (landing === undefined || landing.half === null || !isPinned) return [];
              return [hinge.a, hinge.b].flatMap((nodeId) => {
                const node = route.nodes.find(({ id }) => id === nodeId);
                if (node === undefined || node.place.panelId !== landing.place.panelId) return [];
                const mm = Math.hypot(node.place.xMm - landing.place.xMm, node.place.yMm - landing.place.yMm);
                return [{ hinge: hinge.id, landingId, nodeId, mm, harnessId: harness.id }];
              });
            }),
          ),
      );
      const { hinge, landingId, nodeId, harnessId } = most(found, ({ mm }) => -mm);
      return {
        victim: [landingId, hinge, nodeId, harnessId],
        change: (edit) => edit.set("choices", { kind: "attach", subject: landingId }, { value: nodeId }),
        // Its harness keeps another place, from when it was settled.
        follows: [first("settled-dropped", ids(landingId)), ...onPinboards(harnessId)],
      };
    },
  },
  {
    name: "the longest harness, on a bench that is too short for it",
    rule: "pinboard-too-large",
    plan: (sound) => {
      const longest = most(sound.harnesses.values(), ({ pinboard }) => pinboard.widthMm);
      return {
        victim: [longest.harness.id],
        change: (edit) => edit.set("harnesses", { id: longest.harness.id }, { board_width_mm: 600 }),
        follows: onPinboards(longest.harness.id),
      };
    },
  },
];

/** Crossings that are the only one to one of their panels. */
function bridges(sound: LineResult) {
  const panels = new Map(sound.machine.book.tables.waypoints.map(({ id, panel }) => [id, panel]));
  const all = crossed(sound, "hinge", "gap");
  const panelsOf = ({ crossing: { from, to } }: (typeof all)[number]) =>
    [from, to].map((id) => panels.get(id));
  return all.filter((one) =>
    panelsOf(one).some((panel) => all.filter((other) => panelsOf(other).includes(panel)).length === 1),
  );
}

/** How many wires of each class one harness has among some. */
function classesOf(wires: readonly SizedWire[], harnessId: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const wire of wires)
    if (wire.harnessId === harnessId) counts.set(wire.netClass, (counts.get(wire.netClass) ?? 0) + 1);
  return counts;
}

const itemAt = (sound: LineResult, end: string): string => at(sound, end).item?.id ?? "";

function isSwitch(sound: LineResult, end: string): boolean {
  const { item } = at(sound, end);
  return item?.kind === "device" && item.type.class === "switch";
}
