import { UnionFind } from "../graph/index.ts";
import { type Elimination, eliminationOf } from "./elimination.ts";
import { conflictsOf, type JoinTree, joinTree, offsetsOf } from "./joins.ts";
import { type Factor, factorise, solveFactored, type UpperPattern, upperPattern } from "./ldl.ts";

export type NodePair = readonly [a: number, b: number];

/** What is joined to what, without values. */
export interface CircuitShape {
  /** Nodes 0 … n−1. */
  readonly nodes: number;
  /** The node at 0 V. */
  readonly reference: number;
  /** Zero-ohm joints and ideal sources of voltage. */
  readonly joins: readonly NodePair[];
  readonly resistors: readonly NodePair[];
}

export interface CircuitValues {
  /** Conductance of each resistor in siemens, 0 for none. */
  readonly siemens: Float64Array;
  /** Volts of each join's first node over its second; 0 for a joint. */
  readonly joinVolts: Float64Array;
}

/**
 * A linear circuit of conductances, zero-ohm joints and ideal sources of voltage, in nodal analysis. What follows from
 * its shape alone (groups of joined nodes, islands, order of elimination) is found once; `with` takes values and
 * factors them; its `solve` takes injected currents. Each is much cheaper than the one before.
 */
export class Circuit {
  readonly shape: CircuitShape;
  readonly tree: JoinTree;
  /** Lowest node of each island that neither joins nor resistors lead from to the reference: it is taken as 0 V. */
  readonly floating: readonly number[];
  /** Unknown of each group, −1 where its potential is fixed. */
  readonly #unknown: Int32Array;
  readonly #elimination: Elimination;
  readonly #pattern: UpperPattern;
  /** Place of each node's unknown in the order of elimination; −1 where its potential is fixed. */
  readonly places: Int32Array;
  /** First and second node of each resistor. */
  readonly resistorA: Int32Array;
  readonly resistorB: Int32Array;
  /** Resistors that end at a node of a join. */
  readonly atJoins: Int32Array;
  /** Island of each node: what joins and resistors hold together. */
  readonly island: Int32Array;

  /** @throws RangeError when a node is not one of 0 … n−1. */
  constructor(shape: CircuitShape) {
    const { nodes, reference, joins, resistors } = shape;
    for (const node of [reference, ...joins.flat(), ...resistors.flat()])
      if (!Number.isInteger(node) || node < 0 || node >= nodes)
        throw new RangeError(`node is ${node}, expected a whole number from 0 to ${nodes - 1}`);
    this.shape = shape;
    this.tree = joinTree(nodes, joins, reference);
    const { group, groups } = this.tree;
    this.island = islandsOf(shape, this.tree);
    const grounded = groundedNodes(shape, this.island);
    this.floating = grounded.slice(1);
    this.#unknown = new Int32Array(groups);
    for (const node of grounded) this.#unknown[group[node] ?? 0] = -1;
    let unknowns = 0;
    for (let g = 0; g < groups; g++) if (this.#unknown[g] !== -1) this.#unknown[g] = unknowns++;
    const pairs = resistors.map(([a, b]): NodePair => {
      const [p, q] = [this.#unknownOf(a), this.#unknownOf(b)];
      return p < 0 || q < 0 ? [0, 0] : [p, q];
    });
    this.#elimination = eliminationOf(unknowns, pairs);
    this.#pattern = upperPattern(this.#elimination, pairs);
    this.resistorA = Int32Array.from(resistors, ([a]) => a);
    this.resistorB = Int32Array.from(resistors, ([, b]) => b);
    const joined = new Set(joins.flat());
    this.atJoins = Int32Array.from(
      resistors.flatMap(([a, b], r) => (a !== b && (joined.has(a) || joined.has(b)) ? [r] : [])),
    );
    this.places = Int32Array.from({ length: nodes }, (_, node) => {
      const unknown = this.#unknownOf(node);
      return unknown < 0 ? -1 : (this.#elimination.place[unknown] ?? -1);
    });
  }

  /** Multiplications of one factorisation, and entries of the factor. */
  get work(): { readonly operations: number; readonly entries: number } {
    const { operations, columnStart, order } = this.#elimination;
    return { operations, entries: columnStart[order.length] ?? 0 };
  }

  #unknownOf(node: number): number {
    return this.#unknown[this.tree.group[node] ?? 0] ?? -1;
  }

  /** The circuit with values. Conductances must not be negative, and each island must hang together by positive ones. */
  with(values: CircuitValues): SolvableCircuit {
    const upper = new Float64Array(this.#pattern.row.length);
    const diagonal = new Float64Array(this.#elimination.order.length);
    const { places, resistorA, resistorB } = this;
    for (let r = 0; r < resistorA.length; r++) {
      const g = values.siemens[r] ?? 0;
      const p = places[resistorA[r] ?? 0] ?? -1;
      const q = places[resistorB[r] ?? 0] ?? -1;
      if (p === q) continue;
      if (p >= 0) diagonal[p] = (diagonal[p] ?? 0) + g;
      if (q >= 0) diagonal[q] = (diagonal[q] ?? 0) + g;
      if (p < 0 || q < 0) continue;
      const slot = this.#pattern.slot[r] ?? -1;
      upper[slot] = (upper[slot] ?? 0) - g;
    }
    return new SolvableCircuit(this, values, factorise(this.#elimination, this.#pattern, upper, diagonal));
  }
}

function islandsOf({ nodes, resistors }: CircuitShape, { group, groups }: JoinTree): Int32Array {
  const sets = new UnionFind(groups);
  for (const [a, b] of resistors) sets.join(group[a] ?? 0, group[b] ?? 0);
  return Int32Array.from({ length: nodes }, (_, node) => sets.find(group[node] ?? 0));
}

/** The reference, and the lowest node of every island that does not hold it. */
function groundedNodes({ nodes, reference }: CircuitShape, island: Int32Array): readonly number[] {
  const held = new Set([island[reference]]);
  const grounded = [reference];
  for (let node = 0; node < nodes; node++) {
    if (held.has(island[node])) continue;
    held.add(island[node]);
    grounded.push(node);
  }
  return grounded;
}

/** A circuit with its values, factored. */
export class SolvableCircuit {
  readonly circuit: Circuit;
  readonly values: CircuitValues;
  /** Each node's potential over the first of its group, in volts. */
  readonly #offsets: Float64Array;
  readonly #factor: Factor;

  constructor(circuit: Circuit, values: CircuitValues, factor: Factor) {
    this.circuit = circuit;
    this.values = values;
    this.#factor = factor;
    this.#offsets = offsetsOf(circuit.tree, circuit.shape.joins, values.joinVolts);
  }

  /** Loops of joins whose voltages do not add up to nothing: shorted sources. Empty in a sound circuit. */
  get conflicts(): readonly number[] {
    return conflictsOf(this.circuit.tree, this.circuit.shape.joins, this.values.joinVolts, this.#offsets);
  }

  /**
   * Volts of every node.
   * @param amps current injected into each node
   */
  solve(amps: Float64Array): Float64Array {
    const { places, resistorA, resistorB } = this.circuit;
    const offsets = this.#offsets;
    const x = this.#injected(amps);
    for (let r = 0; r < resistorA.length; r++) {
      const a = resistorA[r] ?? 0;
      const b = resistorB[r] ?? 0;
      const apart = (offsets[a] ?? 0) - (offsets[b] ?? 0);
      if (apart === 0) continue;
      const driven = (this.values.siemens[r] ?? 0) * apart;
      const p = places[a] ?? -1;
      const q = places[b] ?? -1;
      if (p === q) continue;
      if (p >= 0) x[p] = (x[p] ?? 0) - driven;
      if (q >= 0) x[q] = (x[q] ?? 0) + driven;
    }
    solveFactored(this.#factor, x);
    return this.#potentials(x, offsets);
  }

  /** Change of every node's volts by injected currents, the sources staying as they are: transfer resistances. */
  change(amps: Float64Array): Float64Array {
    const x = this.#injected(amps);
    solveFactored(this.#factor, x);
    return this.#potentials(x, null);
  }

  /** Change of every node's volts when 1 A flows in at one node and out at another. */
  transfer(into: number, outOf: number): Float64Array {
    const amps = new Float64Array(this.circuit.shape.nodes);
    amps[into] = 1;
    amps[outOf] = (amps[outOf] ?? 0) - 1;
    return this.change(amps);
  }

  /** Current through each resistor from its first node to its second. */
  resistorAmps(volts: Float64Array): Float64Array {
    const { resistorA, resistorB } = this.circuit;
    const { siemens } = this.values;
    const amps = new Float64Array(resistorA.length);
    for (let r = 0; r < amps.length; r++)
      amps[r] = (siemens[r] ?? 0) * ((volts[resistorA[r] ?? 0] ?? 0) - (volts[resistorB[r] ?? 0] ?? 0));
    return amps;
  }

  /**
   * Current through each join from its first node to its second, by Kirchhoff's current law; none through joins that
   * close a loop of joins. With volts and injected currents that are changes it gives the changes.
   */
  joinAmps(volts: Float64Array, amps: Float64Array): Float64Array {
    const { shape, tree } = this.circuit;
    const surplus = this.#surplus(volts, amps);
    const joins = new Float64Array(shape.joins.length);
    for (let n = tree.hung.length - 1; n >= 0; n--) {
      const node = tree.hung[n] ?? 0;
      const join = tree.by[node] ?? 0;
      const up = tree.from[node] ?? 0;
      const out = surplus[node] ?? 0;
      joins[join] = shape.joins[join]?.[0] === node ? out : -out;
      surplus[up] = (surplus[up] ?? 0) + out;
    }
    return joins;
  }

  /**
   * What would have to leave each floating island at its grounded node; not zero only when more is injected into the
   * island than is taken from it.
   */
  strayAmps(amps: Float64Array): Float64Array {
    const { island, floating } = this.circuit;
    const sums = new Map<number, number>();
    amps.forEach((i, node) => {
      sums.set(island[node] ?? 0, (sums.get(island[node] ?? 0) ?? 0) + i);
    });
    return Float64Array.from(floating, (node) => sums.get(island[node] ?? 0) ?? 0);
  }

  /** What is injected into each node less what resistors take from it; right where joins end, for which it is wanted. */
  #surplus(volts: Float64Array, amps: Float64Array): Float64Array {
    const { resistorA, resistorB, atJoins } = this.circuit;
    const { siemens } = this.values;
    const surplus = amps.slice();
    for (let n = 0; n < atJoins.length; n++) {
      const r = atJoins[n] ?? 0;
      const a = resistorA[r] ?? 0;
      const b = resistorB[r] ?? 0;
      const i = (siemens[r] ?? 0) * ((volts[a] ?? 0) - (volts[b] ?? 0));
      surplus[a] = (surplus[a] ?? 0) - i;
      surplus[b] = (surplus[b] ?? 0) + i;
    }
    return surplus;
  }

  #injected(amps: Float64Array): Float64Array {
    const x = new Float64Array(this.#factor.diagonal.length);
    const { places } = this.circuit;
    for (let node = 0; node < amps.length; node++) {
      const i = amps[node] ?? 0;
      const p = i === 0 ? -1 : (places[node] ?? -1);
      if (p >= 0) x[p] = (x[p] ?? 0) + i;
    }
    return x;
  }

  /** The reference is the first of its group, and so is the lowest node of a floating one: both at 0 V. */
  #potentials(x: Float64Array, offsets: Float64Array | null): Float64Array {
    const { places } = this.circuit;
    const volts = new Float64Array(places.length);
    for (let node = 0; node < volts.length; node++) {
      const p = places[node] ?? -1;
      volts[node] = (p < 0 ? 0 : (x[p] ?? 0)) + (offsets?.[node] ?? 0);
    }
    return volts;
  }
}
