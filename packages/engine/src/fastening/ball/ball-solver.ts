import {
  compareText,
  deepEqual,
  NestedQuery,
  Query,
  type RingMm,
  roundTo,
  sameMembers,
} from "@pinwright/kernel";
import {
  appliesTo,
  type Finding,
  type Machine,
  makeFinding,
  type Severity,
  type Solid,
} from "../../model/index.ts";
import { cutoutShape } from "../cutouts/cutout-shape.ts";
import { cutoutRings } from "../solids/openings.ts";
import type { Solids } from "../solids/solids-solver.ts";
import type { Cells } from "./cells.ts";
import { type Low, lowSolids } from "./clearance.ts";
import { type Gap, PairMemory } from "./gaps.ts";
import { obstacleOf, outermost } from "./obstacles.ts";
import { BallRoom, type PlayingSurface } from "./panel-ball.ts";

/** What the ball is checked against on one panel. */
interface Limits {
  readonly panelId: string;
  readonly pocketMm: number;
  readonly gapMm: number;
  readonly clearMm: number;
}

type Rings = readonly RingMm[];

/** Where the ball would be caught, with a memory: nothing is done while nothing on the playing surface changes. */
export class BallSolver {
  readonly #panels = new NestedQuery<readonly Finding[], Cells>(deepEqual, Object.is);
  readonly #solids = new Query<readonly Solid[]>(sameMembers);
  readonly #outlines = new Query<Rings>(deepEqual);
  readonly #holes = new Query<readonly Rings[]>(deepEqual);
  readonly #throwers = new Query<ReadonlySet<string>>(deepEqual);
  readonly #all = new Query<readonly Finding[]>(sameMembers);
  readonly #pairs = new Map<number, PairMemory>();

  solve(machine: Machine, solids: Solids): readonly Finding[] {
    const { ball_mm, slope_deg } = machine.book.machine;
    const throwers = this.#throwers.ask("all", [machine.items], () => throwersOf(machine));
    const parts: (readonly Finding[])[] = [];
    for (const panel of machine.panels.values()) {
      if (panel.purpose !== "playfield") continue;
      const outline = this.#outline(machine, panel.id);
      const own = this.#solids.ask(panel.id, [solids], () => over(solids, panel.id));
      const holes = this.#holesOf(machine, panel.id);
      const { ball_gap_mm, ball_pocket_mm, clear_ball_mm } = machine.shop.numbers;
      const limits = {
        panelId: panel.id,
        pocketMm: ball_pocket_mm,
        gapMm: ball_gap_mm,
        clearMm: clear_ball_mm,
      };
      const inputs = [outline, own, holes, throwers, ball_mm, slope_deg, ...Object.values(limits)];
      parts.push(
        this.#panels.ask(panel.id, inputs, (bands) => {
          const all = own.flatMap((solid) => obstacleOf(solid, ball_mm) ?? []);
          const obstacles = outermost(all, ball_mm);
          const surface = { outline, obstacles, holes, throwers, ballMm: ball_mm, slopeDeg: slope_deg };
          return this.#findings(surface, own, limits, bands);
        }),
      );
    }
    return this.#all.ask("all", parts, () => parts.flat());
  }

  #findings(
    surface: PlayingSurface,
    solids: readonly Solid[],
    limits: Limits,
    bands: Query<Cells>,
  ): readonly Finding[] {
    const room = new BallRoom(surface, bands);
    return [
      ...pocketFindings(room, limits),
      ...gapFindings(room, surface.ballMm, limits, this.#pairsFor(surface.ballMm, limits.gapMm)),
      ...clearanceFindings(
        lowSolids(solids, room.region, room.isReached, surface.ballMm, limits.clearMm),
        surface.ballMm,
        limits,
      ),
    ];
  }

  /** Distances were looked for within a span that follows from these two. */
  #pairsFor(ballMm: number, gapMm: number): PairMemory {
    const key = ballMm * 1e6 + gapMm;
    const known = this.#pairs.get(key) ?? new PairMemory();
    this.#pairs.clear();
    this.#pairs.set(key, known);
    return known;
  }

  #outline(machine: Machine, panelId: string): Rings {
    const panel = machine.panels.get(panelId);
    const outline = machine.panelOutlines.get(panelId);
    return this.#outlines.ask(panelId, [panel, outline], () => {
      if (outline !== undefined) return outline.rings;
      const [xMm, yMm] = [panel?.width_mm ?? 0, panel?.height_mm ?? 0];
      return [
        [
          { xMm: 0, yMm: 0 },
          { xMm, yMm: 0 },
          { xMm, yMm },
          { xMm: 0, yMm },
        ],
      ];
    });
  }

  #holesOf(machine: Machine, panelId: string): readonly Rings[] {
    const { book, options } = machine;
    return this.#holes.ask(panelId, [book.tables.cutouts, book.outlines, [...options].join(" ")], () =>
      book.tables.cutouts
        .filter((row) => row.panel === panelId && row.purpose === "ball-path" && appliesTo(row, options))
        .flatMap((row) => {
          const shape = cutoutShape(book, row);
          return shape === null ? [] : [cutoutRings(shape.form)];
        }),
    );
  }

  /** How often a panel and a band of one had to be looked at so far, for tests of growth. */
  get computed(): { readonly panels: number; readonly bands: number } {
    return { panels: this.#panels.computed, bands: this.#panels.computedParts };
  }

  sweep(): void {
    for (const query of [this.#panels, this.#solids, this.#outlines, this.#holes, this.#throwers, this.#all])
      query.sweep();
  }
}

/** Solids of a panel that come over its top face. */
function over(solids: Solids, panelId: string): readonly Solid[] {
  const found: Solid[] = [];
  for (const list of solids.values())
    for (const solid of list) if (solid.panelId === panelId && solid.highMm > 0) found.push(solid);
  return found;
}

/** Mechanisms with a coil: what lies against them is thrown, or let go. */
function throwersOf(machine: Machine): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const item of machine.items.values())
    if (item.kind === "device" && item.parentId !== null && item.type.class === "coil")
      ids.add(item.parentId);
  return ids;
}

const placeOf = (at: { readonly xMm: number; readonly yMm: number }) => ({
  x_mm: roundTo(at.xMm, 0.1),
  y_mm: roundTo(at.yMm, 0.1),
});

function pocketFindings(room: BallRoom, { panelId, pocketMm }: Limits): readonly Finding[] {
  return room.pockets(pocketMm).map((pocket) => {
    const closed = pocket.depthMm === Number.POSITIVE_INFINITY;
    const severity: Severity = pocket.lean === "level" ? "error" : "warning";
    const against = [...new Set(pocket.against.map((solid) => solid.itemId))].sort(compareText);
    return makeFinding("ball-pocket", severity, [panelId, ...against], {
      panel: panelId,
      ...placeOf(pocket.at),
      lean: pocket.lean,
      depth_mm: closed ? 0 : roundTo(pocket.depthMm, 0.1),
      limit_mm: pocketMm,
      way: closed ? "none" : "over",
    });
  });
}

/** One finding for every two items, at the gap that is nearest to the ball's own width. */
function gapFindings(
  room: BallRoom,
  ballMm: number,
  { panelId, gapMm }: Limits,
  pairs: PairMemory,
): readonly Finding[] {
  const worst = new Map<string, Gap>();
  for (const gap of room.gaps(gapMm, pairs)) {
    const key = itemsOf(gap).join(" ");
    const known = worst.get(key);
    if (known === undefined || Math.abs(gap.spareMm) < Math.abs(known.spareMm)) worst.set(key, gap);
  }
  return [...worst.values()].map((gap) =>
    makeFinding("ball-gap", "warning", itemsOf(gap), {
      panel: panelId,
      ...placeOf(gap.at),
      gap_mm: roundTo(gap.widthMm, 0.1),
      spare_mm: roundTo(gap.spareMm, 0.1),
      ball_mm: ballMm,
      limit_mm: gapMm,
    }),
  );
}

const itemsOf = ({ a, b }: Gap): readonly string[] => [a.itemId, b.itemId].sort(compareText);

/** One finding for every item, where it leaves least room. */
function clearanceFindings(
  low: readonly Low[],
  ballMm: number,
  { panelId, clearMm }: Limits,
): readonly Finding[] {
  const worst = new Map<string, Low>();
  for (const one of low) {
    const known = worst.get(one.solid.itemId);
    if (known === undefined || one.solid.lowMm < known.solid.lowMm) worst.set(one.solid.itemId, one);
  }
  return [...worst.values()].map(({ solid, at }) =>
    makeFinding("ramp-clearance", solid.lowMm < ballMm ? "error" : "warning", [solid.itemId], {
      panel: panelId,
      ...placeOf(at),
      room_mm: roundTo(solid.lowMm, 0.1),
      need_mm: roundTo(ballMm + clearMm, 0.1),
    }),
  );
}
