import { compareText, NestedQuery, Query, roundTo, sameMembers } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding, type Solid } from "../../model/index.ts";
import type { PanelCutouts } from "../cutouts/panel-cutouts.ts";
import type { SolidIndex } from "../solids/solid-index.ts";
import { type Solids, solidIndexOf } from "../solids/solids-solver.ts";
import { deepIn, type Nearness, nearPanel, nearSolid, uprightOf } from "./meeting.ts";
import { type Relation, Relations } from "./relations.ts";
import { boxesNear, movedBox, type Rigid, solidBox } from "./rigid.ts";
import { oneThing } from "./settings.ts";
import { grownBox, type Stand, Stands } from "./stand.ts";

type Findings = readonly Finding[];

/** Two things of different panels that come too near. */
interface PoseMeeting extends Nearness {
  readonly rule: "pose-clash" | "glass-clearance";
  /** Two items or two panels in code-point order, or an item and the other panel. */
  readonly subjects: readonly [string, string];
  readonly poses: readonly string[];
  readonly wantedMm: number;
}

type Meetings = readonly PoseMeeting[];

interface Clearances {
  readonly poseMm: number;
  readonly glassMm: number;
}

/** Panels that meet no deeper than this rest on each other or hang on a hinge, mm. */
const REST_MM = 0.5;

/** What of different panels meets in any pose, with a memory. */
export class PoseClashes {
  readonly #relations = new Relations();
  readonly #stands = new Stands();
  readonly #pairs = new NestedQuery<Meetings, Nearness | null>(sameMembers, Object.is);
  readonly #all = new Query<Findings>(sameMembers);

  solve(machine: Machine, solids: Solids, cutouts: ReadonlyMap<string, PanelCutouts>): Findings {
    if (machine.book.tables.pose_places.length === 0) return [];
    const { clear_pose_mm: poseMm, clear_glass_mm: glassMm } = machine.shop.numbers;
    const stands = this.#stands.of(machine, solids, cutouts);
    const found: Meetings[] = [];
    for (const relation of this.#relations.of(machine, stands, Math.max(poseMm, glassMm))) {
      const a = stands.get(relation.a);
      const b = stands.get(relation.b);
      if (a === undefined || b === undefined) continue;
      const key = `${relation.a} ${relation.b} ${relation.poses.join(" ")}`;
      const own = this.#pairs.ask(key, [relation, a, b, poseMm, glassMm], (parts) => {
        const pair = new StandPair(machine, relation, { poseMm, glassMm }, solidIndexOf(solids), parts);
        return pair.meetings(a, b);
      });
      if (own.length > 0) found.push(own);
    }
    return this.#all.ask("all", found, () => findingsOf(found.flat()));
  }

  sweep(): void {
    for (const query of [this.#relations, this.#stands, this.#pairs, this.#all]) query.sweep();
  }
}

/** Two panels with what stands on them, in one way of standing to each other. */
class StandPair {
  readonly #items: Machine["items"];
  readonly #relation: Relation;
  readonly #clearances: Clearances;
  readonly #index: SolidIndex;
  readonly #parts: Query<Nearness | null>;
  readonly #found: PoseMeeting[] = [];

  constructor(
    { items }: Machine,
    relation: Relation,
    clearances: Clearances,
    index: SolidIndex,
    parts: Query<Nearness | null>,
  ) {
    this.#items = items;
    this.#relation = relation;
    this.#clearances = clearances;
    this.#index = index;
    this.#parts = parts;
  }

  meetings(a: Stand, b: Stand): Meetings {
    const { aInB, bInA, changes } = this.#relation;
    // The fewer are brought into the frame of the many, where these are found by place.
    if (a.solids.length < b.solids.length) this.#solids(a, b, aInB);
    else this.#solids(b, a, bInA);
    this.#panel(a, b, { rigid: bInA, back: aInB });
    this.#panel(b, a, { rigid: aInB, back: bInA });
    // Panels that always stand to each other in the same way are joined there.
    if (changes) this.#slabs(a, b, bInA);
    return this.#found;
  }

  /** Solids of one panel against those of another. */
  #solids(few: Stand, many: Stand, rigid: Rigid): void {
    const { poseMm } = this.#clearances;
    if (few.box === null || many.box === null) return;
    if (!boxesNear(movedBox(rigid, few.box), many.box, poseMm)) return;
    for (const solid of few.solids.flat()) {
      const box = movedBox(rigid, solidBox(solid));
      if (!boxesNear(box, many.box, poseMm)) continue;
      const room = grownBox(box, poseMm);
      for (const other of this.#index.near(many.panelId, room, room.lowMm, room.highMm)) {
        if (oneThing(this.#items, solid, other)) continue;
        const near = this.#ask(solid, other.id, [other], () =>
          nearSolid(other, uprightOf(solid), rigid, poseMm),
        );
        const [first, second] = [solid.itemId, other.itemId].sort(compareText);
        this.#add("pose-clash", [first ?? "", second ?? ""], near, poseMm);
      }
    }
  }

  /** Solids of a panel against another panel itself. */
  #panel(panel: Stand, other: Stand, { rigid, back }: { readonly rigid: Rigid; readonly back: Rigid }): void {
    const { glassMm, poseMm } = this.#clearances;
    const { rule, wantedMm } = panel.glass
      ? ({ rule: "glass-clearance", wantedMm: glassMm } as const)
      : ({ rule: "pose-clash", wantedMm: poseMm } as const);
    const room = grownBox(movedBox(back, panel.slabBox), wantedMm);
    for (const solid of this.#index.near(other.panelId, room, room.lowMm, room.highMm)) {
      if (!boxesNear(movedBox(rigid, solidBox(solid)), panel.slabBox, wantedMm)) continue;
      if (this.#joins(solid)) continue;
      const near = this.#ask(solid, panel.panelId, [panel.area.ring, panel.area.cutouts], () =>
        nearPanel(panel.area, uprightOf(solid), rigid, wantedMm),
      );
      this.#add(rule, [solid.itemId, panel.panelId], near, wantedMm);
    }
  }

  /** A screw's thread that may go into the next panel, to which its own is joined. */
  #joins({ kind, id }: Solid): boolean {
    return kind === "fastener" && !this.#relation.changes && /#(?:shank|point)$/u.test(id);
  }

  #slabs(a: Stand, b: Stand, bInA: Rigid): void {
    if (!boxesNear(movedBox(bInA, b.slabBox), a.slabBox, 0)) return;
    const overlapMm2 = deepIn(a.area, b.slab, bInA, REST_MM);
    if (overlapMm2 > 0) this.#add("pose-clash", [a.panelId, b.panelId], { gapMm: 0, overlapMm2 }, 0);
  }

  #ask(
    solid: Solid,
    with_: string,
    inputs: readonly unknown[],
    near: () => Nearness | null,
  ): Nearness | null {
    return this.#parts.ask(
      `${solid.id} ${with_}`,
      [solid, this.#relation, this.#clearances.poseMm, this.#clearances.glassMm, ...inputs],
      near,
    );
  }

  #add(
    rule: PoseMeeting["rule"],
    subjects: PoseMeeting["subjects"],
    near: Nearness | null,
    wantedMm: number,
  ): void {
    if (near !== null) this.#found.push({ ...near, rule, subjects, poses: this.#relation.poses, wantedMm });
  }
}

/** One finding for every two things: the poses in which they meet, and the worst of it. */
function findingsOf(found: Meetings): Findings {
  const worst = new Map<string, PoseMeeting>();
  for (const meeting of found) {
    const key = `${meeting.rule} ${meeting.subjects.join(" ")}`;
    const known = worst.get(key);
    if (known === undefined) worst.set(key, meeting);
    else {
      const { gapMm, overlapMm2 } = isWorse(meeting, known) ? meeting : known;
      const poses = [...new Set([...known.poses, ...meeting.poses])];
      worst.set(key, { ...known, gapMm, overlapMm2, poses });
    }
  }
  return [...worst].sort(([a], [b]) => compareText(a, b)).map(([, meeting]) => findingOf(meeting));
}

const isWorse = (a: Nearness, b: Nearness): boolean =>
  a.overlapMm2 > b.overlapMm2 || (a.overlapMm2 === b.overlapMm2 && a.gapMm < b.gapMm);

function findingOf({ rule, subjects, poses, gapMm, overlapMm2, wantedMm }: PoseMeeting): Finding {
  const severity = overlapMm2 > 0 ? "error" : "warning";
  return makeFinding(rule, severity, subjects, {
    poses: [...poses].sort(compareText).join(", "),
    gap_mm: roundTo(gapMm, 0.1),
    overlap_mm2: roundTo(overlapMm2, 0.1),
    wanted_mm: wantedMm,
  });
}
