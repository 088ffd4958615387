import type { BookRow } from "@pinwright/book";
import { distance, polar } from "@pinwright/kernel";
import type { Place, SizedBranch, TreeNode } from "../../model/index.ts";
import type { HolderSize } from "../holder-size.ts";
import type { PinboardInput } from "../input.ts";

/** Small generator of repeatable numbers in [0, 1) (mulberry32, public domain). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const HARNESS: BookRow<"harnesses"> = {
  id: "h.test",
  label: "Test harness",
  label_zh: "",
  number: 1,
  board_width_mm: 2400,
  board_height_mm: 900,
  service_loop_mm: null,
  options: [],
};

/** Puts a harness together node by node; wires are counted from the landings beyond each branch. */
export class TreeMaker {
  readonly #nodes: { id: string; kind: TreeNode["kind"]; place: Place }[] = [];
  readonly #branches: { id: string; kind: SizedBranch["kind"]; a: number; b: number; routeMm: number }[] = [];
  readonly #holders = new Map<string, HolderSize>();

  waypoint(xMm: number, yMm: number, from: number | null, kind: SizedBranch["kind"] = "lane"): number {
    const number = this.#nodes.length;
    const place: Place = { panelId: "p", side: "under", xMm, yMm, rotationDeg: 0, zMm: 0 };
    this.#nodes.push({ id: `w${String(number).padStart(3, "0")}`, kind: "waypoint", place });
    if (from !== null) this.#join(from, number, kind, null);
    return number;
  }

  landing(from: number, directionDeg: number, tailMm: number, ways: number): void {
    const number = this.#nodes.length;
    const at = this.#nodes[from]?.place;
    if (at === undefined) return;
    const by = polar(directionDeg, tailMm);
    const landing = `dev${String(number).padStart(3, "0")}`;
    this.#nodes.push({
      id: `landing:${landing}`,
      kind: "landing",
      place: { ...at, xMm: at.xMm + by.xMm, yMm: at.yMm + by.yMm },
    });
    this.#holders.set(landing, { widthMm: Math.max(14, ways * 3.96 + 6), depthMm: 14 });
    this.#join(from, number, "tail", `tail:${landing}`);
  }

  #join(a: number, b: number, kind: SizedBranch["kind"], id: string | null): void {
    const p = this.#nodes[a]?.place;
    const q = this.#nodes[b]?.place;
    if (p === undefined || q === undefined) return;
    const routeMm = distance(p, q);
    this.#branches.push({
      id: id ?? `l${String(a).padStart(3, "0")}-${String(b).padStart(3, "0")}`,
      kind,
      a,
      b,
      routeMm,
    });
  }

  /** The input of the pinboard, with `edit` for what a test wants otherwise. */
  input(edit: Partial<PinboardInput> = {}): PinboardInput {
    const wires = this.#nodes.map((n) => (n.kind === "landing" ? [n.id] : []));
    for (const branch of this.#branches.toReversed()) {
      wires[branch.a]?.push(...(wires[branch.b] ?? []));
    }
    const used = this.#branches.filter((b) => (wires[b.b]?.length ?? 0) > 0);
    const degree = this.#nodes.map((_, i) => used.filter((b) => b.a === i || b.b === i).length);
    return {
      harness: HARNESS,
      rootId: this.#nodes[0]?.id ?? "",
      nodes: this.#nodes.flatMap((n, i) =>
        (degree[i] ?? 0) === 0 ? [] : [{ ...n, breakout: (degree[i] ?? 0) > 2 }],
      ),
      branches: used.map((b): SizedBranch => {
        const wireIds = wires[b.b] ?? [];
        const laidMm = 1.2 * 1.6 * Math.sqrt(wireIds.length) * 1.12;
        return {
          id: b.id,
          kind: b.kind,
          a: this.#nodes[b.a]?.id ?? "",
          b: this.#nodes[b.b]?.id ?? "",
          routeMm: b.routeMm,
          lengthMm: Math.max(5, Math.ceil(b.routeMm / 5) * 5),
          wireIds,
          bundle: {
            wires: wireIds.length,
            packedMm: laidMm / 1.12,
            lowerBoundMm: laidMm / 1.3,
            ruleMm: laidMm / 1.12,
            laidMm,
            tieId: "tie.100",
            sleeveId: null,
          },
        };
      }),
      holderSizes: this.#holders,
      numbers: { hand_room_mm: 40, board_margin_mm: 60, tie_spacing_mm: 75 },
      pegs: new Map(),
      ...edit,
    };
  }
}

/** A harness of lanes on a grid of a playfield, with landings near its waypoints. */
export function randomTree(landings: number, seed: number): TreeMaker {
  const random = seeded(seed);
  const maker = new TreeMaker();
  const lanes = Math.max(2, Math.round(landings * (0.5 + random())));
  const places: { number: number; x: number; y: number }[] = [];
  const taken = new Set<string>();
  const put = (x: number, y: number, from: number | null): void => {
    taken.add(`${x},${y}`);
    places.push({ number: maker.waypoint(x * 60, y * 60, from), x, y });
  };
  put(4, 0, null);
  for (let tries = 0; tries < lanes * 4 && places.length < lanes; tries++) {
    const from = places[Math.max(0, places.length - 1 - Math.floor(random() * random() * places.length))];
    const [dx, dy] = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, 1],
    ][Math.floor(random() * 4)] ?? [0, 1];
    if (from === undefined || dx === undefined || dy === undefined) continue;
    const x = from.x + dx;
    const y = from.y + dy;
    if (x < 0 || x > 8 || y > 17 || taken.has(`${x},${y}`)) continue;
    put(x, y, from.number);
  }
  for (let i = 0; i < landings; i++) {
    const at = i === 0 ? places[0] : places[Math.floor(random() * places.length)];
    if (at === undefined) continue;
    const ways = i < landings / 8 ? 4 + Math.floor(random() * 14) : 2 + Math.floor(random() * 2);
    maker.landing(at.number, Math.floor(random() * 24) * 15, 50 + random() * 180, ways);
  }
  return maker;
}

/** A long trunk with a board connector at its start and short tails all along. */
export function combTree(teeth: number, stepMm: number, seed: number): TreeMaker {
  const random = seeded(seed);
  const maker = new TreeMaker();
  let at = maker.waypoint(250, 0, null);
  maker.landing(at, 270, 120, 20);
  maker.landing(at, 180, 100, 12);
  for (let i = 1; i <= teeth; i++) {
    at = maker.waypoint(250, i * stepMm, at);
    maker.landing(at, i % 2 === 0 ? 0 : 180, 60 + random() * 90, 2 + Math.floor(random() * 3));
  }
  maker.landing(at, 90, 80, 3);
  return maker;
}

/** Arms from one middle, each with some tails. */
export function starTree(arms: number, armMm: number, tails: number, seed: number): TreeMaker {
  const random = seeded(seed);
  const maker = new TreeMaker();
  const middle = maker.waypoint(250, 500, null);
  maker.landing(middle, 45, 120, 18);
  for (let arm = 0; arm < arms; arm++) {
    let at = middle;
    const deg = (arm * 360) / arms;
    for (let i = 1; i <= tails; i++) {
      const p = polar(deg, (armMm * i) / tails);
      at = maker.waypoint(250 + p.xMm, 500 + p.yMm, at);
      maker.landing(at, deg + (i % 2 === 0 ? 90 : -90), 70 + random() * 80, 2 + Math.floor(random() * 3));
    }
  }
  return maker;
}
