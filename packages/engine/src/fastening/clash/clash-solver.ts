import { compareText, NestedQuery, Query, roundTo, SharedMemory, sameMembers } from "@pinwright/kernel";
import {
  type FastenerItem,
  type Finding,
  groupRows,
  type HarnessResult,
  type Machine,
  makeFinding,
  type Solid,
} from "../../model/index.ts";
import { CutoutsOfPanels, type PanelCutouts } from "../cutouts/panel-cutouts.ts";
import type { Solids } from "../solids/solids-solver.ts";
import { type Blocked, blockedBy } from "./blocked.ts";
import { type Cell, Cells } from "./cells.ts";
import { type Contact, type ContactContext, contactOf } from "./contact.ts";
import { checkPanelArea, type PanelArea, panelArea, panelRing } from "./panel-area.ts";
import { PoseClashes } from "./poses.ts";
import { clashSettings, electricItems, farthestMm, wholeId } from "./settings.ts";
import { checkStandOffs } from "./stand-offs.ts";
import { type Tube, tubesOf } from "./tubes.ts";

type Findings = readonly Finding[];
type Met = Contact | Blocked;

const NONE: readonly never[] = [];

/** What stands in the way of what else, in every pose, with a memory. */
export class ClashSolver {
  readonly #cutouts = new CutoutsOfPanels();
  readonly #tubes = new NestedQuery<readonly Tube[], Tube | null>(sameMembers, Object.is);
  /** What meets in each cell, kept for as long as what pairs are judged by is the same. */
  readonly #cells = new Query<Query<readonly Met[]>>(Object.is);
  readonly #met = new Query<Findings>(sameMembers);
  readonly #boards = new Query<Findings>(sameMembers);
  readonly #areas = new SharedMemory<readonly Solid[], Findings>();
  readonly #poses = new PoseClashes();
  readonly #all = new Query<Findings>(sameMembers);
  #looked = 0;

  solve(machine: Machine, solids: Solids, harnesses: ReadonlyMap<string, HarnessResult>): Findings {
    const cutouts = this.#cutouts.solve(machine);
    const found = [
      this.#meetings(machine, solids, harnesses),
      ...this.#standOffs(machine),
      ...this.#panelAreas(machine, solids, cutouts),
      this.#poses.solve(machine, solids, cutouts),
    ];
    return this.#all.ask("all", found, () => found.flat());
  }

  /** How many cells of panels were looked at so far, for tests of growth. */
  get computed(): number {
    return this.#looked;
  }

  sweep(): void {
    for (const query of [
      this.#cutouts,
      this.#tubes,
      this.#cells,
      this.#met,
      this.#boards,
      this.#poses,
      this.#all,
    ])
      query.sweep();
  }

  /** What meets on the sides of panels: solids with each other, and bundles with solids. */
  #meetings(machine: Machine, solids: Solids, harnesses: ReadonlyMap<string, HarnessResult>): Findings {
    const settings = clashSettings(machine);
    const electric = electricItems(machine);
    const { items, panels, shop } = machine;
    const cells = new Cells<Solid | Tube>(farthestMm(settings) / 2);
    for (const own of solids.values()) for (const solid of own) cells.add(solid);
    for (const tube of this.#allTubes(machine, harnesses)) cells.add(tube, false);
    const context = { items, panels, settings, electric };
    const memory = this.#cells.ask("all", [shop, panels, electric], newMemory);
    const met: (readonly Met[])[] = [];
    for (const cell of cells.cells()) {
      const own = memory.ask(cell.key, cell.members, () => {
        this.#looked++;
        return meetingsOf(cells, cell, context);
      });
      if (own.length > 0) met.push(own);
    }
    memory.sweep();
    return this.#met.ask("all", met, () => meetingFindings(met.flat()));
  }

  #allTubes(machine: Machine, harnesses: ReadonlyMap<string, HarnessResult>): readonly Tube[] {
    const itemOf = (landingId: string): string | null => {
      const landing = machine.landings.get(landingId);
      const item = landing === undefined ? undefined : machine.items.get(landing.itemId);
      return item === undefined ? null : wholeId(item);
    };
    return [...harnesses.values()].flatMap((result) =>
      this.#tubes.ask(result.harness.id, [result.harness, result.route, result.branches], (parts) =>
        tubesOf(result, parts, itemOf),
      ),
    );
  }

  #standOffs(machine: Machine): readonly Findings[] {
    const standOffs: FastenerItem[] = [];
    for (const item of machine.items.values())
      if (item.kind === "fastener" && item.type.kind === "standoff") standOffs.push(item);
    const byBoard = groupRows(standOffs, (item) => item.holds);
    const findings: Findings[] = [];
    for (const item of machine.items.values()) {
      if (item.kind !== "board") continue;
      const own = byBoard.get(item.id) ?? NONE;
      findings.push(this.#boards.ask(item.id, [item, ...own], () => checkStandOffs(item, own)));
    }
    return findings;
  }

  #panelAreas(
    machine: Machine,
    solids: Solids,
    cutouts: ReadonlyMap<string, PanelCutouts>,
  ): readonly Findings[] {
    const { movingMm } = clashSettings(machine);
    const findings: Findings[] = [];
    const areas = new Map<string, Area | null>();
    for (const [id, own] of solids) {
      const item = machine.items.get(id);
      if (item === undefined) continue;
      const { panelId } = item.place;
      let area = areas.get(panelId);
      if (area === undefined) {
        area = areaOf(machine, panelId, cutouts.get(panelId), movingMm);
        areas.set(panelId, area);
      }
      if (area === null) continue;
      const { panel, inputs } = area;
      findings.push(this.#areas.ask(own, inputs, () => checkPanelArea(item, own, panel, movingMm)));
    }
    return findings;
  }
}

const newMemory = (): Query<readonly Met[]> => new Query<readonly Met[]>(sameMembers);

/** A panel with what the findings on it are remembered by. */
interface Area {
  readonly panel: PanelArea;
  readonly inputs: readonly unknown[];
}

function areaOf(
  machine: Machine,
  panelId: string,
  cutouts: PanelCutouts | undefined,
  movingMm: number,
): Area | null {
  const panel = machine.panels.get(panelId);
  const ring = panelRing(machine, panelId);
  if (panel === undefined || ring === null) return null;
  return {
    panel: panelArea(ring, panel.thickness_mm, cutouts),
    inputs: [panel, machine.panelOutlines.get(panelId), cutouts, movingMm],
  };
}

const isTube = (member: Solid | Tube): member is Tube => "harnessId" in member;

function meetingsOf(
  cells: Cells<Solid | Tube>,
  cell: Cell<Solid | Tube>,
  context: ContactContext,
): readonly Met[] {
  const met: Met[] = [];
  cells.pairs(cell, (a, b) => {
    if (isTube(a)) return;
    const found = isTube(b) ? blocked(b, a, context) : contactOf(a, b, context);
    if (found !== null) met.push(found);
  });
  return met;
}

function blocked(tube: Tube, solid: Solid, { items, panels, settings }: ContactContext): Blocked | null {
  return blockedBy(tube, solid, items, panels.get(solid.panelId)?.thickness_mm ?? 0, settings);
}

/** One finding for every two items, and for every branch and item: where they are worst. */
function meetingFindings(met: readonly Met[]): Findings {
  const worst = new Map<string, Met>();
  for (const each of met) {
    const name = nameOf(each);
    const known = worst.get(name);
    if (known === undefined || isWorse(each, known)) worst.set(name, each);
  }
  return [...worst]
    .sort(([a], [b]) => compareText(a, b))
    .map(([, each]) => ("tube" in each ? blockedFinding(each) : contactFinding(each)));
}

function nameOf(met: Met): string {
  if ("tube" in met) return `bundle-blocked ${met.tube.harnessId} ${met.tube.branchId} ${met.solid.itemId}`;
  return `${met.rule} ${subjectsOf(met).join(" ")}`;
}

/** The board first; else in code-point order. */
function subjectsOf({ rule, a, b }: Contact): readonly [string, string] {
  if (rule === "board-over" || compareText(a.itemId, b.itemId) < 0) return [a.itemId, b.itemId];
  return [b.itemId, a.itemId];
}

function isWorse(a: Met, b: Met): boolean {
  if ("tube" in a) return !("tube" in b) || a.extraMm > b.extraMm;
  if ("tube" in b) return false;
  if (a.rule === "board-over") return a.gapMm < b.gapMm;
  return a.overlapMm2 > b.overlapMm2 || (a.overlapMm2 === b.overlapMm2 && a.gapMm < b.gapMm);
}

function blockedFinding({ tube, solid, extraMm, spareMm }: Blocked): Finding {
  const severity = tube.kind === "lane" || solid.moves ? "error" : "warning";
  return makeFinding("bundle-blocked", severity, [tube.branchId, tube.harnessId, solid.itemId], {
    diameter_mm: roundTo(tube.diameterMm, 0.1),
    extra_mm: roundTo(extraMm, 1),
    spare_mm: roundTo(spareMm, 1),
    moves: solid.moves,
  });
}

function contactFinding(contact: Contact): Finding {
  const { rule, a, b, gapMm, overlapMm2, wantedMm } = contact;
  const subjects = subjectsOf(contact);
  const gap = { gap_mm: roundTo(gapMm, 0.01), wanted_mm: wantedMm };
  if (rule === "board-over") {
    const severity = gapMm < 0 ? "error" : "warning";
    return makeFinding("board-over", severity, subjects, { ...gap, overlap_mm2: roundTo(overlapMm2, 1) });
  }
  return makeFinding("solids-clash", overlapMm2 > 0 ? "error" : "warning", subjects, {
    ...gap,
    overlap_mm2: roundTo(overlapMm2, 0.1),
    from_mm: roundTo(Math.max(a.lowMm, b.lowMm), 0.1),
    to_mm: roundTo(Math.min(a.highMm, b.highMm), 0.1),
    moves: a.moves || b.moves,
  });
}
