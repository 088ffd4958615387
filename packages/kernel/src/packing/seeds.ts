import { seededRandom } from "../random.ts";

/** Writes centres x0 y0 x1 y1 … for the given radii, largest first, and the container radius last. */
export type Seed = (radii: Float64Array, state: Float64Array) => void;

/**
 * A cut from the hexagonal lattice: the sites nearest to the point (u, v), in lattice steps. The largest circles
 * get the sites in the middle. Best packings of up to about 30 and of 91 and more equal circles often look so.
 */
export const hexagonal =
  (u: number, v: number): Seed =>
  (radii, state) => {
    const n = radii.length;
    const pitch = 2 * Math.sqrt(meanSquare(radii));
    const reach = Math.ceil(Math.sqrt(n)) + 2;
    const sites: { x: number; y: number; d: number }[] = [];
    for (let i = -reach; i <= reach; i++) {
      for (let j = -reach; j <= reach; j++) {
        const x = pitch * (i - u + (j - v) / 2);
        const y = (pitch * (j - v) * Math.sqrt(3)) / 2;
        sites.push({ x, y, d: x * x + y * y });
      }
    }
    sites.sort((a, b) => a.d - b.d || a.x - b.x || a.y - b.y);
    for (let k = 0; k < n; k++) put(state, k, sites[k]?.x ?? 0, sites[k]?.y ?? 0);
    state[2 * n] = Math.sqrt(sites[n - 1]?.d ?? 0) + (radii[n - 1] ?? 0);
  };

/**
 * Rings from the wall inwards, each as full as its circumference allows, for a container `tightness` times the
 * radius that 80 % fill would give. With `largeInside` the largest circles come innermost, else outermost.
 * What finds no room any more is strewn over the middle.
 */
export const rings =
  (tightness: number, largeInside: boolean): Seed =>
  (radii, state) => {
    const n = radii.length;
    let outer = tightness * Math.sqrt((n * meanSquare(radii)) / 0.8);
    state[2 * n] = outer;
    let next = 0;
    let turn = 0;
    while (next < n) {
      const members: Member[] = [];
      let angle = 0;
      while (next < n) {
        const i = largeInside ? n - 1 - next : next;
        const r = radii[i] ?? 0;
        if (outer <= r) break;
        const half = Math.asin(Math.min(1, r / (outer - r)));
        if (members.length > 0 && angle + 2 * half > 2 * Math.PI + 1e-9) break;
        angle += 2 * half;
        members.push({ i, r, half });
        next++;
      }
      if (members.length === 0) break;
      const spare = (2 * Math.PI - angle) / members.length;
      let at = turn;
      let widest = 0;
      for (const { i, r, half } of members) {
        at += half + spare / 2;
        put(state, i, (outer - r) * Math.cos(at), (outer - r) * Math.sin(at));
        at += half + spare / 2;
        widest = Math.max(widest, r);
      }
      turn += 0.5;
      outer -= 1.9 * widest;
    }
    for (; next < n; next++) {
      const i = largeInside ? n - 1 - next : next;
      const q = (radii[i] ?? 0) * Math.sqrt(n - next - 0.5);
      put(state, i, q * Math.cos(next * GOLDEN_ANGLE), q * Math.sin(next * GOLDEN_ANGLE));
    }
  };

interface Member {
  readonly i: number;
  readonly r: number;
  readonly half: number;
}

const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/** A sunflower: circles along a spiral by the area that they need, largest innermost or outermost. */
export const sunflower =
  (largeInside: boolean): Seed =>
  (radii, state) => {
    const n = radii.length;
    const fill = 1.25;
    let area = 0;
    for (let k = 0; k < n; k++) {
      const i = largeInside ? k : n - 1 - k;
      const a = fill * (radii[i] ?? 0) ** 2;
      const q = Math.sqrt(area + a / 2);
      area += a;
      put(state, i, q * Math.cos(k * GOLDEN_ANGLE), q * Math.sin(k * GOLDEN_ANGLE));
    }
    state[2 * n] = Math.sqrt(area);
  };

/** Uniformly at random over the container. */
export const scattered =
  (seed: number): Seed =>
  (radii, state) => {
    const random = seededRandom(seed);
    const n = radii.length;
    const radius = Math.sqrt(1.25 * n * meanSquare(radii));
    for (let i = 0; i < n; i++) {
      const angle = 2 * Math.PI * random();
      const q = Math.sqrt(random()) * Math.max(0, radius - (radii[i] ?? 0));
      put(state, i, q * Math.cos(angle), q * Math.sin(angle));
    }
    state[2 * n] = radius;
  };

const put = (state: Float64Array, i: number, x: number, y: number): void => {
  state[2 * i] = x;
  state[2 * i + 1] = y;
};

const meanSquare = (radii: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < radii.length; i++) sum += (radii[i] ?? 0) ** 2;
  return sum / radii.length;
};
