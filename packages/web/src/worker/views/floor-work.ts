import type { BookRow } from "@pinwright/book";
import type { UnitKind } from "@pinwright/contract";
import {
  benchSteps,
  cutList,
  type HarnessResult,
  layUpOrder,
  type Machine,
  type Needed,
  optionsKey,
  testsOf,
} from "@pinwright/engine";
import { floorNeeds } from "../asks/floor-needs.ts";
import type { Model } from "../model.ts";
import { optionsOf } from "../options-of.ts";
import { type NamedId, namedItem } from "../steps/named.ts";
import { view } from "./view.ts";

/** A test of the book as the bench shows it. */
interface FloorTest extends NamedId {
  readonly kind: BookRow<"tests">["kind"];
  readonly purpose: BookRow<"tests">["purpose"];
  readonly from: string;
  readonly to: string;
  readonly unit: string;
  readonly nominal: number | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly do: string;
  readonly doZh: string;
  readonly caution: string;
  readonly cautionZh: string;
}

/** A place in the machine that holds a unit with a serial number of its own, and the step that puts it there. */
interface FloorPlace extends NamedId {
  readonly what: "board" | "harness";
  readonly type: string;
  readonly stepId: string | null;
}

/** A wire as it is laid: from the holder where its end is crimped already. */
interface LaidWire {
  readonly wireId: string;
  readonly from: string;
  readonly to: string;
}

/** Wires from one reel, or the cores of one bought cable. */
interface CutReel {
  readonly wireIds: readonly string[];
  /** Part whose lots are recorded: that of the reel or cable; the wire type where the book gives no part. */
  readonly partId: string;
  /** Blank: a cable. */
  readonly colour: string;
}

/** Everything that a unit of one kind and type takes, in the order of the work. */
export interface FloorWork {
  readonly needed: Needed;
  /** Ids of steps of assembly, or of a mechanism's own bench. */
  readonly stepIds: readonly string[];
  readonly tests: readonly FloorTest[];
  /** Steps of a machine in which it is tested, in their order. */
  readonly testStepIds: readonly string[];
  readonly places: readonly FloorPlace[];
  /** Work at the bench of a board or a harness that the book has no rows for. */
  readonly benchSteps: readonly string[];
  /** What is cut, reel by reel. */
  readonly cut: readonly CutReel[];
  /** What is laid, by the holder where it starts. */
  readonly lay: readonly (readonly LaidWire[])[];
}

/** Skill of the steps in which a machine is tested, as the shop names skills. Common practice, no source. */
const TEST_SKILL = "test";

const testOf = (row: BookRow<"tests">): FloorTest => ({
  id: row.id,
  label: row.label,
  labelZh: row.label_zh,
  kind: row.kind,
  purpose: row.purpose,
  from: row.from ?? "",
  to: row.to ?? "",
  unit: row.unit,
  nominal: row.nominal,
  min: row.min,
  max: row.max,
  do: row.do,
  doZh: row.do_zh,
  caution: row.caution,
  cautionZh: row.caution_zh,
});

function placesOf(model: Model): readonly FloorPlace[] {
  const { machine, steps, harnesses } = model.line;
  const mountedIn = new Map(steps.steps.flatMap((step) => step.itemIds.map((id) => [id, step.id] as const)));
  const laidIn = new Map(
    steps.steps.flatMap(({ harnessId, id }) => (harnessId === null ? [] : [[harnessId, id] as const])),
  );
  return [
    ...[...machine.items.values()].flatMap((item): readonly FloorPlace[] =>
      item.kind === "board"
        ? [
            {
              ...namedItem(model, item.id),
              what: "board",
              type: item.type.id,
              stepId: mountedIn.get(item.id) ?? null,
            },
          ]
        : [],
    ),
    ...[...harnesses.values()].map(
      ({ harness: { id, label, label_zh } }): FloorPlace => ({
        ...{ id, label, labelZh: label_zh },
        what: "harness",
        type: id,
        stepId: laidIn.get(id) ?? null,
      }),
    ),
  ];
}

function cutReels(machine: Machine, harness: HarnessResult): readonly CutReel[] {
  const { groups, cables } = cutList(machine, harness);
  return [
    ...groups.map(({ wireType, colour, rows }) => ({
      wireIds: rows.map(({ wireId }) => wireId),
      partId: wireType.part ?? wireType.id,
      colour,
    })),
    ...cables.map(({ cable, cores }) => ({
      wireIds: cores.map(({ wireId }) => wireId),
      partId: cable.part ?? cable.id,
      colour: "",
    })),
  ];
}

function workOf(model: Model, what: UnitKind, type: string): FloorWork {
  const { line } = model;
  const { machine } = line;
  const needed = floorNeeds(model, { what, type, steps: [] });
  const harness = what === "harness" ? line.harnesses.get(type) : undefined;
  return {
    needed,
    stepIds: needed.steps,
    tests: testsOf(line, what, type).map(testOf),
    testStepIds:
      what === "machine"
        ? line.steps.steps.flatMap(({ id, kind, skill }) =>
            kind === "own" && skill === TEST_SKILL ? [id] : [],
          )
        : [],
    places: what === "machine" ? placesOf(model) : [],
    benchSteps: benchSteps(line, what, type),
    cut: harness === undefined ? [] : cutReels(machine, harness),
    lay:
      harness === undefined
        ? []
        : layUpOrder(machine, harness).map(({ runs }) =>
            runs.flatMap(({ wires }) =>
              wires.map(({ wireId, from, to }) => ({ wireId, from: from.id, to: to.id })),
            ),
          ),
  };
}

/** A kind of unit, with the options that it was begun with. */
export interface FloorKind {
  readonly what: UnitKind;
  readonly type: string;
  readonly options: readonly string[];
}

/** What a unit of a kind and type takes; no entry as long as the machine is looked at with other options than its own. */
export const floorWork = view<FloorKind, FloorWork>({
  uses: ({ line, book }, { type }) => [
    line.steps,
    line.harnesses.get(type),
    line.harnesses.size,
    line.machine.items,
    line.machine.options,
    book.tables.options,
    book.tables.tests,
    book.tables.placements,
    book.tables.board_types,
  ],
  entries: (model, { what, type, options }) =>
    optionsKey(model.line.machine.options) === optionsKey(optionsOf(model.book, options))
      ? new Map([["", workOf(model, what, type)]])
      : new Map(),
  restsInPreview: true,
});
