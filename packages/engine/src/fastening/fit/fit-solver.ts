import { deepEqual, Query, sameMembers } from "@pinwright/kernel";
import type { FastenerFit, FastenerItem, Finding, Machine } from "../../model/index.ts";
import type { CutoutShape } from "../cutouts/cutout-shape.ts";
import { CutoutsOfPanels, type PanelCutouts } from "../cutouts/panel-cutouts.ts";
import { screwEdge } from "./edge-rule.ts";
import { type FitFacts, type FitLimits, type Fitted, fitFastener, unfit } from "./fastener-fit.ts";
import { mergeAlike } from "./merge.ts";
import { Pairs } from "./pairs.ts";
import { type Shaft, shaftOf } from "./shaft.ts";
import { headThrough, nutMissing, nutShort, nutThread, pilotSize, tapped } from "./thread-rules.ts";
import { screwNoWood, screwShort, screwThrough, threadlocker } from "./wood-rules.ts";

export interface Fits {
  readonly fits: ReadonlyMap<string, FastenerFit>;
  readonly findings: readonly Finding[];
}

/** What is known of one fastener by itself. */
interface Looked {
  readonly fit: FastenerFit;
  readonly shaft: Shaft | null;
  readonly findings: readonly Finding[];
}

type Rule = (facts: FitFacts & Fitted) => Finding | null;

/** Rules that look at one fastener by itself. */
const RULES: readonly Rule[] = [
  screwNoWood,
  screwThrough,
  screwShort,
  screwEdge,
  pilotSize,
  nutMissing,
  nutThread,
  nutShort,
  tapped,
  headThrough,
  threadlocker,
];

/**
 * How every fastener holds in its wood, nut or thread, with a memory: a fastener is looked at again only when it, its
 * panel, a cutout near it or what it holds was edited, and its neighbours only when one of them was.
 */
export class FitSolver {
  readonly #cutouts = new CutoutsOfPanels();
  readonly #limits = new Query<FitLimits>(deepEqual);
  readonly #near = new Query<readonly CutoutShape[]>(sameMembers);
  readonly #looked = new Query<Looked>(deepEqual);
  readonly #fit = new Query<FastenerFit>(deepEqual);
  readonly #shaft = new Query<Shaft | null>(deepEqual);
  readonly #pairs = new Pairs();
  readonly #fits = new Query<ReadonlyMap<string, FastenerFit>>(Object.is);
  readonly #findings = new Query<readonly Finding[]>(deepEqual);

  solve(machine: Machine): Fits {
    const limits = this.#limits.ask("all", [machine.shop.numbers], () => limitsOf(machine));
    const cutouts = this.#cutouts.solve(machine);
    const looked: Looked[] = [];
    for (const item of machine.items.values())
      if (item.kind === "fastener")
        looked.push(this.#look(machine, item, limits, cutouts.get(item.place.panelId)));
    // Asked apart, so that what holds as before stays the same object when only its place was edited.
    const fits = looked.map(({ fit }) => this.#fit.ask(fit.fastenerId, [fit], () => fit));
    const shafts = looked.flatMap(
      ({ fit, shaft }) => this.#shaft.ask(fit.fastenerId, [shaft], () => shaft) ?? [],
    );
    const pairs = this.#pairs.solve(shafts, limits.spacingDiameters);
    const own = looked.map(({ findings }) => findings);
    return {
      fits: this.#fits.ask("all", fits, () => new Map(fits.map((fit) => [fit.fastenerId, fit]))),
      findings: this.#findings.ask("all", [pairs, ...own], () => [...mergeAlike(own.flat()), ...pairs]),
    };
  }

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    for (const part of [this.#cutouts, this.#near, this.#looked, this.#fit, this.#shaft, this.#pairs])
      part.sweep();
  }

  /** How much was looked at anew so far, for tests of growth. */
  get computed(): Readonly<Record<"fasteners" | "cells", number>> {
    return { fasteners: this.#looked.computed, cells: this.#pairs.computed };
  }

  #look(machine: Machine, item: FastenerItem, limits: FitLimits, cutouts: PanelCutouts | undefined): Looked {
    const panel = machine.panels.get(item.place.panelId);
    const outline = machine.panelOutlines.get(item.place.panelId);
    const near = this.#near.ask(item.id, [item, limits, cutouts], () => nearTo(item, limits, cutouts));
    const isPlastic = isPlasticHeld(machine, item);
    return this.#looked.ask(item.id, [item, panel, outline, near, limits, isPlastic], () => {
      if (panel === undefined) return { fit: unfit(item.id), shaft: null, findings: [] };
      const facts = { item, panel, outline, near, limits, isPlastic };
      return look(facts, fitFastener(facts));
    });
  }
}

function look({ item, panel, outline, near, limits, isPlastic }: FitFacts, fitted: Fitted): Looked {
  const { fit, wood, hole } = fitted;
  // Written out, since spreading objects is what takes longest of all that is done for one fastener.
  const facts = { item, panel, outline, near, limits, isPlastic, fit, wood, hole };
  const findings: Finding[] = [];
  for (const rule of RULES) {
    const finding = rule(facts);
    if (finding !== null) findings.push(finding);
  }
  return { fit, shaft: shaftOf(facts), findings };
}

function limitsOf({ shop: { numbers } }: Machine): FitLimits {
  return {
    farMarginMm: numbers.screw_far_margin_mm,
    woodDiameters: numbers.wood_engagement_diameters,
    threadDiameters: numbers.thread_engagement_diameters,
    edgeDiameters: numbers.screw_edge_diameters,
    spacingDiameters: numbers.screw_spacing_diameters,
  };
}

/** Cutouts whose boxes come within the edge distance of a fastener, and at least under its thread. */
function nearTo(
  { type, place: { xMm, yMm } }: FastenerItem,
  { edgeDiameters }: FitLimits,
  cutouts: PanelCutouts | undefined,
): readonly CutoutShape[] {
  const byMm = Math.max(edgeDiameters, 1) * type.diameter_mm;
  return (
    cutouts?.index.near({
      minXMm: xMm - byMm,
      minYMm: yMm - byMm,
      maxXMm: xMm + byMm,
      maxYMm: yMm + byMm,
    }) ?? []
  );
}

/** Whether what a fastener holds is a plastic, or bears on one, which threadlocker cracks. */
function isPlasticHeld({ items }: Machine, { holds }: FastenerItem): boolean {
  const held = holds === null ? undefined : items.get(holds);
  return (held?.kind === "device" || held?.kind === "mechanism") && held.type.plastic;
}
