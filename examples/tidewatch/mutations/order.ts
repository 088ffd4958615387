import { ids, least, most, some } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";
import { screwsFor, solidsNear } from "./screws.ts";

/** The designer's step with a station of its own and a skill that fewest stations have. */
function skilledStep({ machine }: Sound) {
  const { steps, stations } = machine.book.tables;
  const able = (skill: string) => stations.filter(({ skills }) => skills.includes(skill));
  return least(
    steps.filter(({ skill, station }) => skill !== "" && station !== null),
    ({ skill }) => able(skill).length,
  );
}

const STEP = "st.other";

export const order: readonly Mutation[] = [
  {
    name: "the rule of order with the longest reason, and its contrary",
    rule: "order-loop",
    plan: ({ machine }) => {
      const rule = most(
        machine.book.tables.step_rules.filter(
          ({ first_item, then_item }) => first_item !== null && then_item !== null,
        ),
        ({ reason }) => reason.length,
      );
      const [first, then] = [rule.first_item ?? "", rule.then_item ?? ""];
      return {
        victim: [first, then],
        change: (edit) => edit.add("step_rules", { id: "sr.other", first_item: then, then_item: first }),
      };
    },
  },
  {
    name: "a harness of the playfield that is to be laid after the playfield is in the cabinet and wired",
    rule: "order-loop",
    plan: ({ machine }) => {
      const rule = most(
        machine.book.tables.step_rules.filter(
          ({ first_harness, then_step }) => first_harness !== null && then_step !== null,
        ),
        ({ reason }) => reason.length,
      );
      return {
        victim: [rule.first_harness ?? "", rule.then_step ?? ""],
        change: (edit) =>
          edit.add("step_rules", {
            id: "sr.other",
            first_step: rule.then_step ?? "",
            then_harness: rule.first_harness ?? "",
          }),
      };
    },
  },
  {
    name: "a rule of order between a mechanism and a part of its own",
    rule: "rule-idle",
    plan: ({ machine }) => {
      const coil = most(machine.items.values(), (item) =>
        item.kind === "device" && item.parentId !== null && item.type.class === "coil"
          ? item.type.width_mm
          : 0,
      );
      return {
        victim: ["sr.other", coil.id],
        change: (edit) =>
          edit.add("step_rules", { id: "sr.other", first_item: coil.id, then_item: coil.parentId ?? "" }),
      };
    },
  },
  {
    name: "the step with the rarest skill, with one that nobody has",
    rule: "step-skill",
    plan: (sound) => {
      const step = skilledStep(sound);
      return {
        victim: [step.id],
        change: (edit) => edit.set("steps", { id: step.id }, { skill: "welding" }),
      };
    },
  },
  {
    name: "the step with the rarest skill, fixed to a station without it",
    rule: "step-station",
    plan: (sound) => {
      const step = skilledStep(sound);
      const station = sound.machine.book.tables.stations.find(({ skills }) => !skills.includes(step.skill));
      return {
        victim: [step.id, station?.id ?? ""],
        change: (edit) => edit.set("steps", { id: step.id }, { station: station?.id ?? "" }),
      };
    },
  },
  {
    name: "the longest derived step, fixed by a person to a station that is gone",
    rule: "choice-not-followed",
    plan: ({ steps }) => {
      const step = most(
        steps.steps.filter(({ kind }) => kind === "harness"),
        ({ seconds }) => seconds,
      );
      return {
        victim: [step.id, "stn.gone"],
        change: (edit) => edit.add("choices", { kind: "station", subject: step.id, value: "stn.gone" }),
      };
    },
  },
  {
    name: "a step of the designer's in which nothing is done",
    rule: "step-empty",
    plan: () => ({
      victim: [STEP],
      change: (edit) => edit.add("steps", { id: STEP, label: "Step that was added" }),
    }),
  },
  {
    name: "the fastener that holds most, in two steps of the designer",
    rule: "fastener-two-steps",
    plan: (sound) => {
      const { item } = most(screwsFor(sound, "fastener-two-steps"), ({ fit }) => fit.engagedMm);
      return {
        victim: [item.id, "st.other-1", "st.other-2"],
        change: (edit) => {
          for (const id of ["st.other-1", "st.other-2"])
            edit.add("steps", { id, label: "Step that was added", items: item.id, minutes: 1 });
        },
        follows: [some("order-loop", ids("st.other-1", "st.other-2"))],
      };
    },
  },
  {
    name: "the guide with fewest screws, in another machine only",
    rule: "fastener-no-step",
    plan: (sound) => {
      const { devices, options, step_rules } = sound.machine.book.tables;
      const ruled = new Set(step_rules.flatMap(({ first_item, then_item }) => [first_item, then_item]));
      const held = devices.filter(
        ({ id }) =>
          id.startsWith("tp.") &&
          !ruled.has(id) &&
          screwsFor(sound, "").some(({ item }) => item.holds === id),
      );
      const screwsOf = (id: string) => screwsFor(sound, "").filter(({ item }) => item.holds === id);
      const guide = least(held, ({ id }) => screwsOf(id).length);
      const other = options.find(({ usual }) => usual === "no");
      const own = ids(guide.id, ...screwsOf(guide.id).map(({ item }) => item.id));
      const solids = sound.fastening.solids.get(guide.id) ?? [];
      const beside = ids(
        ...solids.flatMap(({ box, panelId }) =>
          solidsNear(
            sound,
            panelId,
            { xMm: (box.minXMm + box.maxXMm) / 2, yMm: (box.minYMm + box.maxYMm) / 2 },
            (box.maxYMm - box.minYMm + box.maxXMm - box.minXMm) / 2 + sound.machine.book.machine.ball_mm,
          ).map(({ itemId }) => itemId),
        ),
      );
      return {
        victim: [screwsOf(guide.id)[0]?.item.id ?? "", guide.id],
        change: (edit) => edit.set("devices", { id: guide.id }, { options: other?.id ?? "" }),
        follows: [
          some("fastener-no-step", own),
          // Without it there is a hole in the wall: a ball may stay between it and what stands on either side.
          some("ball-gap", beside),
          some("ball-pocket", beside),
        ],
        ends: [some("solids-clash", own)],
      };
    },
  },
  {
    name: "the gauge with the widest limits, without them",
    rule: "gauge-missing",
    plan: ({ machine }) => {
      const row = most(
        machine.book.tables.mechanism_steps.filter(
          ({ kind, min, max }) => kind === "adjust" && min !== null && max !== null,
        ),
        ({ min, max }) => (max ?? 0) - (min ?? 0),
      );
      return {
        victim: [row.mechanism_type],
        change: (edit) =>
          edit.set(
            "mechanism_steps",
            { mechanism_type: row.mechanism_type, order: row.order },
            { min: "", max: "" },
          ),
      };
    },
  },
];
