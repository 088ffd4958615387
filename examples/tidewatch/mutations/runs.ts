import type { ShopRow, ShopTables } from "@pinwright/book";
import { dayText, type PlanInput, type RunsPlan } from "@pinwright/engine";
import { most } from "./about.ts";
import type { Consequence } from "./mutation.ts";

/** A plan without a fault. */
export interface SoundPlan {
  readonly input: PlanInput;
  readonly plan: RunsPlan;
}

/** A deliberate fault in the runs, stages or stock of the shop, which a rule must name. */
export interface RunMutation {
  /** The fault in a few words, with the predicate that picks its victim. */
  readonly name: string;
  readonly rule: string;
  readonly plan: (sound: SoundPlan) => {
    readonly victim: readonly string[];
    readonly change: (tables: ShopTables) => ShopTables;
    readonly follows?: readonly Consequence[];
    readonly ends?: readonly Consequence[];
  };
}

const any = (rule: string): Consequence => ({ rule, where: () => true });

/** With other days orders fall into other weeks, and samples are asked for on other days. */
const OTHER_DAYS: readonly Consequence[] = [any("order-least"), any("run-not-approved")];

const openRuns = ({ input }: SoundPlan): readonly ShopRow<"runs">[] =>
  input.shop.tables.runs.filter((run) => run.state !== "done");

const largestRun = (sound: SoundPlan): ShopRow<"runs"> => most(openRuns(sound), (run) => run.machines);

const changed = <R extends object>(rows: readonly R[], is: (row: R) => boolean, cells: Partial<R>): R[] =>
  rows.map((row) => (is(row) ? { ...row, ...cells } : row));

const setRun = (tables: ShopTables, id: string, cells: Partial<ShopRow<"runs">>): ShopTables => ({
  ...tables,
  runs: changed(tables.runs, (run) => run.id === id, cells),
});

/** Stage that has the most work on one machine. */
const busiest = ({ plan }: SoundPlan): string =>
  most(plan.stages, (block) => block.minutesPerMachine).stageId;

/** Mistakes in runs, mixes, stages, calendars, terms and stock. */
export const RUNS: readonly RunMutation[] = [
  {
    name: "the largest run ships a week from now",
    rule: "run-late",
    plan: (sound) => {
      const { id } = largestRun(sound);
      const ship = dayText(sound.input.today + 7);
      return { victim: [id], change: (tables) => setRun(tables, id, { ship }), follows: OTHER_DAYS };
    },
  },
  {
    name: "the largest run was to ship yesterday",
    rule: "run-past",
    plan: (sound) => {
      const { id } = largestRun(sound);
      const ship = dayText(sound.input.today - 1);
      return { victim: [id], change: (tables) => setRun(tables, id, { ship }), follows: OTHER_DAYS };
    },
  },
  {
    name: "the mix of the largest run asks for one machine more than it has",
    rule: "run-mix",
    plan: (sound) => {
      const run = largestRun(sound);
      const row = sound.input.shop.tables.run_mix.find((own) => own.run === run.id);
      return {
        victim: [run.id],
        change: (tables) => ({
          ...tables,
          run_mix: changed(tables.run_mix, (own) => own.run === run.id && own.options === row?.options, {
            machines: run.machines + 1,
          }),
        }),
        follows: OTHER_DAYS,
      };
    },
  },
  {
    name: "a row of the mix of the largest run names an option that the book lacks",
    rule: "run-options",
    plan: (sound) => {
      const { id } = largestRun(sound);
      return {
        victim: [id, "mains-100"],
        change: (tables) => ({
          ...tables,
          run_mix: changed(tables.run_mix, (own) => own.run === id, { options: "mains-100" }),
        }),
        follows: OTHER_DAYS,
      };
    },
  },
  {
    name: "the smallest run builds another machine",
    rule: "run-other-book",
    plan: (sound) => {
      const { id } = most(openRuns(sound), (run) => -run.machines);
      return {
        victim: [id, "another"],
        change: (tables) => setRun(tables, id, { book: "another" }),
        follows: OTHER_DAYS,
        ends: OTHER_DAYS,
      };
    },
  },
  {
    name: "nobody is left at the benches of the stage that has the most work",
    rule: "stage-capacity",
    plan: (sound) => {
      const id = busiest(sound);
      const kind = sound.input.shop.tables.stages.find((stage) => stage.id === id)?.kind;
      return {
        victim: [id],
        change: (tables) => ({
          ...tables,
          benches: changed(
            tables.benches,
            (bench) => bench.kind === kind || (kind === "boards" && bench.kind === "board"),
            { people: 0 },
          ),
        }),
        follows: OTHER_DAYS,
      };
    },
  },
  {
    name: "a stage that others wait for waits for the last of them",
    rule: "stage-circle",
    plan: ({ input }) => {
      const { stages } = input.shop.tables;
      const last = stages.find(
        (stage) => stage.after.length > 0 && !stages.some((s) => s.after.includes(stage.id)),
      );
      const before = stages.find((stage) => last?.after.includes(stage.id));
      const [a = "", b = ""] = [last?.id, before?.id];
      return {
        victim: [a, b],
        change: (tables) => ({
          ...tables,
          stages: changed(tables.stages, (stage) => stage.id === b, { after: [a] }),
        }),
        follows: [...OTHER_DAYS, any("stage-capacity"), any("run-late")],
        ends: OTHER_DAYS,
      };
    },
  },
  {
    name: "one bench of a stage that has several is moved to the other site",
    rule: "calendar-site",
    plan: ({ input }) => {
      const { stages, benches, sites } = input.shop.tables;
      const stage = most(stages, (own) => own.benches.length);
      const bench = benches.find((own) => own.id === stage.benches[0]);
      const site = sites.find((own) => own.id !== bench?.site)?.id ?? null;
      return {
        victim: [stage.id],
        change: (tables) => ({
          ...tables,
          benches: changed(tables.benches, (own) => own.id === bench?.id, { site }),
        }),
        follows: OTHER_DAYS,
        ends: OTHER_DAYS,
      };
    },
  },
  {
    name: "the supplier of the fewest things takes no order below a million",
    rule: "order-least",
    plan: ({ plan }) => {
      const { supplierId } = most(plan.orders, (order) => -order.lines.length);
      return {
        victim: [supplierId],
        change: (tables) => ({
          ...tables,
          suppliers: changed(tables.suppliers, (own) => own.id === supplierId, { least_order: 1e6 }),
        }),
      };
    },
  },
  {
    name: "more of a part is kitted than was ever there",
    rule: "stock-negative",
    plan: ({ input }) => {
      const [movement] = input.shop.tables.movements;
      const part = movement?.part ?? "";
      return {
        victim: [part, "mv.wrong"],
        change: (tables) => {
          const wrong = tables.movements.map((row) => ({
            ...row,
            id: "mv.wrong",
            day: dayText(input.today),
            kind: "kitted" as const,
            quantity: 1e6,
            reason: "",
            order: null,
          }));
          return { ...tables, movements: [...tables.movements, ...wrong.slice(0, 1)] };
        },
      };
    },
  },
  {
    name: "the bought part of which the largest run lacks the most has no price any more",
    rule: "need-unsourced",
    plan: (sound) => {
      const { id } = largestRun(sound);
      const { plan, input } = sound;
      const byWay = new Set(input.shop.tables.ways.map((way) => way.part));
      const needs = plan.needs.filter((need) => need.runId === id && !byWay.has(need.partId));
      const bought = needs.filter((need) => plan.sources.get(need.partId)?.kind === "buy");
      const { partId } = most(bought, (need) => Number(need.net));
      return {
        victim: [partId, id],
        change: (tables) => ({ ...tables, prices: tables.prices.filter((row) => row.part !== partId) }),
        follows: OTHER_DAYS,
      };
    },
  },
  {
    name: "the approved sample of a part that is in an order is sent back after all",
    rule: "run-not-approved",
    plan: ({ input, plan }) => {
      const ordered = new Set(plan.orders.flatMap((order) => order.lines.map((line) => line.partId)));
      const asked = new Set(plan.articles.map((article) => article.partId));
      const row = input.shop.tables.samples.findLast(
        (sample) => sample.state === "approved" && ordered.has(sample.part) && !asked.has(sample.part),
      );
      const part = row?.part ?? "";
      return {
        victim: [part],
        change: (tables) => ({
          ...tables,
          samples: changed(tables.samples, (sample) => sample.part === part, { state: "sent-back" }),
        }),
        follows: OTHER_DAYS,
      };
    },
  },
];
