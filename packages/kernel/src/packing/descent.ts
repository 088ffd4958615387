import { direct, dot, largest, MEMORY } from "./two-loop.ts";

/**
 * Descent of a packing to a local optimum: minimise the container radius R under
 *   |cᵢ − cⱼ| ≥ rᵢ + rⱼ  and  |cᵢ| + rᵢ ≤ R
 * as an augmented Lagrangian  R + Σ (max(0, λ + μ·overlap)² − λ²)/2μ  with its analytic gradient, by L-BFGS
 * (Nocedal and Wright, Numerical Optimization, algorithms 7.4, 7.5 and 17.4).
 *
 * With λ = 0 it is a quadratic penalty: soft circles, for finding a good arrangement. With λ updated it converges
 * to the rigid packing. Lengths are in units of the caller; `mu` is per unit of length.
 */
export class Descent {
  /** Centres x0 y0 x1 y1 … and, last, the container radius. */
  readonly state: Float64Array;
  /** Evaluations of the energy so far: the count in which effort is limited. */
  evaluations = 0;

  private readonly radii: Float64Array;
  private readonly n: number;
  private readonly gradient: Float64Array;
  private readonly trial: Float64Array;
  private readonly trialGradient: Float64Array;
  private readonly direction: Float64Array;
  private readonly steps: Float64Array[];
  private readonly changes: Float64Array[];
  private readonly curvatures = new Float64Array(MEMORY);
  private readonly weights = new Float64Array(MEMORY);
  private readonly pairA: Int32Array;
  private readonly pairB: Int32Array;
  private readonly pairSum: Float64Array;
  private readonly pairForce: Float64Array;
  private readonly wallForce: Float64Array;
  private pairs = 0;

  constructor(radii: Float64Array) {
    const n = radii.length;
    const dim = 2 * n + 1;
    const most = (n * (n - 1)) / 2;
    this.radii = radii;
    this.n = n;
    this.state = new Float64Array(dim);
    this.gradient = new Float64Array(dim);
    this.trial = new Float64Array(dim);
    this.trialGradient = new Float64Array(dim);
    this.direction = new Float64Array(dim);
    this.steps = Array.from({ length: MEMORY }, () => new Float64Array(dim));
    this.changes = Array.from({ length: MEMORY }, () => new Float64Array(dim));
    this.pairA = new Int32Array(most);
    this.pairB = new Int32Array(most);
    this.pairSum = new Float64Array(most);
    this.pairForce = new Float64Array(most);
    this.wallForce = new Float64Array(n);
  }

  /** Soft circles: at most `iterations` steps with penalty `mu`, stopped when the energy falls by less than `tolerance`. */
  soften(mu: number, iterations: number, tolerance: number): number {
    this.wallForce.fill(0);
    this.listPairs(SKIN * this.meanRadius());
    return this.minimise(mu, iterations, tolerance, true);
  }

  /**
   * Rigid circles: the contact forces are found by at most `rounds` updates, each followed by at most `iterations`
   * steps, until no contact overlaps by more than 1e-13.
   */
  harden(rounds: number, iterations: number): void {
    this.soften(HARD / 2, iterations, 1e-6);
    this.listPairs(SKIN * this.meanRadius());
    for (let round = 0; round < rounds; round++) {
      this.minimise(HARD, iterations, 1e-15, false);
      if (this.updateForces(HARD) < 1e-13) break;
    }
  }

  private meanRadius(): number {
    let sum = 0;
    for (let i = 0; i < this.n; i++) sum += this.radii[i] ?? 0;
    return sum / this.n;
  }

  /** Lists the pairs closer than `skin` to touching; only they are looked at until the next listing. */
  private listPairs(skin: number): void {
    const { n, state, radii, pairA, pairB, pairSum } = this;
    let k = 0;
    for (let i = 0; i < n; i++) {
      const x = state[2 * i] ?? 0;
      const y = state[2 * i + 1] ?? 0;
      const r = radii[i] ?? 0;
      for (let j = i + 1; j < n; j++) {
        const dx = (state[2 * j] ?? 0) - x;
        const dy = (state[2 * j + 1] ?? 0) - y;
        const sum = r + (radii[j] ?? 0);
        const reach = sum + skin;
        if (dx * dx + dy * dy < reach * reach) {
          pairA[k] = i;
          pairB[k] = j;
          pairSum[k] = sum;
          k++;
        }
      }
    }
    this.pairs = k;
    this.pairForce.fill(0, 0, k);
  }

  /** λ ← max(0, λ + μ·overlap). Returns the largest violation or slack of a loaded contact. */
  private updateForces(mu: number): number {
    const { n, state, radii, pairA, pairB, pairSum, pairForce, wallForce } = this;
    const radius = state[2 * n] ?? 0;
    let worst = 0;
    for (let k = 0; k < this.pairs; k++) {
      const i = 2 * (pairA[k] ?? 0);
      const j = 2 * (pairB[k] ?? 0);
      const dx = (state[i] ?? 0) - (state[j] ?? 0);
      const dy = (state[i + 1] ?? 0) - (state[j + 1] ?? 0);
      const force = pairForce[k] ?? 0;
      const overlap = (pairSum[k] ?? 0) - Math.sqrt(dx * dx + dy * dy);
      const next = Math.max(0, force + mu * overlap);
      worst = Math.max(worst, Math.abs(next - force) / mu);
      pairForce[k] = next;
    }
    for (let i = 0; i < n; i++) {
      const x = state[2 * i] ?? 0;
      const y = state[2 * i + 1] ?? 0;
      const force = wallForce[i] ?? 0;
      const overlap = Math.sqrt(x * x + y * y) + (radii[i] ?? 0) - radius;
      const next = Math.max(0, force + mu * overlap);
      worst = Math.max(worst, Math.abs(next - force) / mu);
      wallForce[i] = next;
    }
    return worst;
  }

  /** Energy at `x`; its gradient goes into `g`. */
  private energy(x: Float64Array, g: Float64Array, mu: number): number {
    const { n, radii, pairA, pairB, pairSum, pairForce, wallForce, pairs } = this;
    this.evaluations++;
    g.fill(0);
    const radius = x[2 * n] ?? 0;
    let squares = 0;
    for (let k = 0; k < pairs; k++) {
      const i = 2 * (pairA[k] ?? 0);
      const j = 2 * (pairB[k] ?? 0);
      const dx = (x[i] ?? 0) - (x[j] ?? 0);
      const dy = (x[i + 1] ?? 0) - (x[j + 1] ?? 0);
      const force = pairForce[k] ?? 0;
      const reach = (pairSum[k] ?? 0) + force / mu;
      const d2 = dx * dx + dy * dy;
      if (d2 >= reach * reach) {
        squares -= force * force;
        continue;
      }
      const d = Math.sqrt(d2) + 1e-300;
      const push = mu * (reach - d);
      squares += push * push - force * force;
      const gx = (push * dx) / d;
      const gy = (push * dy) / d;
      g[i] = (g[i] ?? 0) - gx;
      g[i + 1] = (g[i + 1] ?? 0) - gy;
      g[j] = (g[j] ?? 0) + gx;
      g[j + 1] = (g[j + 1] ?? 0) + gy;
    }
    let wall = 1;
    for (let i = 0; i < n; i++) {
      const cx = x[2 * i] ?? 0;
      const cy = x[2 * i + 1] ?? 0;
      const force = wallForce[i] ?? 0;
      const d = Math.sqrt(cx * cx + cy * cy);
      const push = force + mu * (d + (radii[i] ?? 0) - radius);
      squares -= force * force;
      if (push <= 0) continue;
      squares += push * push;
      wall -= push;
      if (d > 0) {
        g[2 * i] = (g[2 * i] ?? 0) + (push * cx) / d;
        g[2 * i + 1] = (g[2 * i + 1] ?? 0) + (push * cy) / d;
      }
    }
    g[2 * n] = wall;
    return radius + squares / (2 * mu);
  }

  private minimise(mu: number, iterations: number, tolerance: number, relist: boolean): number {
    const { state, gradient, trial, trialGradient, direction, steps, changes, curvatures, weights } = this;
    const dim = state.length;
    const skin = SKIN * this.meanRadius();
    const longest = 0.5 * skin;
    let moved = 0;
    let stored = 0;
    let head = 0;
    let energy = this.energy(state, gradient, mu);
    for (let iteration = 0; iteration < iterations; iteration++) {
      direct(gradient, direction, steps, changes, curvatures, weights, stored, head);
      let slope = dot(direction, gradient);
      if (slope >= 0) {
        stored = 0;
        for (let i = 0; i < dim; i++) direction[i] = -(gradient[i] ?? 0);
        slope = -dot(gradient, gradient);
      }
      if (slope > -1e-30) return energy;
      const reach = largest(direction);
      let step = Math.min(stored === 0 ? 1 / mu : 1, longest / reach);
      let found = Number.NaN;
      for (let shrink = 0; shrink < 25; shrink++) {
        for (let i = 0; i < dim; i++) trial[i] = (state[i] ?? 0) + step * (direction[i] ?? 0);
        found = this.energy(trial, trialGradient, mu);
        if (found <= energy + 1e-4 * step * slope) break;
        const parabola = (-slope * step * step) / (2 * (found - energy - slope * step));
        step = Math.min(0.5 * step, Math.max(0.1 * step, parabola));
        found = Number.NaN;
      }
      if (Number.isNaN(found)) {
        if (stored === 0) return energy;
        stored = 0;
        continue;
      }
      const s = steps[head];
      const y = changes[head];
      if (s === undefined || y === undefined) return energy;
      for (let i = 0; i < dim; i++) {
        s[i] = (trial[i] ?? 0) - (state[i] ?? 0);
        y[i] = (trialGradient[i] ?? 0) - (gradient[i] ?? 0);
      }
      const curvature = dot(s, y);
      if (curvature > 1e-18) {
        curvatures[head] = curvature;
        head = (head + 1) % MEMORY;
        stored = Math.min(MEMORY, stored + 1);
      }
      state.set(trial);
      gradient.set(trialGradient);
      const fall = energy - found;
      energy = found;
      moved += step * reach;
      if (relist && moved > 0.35 * skin) {
        this.listPairs(skin);
        energy = this.energy(state, gradient, mu);
        moved = 0;
      }
      if (fall < tolerance) return energy;
    }
    return energy;
  }
}

/** Stiffness at which contact forces are found, for a packing whose radii squared sum to 1. */
const HARD = 400;

/** Width of the skin of the neighbour list, in mean radii. */
const SKIN = 1;
