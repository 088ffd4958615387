import type { LineResult, Place } from "@pinwright/engine";
import { first, ids, misplaced, most, only, some, wiresOf } from "./about.ts";
import type { Mutation, Plan } from "./mutation.ts";

/** A pair of switches that is added, and its net. */
const [NEAR, FAR, NET] = ["sw.added-near", "sw.added-far", "si.added"];

/** From the lane to the switches: room for a hand. */
const ASIDE_MM = 60;

/**
 * Adds two switches at the ends of the longest lane in which a harness has wires of a class, and a wire between them
 * in the same harness: the signal lies in its bundle.
 */
function signalBeside(sound: LineResult, loud: "mains" | "coil" | "motor", signal: "sensor" | "audio"): Plan {
  const wires = wiresOf(sound).filter(({ netClass }) => netClass === loud);
  const found = [...sound.harnesses.values()].flatMap(({ harness, route }) =>
    route.branches
      .filter(
        ({ kind, id }) =>
          kind === "lane" && wires.some((w) => w.harnessId === harness.id && w.path.includes(id)),
      )
      .map((lane) => ({ lane, route, harnessId: harness.id })),
  );
  const { lane, route, harnessId } = most(found, (one) => one.lane.routeMm);
  const placeOf = (nodeId: string): Place | undefined => route.nodes.find(({ id }) => id === nodeId)?.place;
  const [near, far] = [placeOf(lane.a), placeOf(lane.b)];
  if (near === undefined || far === undefined) throw new Error(`${lane.id} has no ends.`);
  const row = (id: string, { panelId, side, xMm, yMm }: Place) => ({
    id,
    label: "Switch that was added",
    type: switchType(sound),
    panel: panelId,
    side,
    x_mm: xMm + ASIDE_MM,
    y_mm: yMm,
  });
  const [from = ""] = terminalsOf(sound, switchType(sound));
  return {
    victim: [lane.id, harnessId],
    change: (edit) => {
      // Its route is one that a person drew, so that the signal cannot go another way.
      for (const { kind, subject } of sound.machine.book.tables.choices)
        if (
          (kind === "trunk" && subject === harnessId) ||
          (kind === "attach" && subject.startsWith(`${harnessId}|`))
        )
          edit.set("choices", { kind, subject }, { held: "pinned" });
      edit.add("devices", row(NEAR, near));
      edit.add("devices", row(FAR, far));
      edit.add("nets", {
        id: NET,
        label: "Signal that was added",
        class: signal,
        wire_type: thinnest(sound),
      });
      for (const [item, node] of [
        [NEAR, lane.a],
        [FAR, lane.b],
      ] as const) {
        edit.add("ends", { point: `${item}:${from}`, net: NET, harness: harnessId });
        edit.add("choices", { kind: "attach", subject: item, value: node });
        edit.add("choices", { kind: "spare", subject: item });
      }
    },
    // Nothing reads the new switches, and nobody made room for them on the panel and the pinboard or named them on the lane.
    follows: [
      first("device-unread", ids(NEAR, FAR)),
      some("pinboard-hand-room", ids(NEAR, FAR)),
      only("lane-class-barred", ids(lane.id, harnessId)),
      ...misplaced(ids(NEAR, FAR)),
    ],
  };
}

const terminalsOf = ({ machine }: LineResult, type: string): readonly string[] =>
  machine.book.tables.terminals.flatMap((row) => (row.device_type === type ? [row.terminal] : []));

/** The type of most switches that end in terminals. */
function switchType(sound: LineResult): string {
  const { device_types, devices } = sound.machine.book.tables;
  const types = device_types.filter(
    ({ id, class: c }) => c === "switch" && terminalsOf(sound, id).length > 0,
  );
  return most(types, ({ id }) => devices.filter(({ type }) => type === id).length).id;
}

/** The thinnest wire that any switch has. */
const thinnest = (sound: LineResult): string =>
  most(
    wiresOf(sound).filter(({ netClass }) => netClass === "switch"),
    ({ wireType }) => -wireType.area_mm2,
  ).wireType.id;

export const bundles: readonly Mutation[] = [
  {
    name: "a signal in the bundle of the longest lane with mains",
    rule: "mains-together",
    plan: (sound) => signalBeside(sound, "mains", "sensor"),
  },
  {
    name: "a sensor's signal in the bundle of the longest lane with coils",
    rule: "classes-together",
    plan: (sound) => signalBeside(sound, "coil", "sensor"),
  },
  {
    name: "an audio signal in the bundle of the longest lane with motors",
    rule: "classes-together",
    plan: (sound) => signalBeside(sound, "motor", "audio"),
  },
];
