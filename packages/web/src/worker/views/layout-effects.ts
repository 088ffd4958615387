import type { Finding, HarnessResult, LineResult, SizedBranch, SizedWire } from "@pinwright/engine";
import { deepEqual } from "@pinwright/kernel";
import { findingKey } from "./layout-findings.ts";
import { wireTest } from "./layout-trace.ts";
import { view } from "./view.ts";

/** Something that the last change, or the drag that is going on, did to the wiring. */
export type LayoutEffect =
  | {
      readonly what: "wire";
      readonly id: string;
      /** As printed: harness number, wire number. */
      readonly label: string;
      readonly colour: string;
      readonly netId: string;
      readonly lengthMm: number;
      /** Null: the wire was not there before, or is no longer. */
      readonly changeMm: number | null;
      readonly state: "same" | "changed" | "new" | "gone";
    }
  | {
      readonly what: "bundle";
      readonly harnessId: string;
      readonly number: number;
      readonly branchId: string;
      readonly kind: SizedBranch["kind"];
      readonly laidMm: number;
      readonly beforeMm: number | null;
      readonly wires: number;
      readonly state: "changed" | "new" | "gone";
    }
  | {
      readonly what: "harness";
      readonly harnessId: string;
      readonly number: number;
      readonly metres: number;
      readonly metresChange: number;
      readonly minutes: number;
      readonly minutesChange: number;
    }
  | { readonly what: "finding"; readonly finding: Finding; readonly state: "new" | "gone" | "changed" };

type Entry = readonly [string, LayoutEffect];

const wireEffect = (
  { harness }: HarnessResult,
  wire: SizedWire,
  state: "same" | "changed" | "new" | "gone",
  changeMm: number | null,
): Entry => [
  `wire ${wire.id}`,
  {
    what: "wire",
    id: wire.id,
    label: `${harness.number}-${wire.number}`,
    colour: wire.colour,
    netId: wire.netId,
    lengthMm: wire.finishedMm,
    changeMm,
    state,
  },
];

function* wireEffects(
  before: HarnessResult | undefined,
  after: HarnessResult | undefined,
  touches: (wire: SizedWire) => boolean,
): Generator<Entry> {
  const old = new Map(before?.wires.map((wire) => [wire.id, wire]));
  if (after !== undefined)
    for (const wire of after.wires) {
      const was = old.get(wire.id);
      old.delete(wire.id);
      if (was === undefined) yield wireEffect(after, wire, "new", null);
      else {
        const changeMm = wire.finishedMm - was.finishedMm;
        if (changeMm !== 0) yield wireEffect(after, wire, "changed", changeMm);
        else if (touches(wire)) yield wireEffect(after, wire, "same", 0);
      }
    }
  if (before !== undefined) for (const wire of old.values()) yield wireEffect(before, wire, "gone", null);
}

function* bundleEffects(
  before: HarnessResult | undefined,
  after: HarnessResult | undefined,
): Generator<Entry> {
  const { harness } = after ?? before ?? {};
  if (harness === undefined) return;
  const old = new Map(before?.branches.map((branch) => [branch.id, branch]));
  const effect = (
    { id, kind, bundle }: SizedBranch,
    state: "changed" | "new" | "gone",
    beforeMm: number | null,
  ): Entry => [
    `bundle ${harness.id} ${id}`,
    {
      what: "bundle",
      harnessId: harness.id,
      number: harness.number,
      branchId: id,
      kind,
      laidMm: bundle.laidMm,
      beforeMm,
      wires: bundle.wires,
      state,
    },
  ];
  for (const branch of after?.branches ?? []) {
    const was = old.get(branch.id);
    old.delete(branch.id);
    if (was === undefined) yield effect(branch, "new", null);
    else if (was.bundle.laidMm !== branch.bundle.laidMm) yield effect(branch, "changed", was.bundle.laidMm);
  }
  for (const branch of old.values()) yield effect(branch, "gone", branch.bundle.laidMm);
}

function* harnessEffect(before: HarnessResult, after: HarnessResult): Generator<Entry> {
  const a = before.route.work;
  const b = after.route.work;
  if (a.metres === b.metres && a.minutes === b.minutes) return;
  yield [
    `harness ${after.harness.id}`,
    {
      what: "harness",
      harnessId: after.harness.id,
      number: after.harness.number,
      metres: b.metres,
      metresChange: b.metres - a.metres,
      minutes: b.minutes,
      minutesChange: b.minutes - a.minutes,
    },
  ];
}

function* findingEffects(before: readonly Finding[], after: readonly Finding[]): Generator<Entry> {
  if (before === after) return;
  const old = new Map(before.map((finding) => [findingKey(finding), finding]));
  for (const finding of after) {
    const key = findingKey(finding);
    const was = old.get(key);
    old.delete(key);
    const state = was === undefined ? "new" : deepEqual(was, finding) ? null : "changed";
    if (state !== null) yield [`finding ${key}`, { what: "finding", finding, state }];
  }
  for (const [key, finding] of old) yield [`finding ${key}`, { what: "finding", finding, state: "gone" }];
}

function* effectsOf(
  base: LineResult,
  line: LineResult,
  touches: (wire: SizedWire) => boolean,
): Generator<Entry> {
  for (const id of new Set([...base.harnesses.keys(), ...line.harnesses.keys()])) {
    const before = base.harnesses.get(id);
    const after = line.harnesses.get(id);
    if (before === after) {
      for (const wire of after?.wires ?? [])
        if (after !== undefined && touches(wire)) yield wireEffect(after, wire, "same", 0);
      continue;
    }
    yield* wireEffects(before, after, touches);
    yield* bundleEffects(before, after);
    if (before !== undefined && after !== undefined) yield* harnessEffect(before, after);
  }
  yield* findingEffects(base.findings, line.findings);
}

/** What the last change, or the drag that is going on, does to wires, bundles, harnesses and findings. */
export const layoutEffects = view<{ readonly ids: readonly string[] }, LayoutEffect>({
  uses: ({ line, base }) => [line.findings, ...line.harnesses.values(), base],
  entries: (model, { ids }) => {
    const touches = ids.length === 0 ? () => false : wireTest(model, ids);
    return new Map(effectsOf(model.base, model.line, touches));
  },
});
