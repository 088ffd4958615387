import { UnionFind } from "@pinwright/kernel";
import { Affected } from "./affected.ts";
import { type Disturbed, disturbed } from "./disturbed.ts";
import { driveWays } from "./drive-ways.ts";
import type { Symptom } from "./fault.ts";
import type { MachineFunction } from "./functions.ts";
import type { ServiceShort } from "./fuses.ts";
import { type Needs, needsInSound } from "./needs.ts";
import type { ServiceNetwork } from "./network.ts";
import { type JointEnds, passesThrough } from "./passes.ts";
import { polesOver } from "./poles-over.ts";

/** What lets a current through one way only: an LED that is wired the other way round stays dark. */
const ONE_WAY: ReadonlySet<string> = new Set(["diode", "led"]);

/** Up to this a meter beeps: what it reads of wires and contacts besides stays below 1 Ω (common practice, no source). */
const BEEPS_MOST_OHM = 0.5;

/** How a machine stands under faults: what is joined, which supplies and boards are alive, what each function does. */
export class Standing {
  readonly #network: ServiceNetwork;
  readonly #functions: readonly MachineFunction[];
  readonly #ends: JointEnds;
  readonly #union: UnionFind;
  /** Number of the set that each node is in. */
  readonly #sets: Int32Array;
  readonly #needs: readonly Needs[];
  readonly #needsOf: ReadonlyMap<string, number>;
  /** Index of the needs of whatever makes each source. */
  readonly #makerOf: readonly number[];
  readonly #alive: boolean[];
  readonly #affected: Affected;
  /** Signal nodes of all controls, and which of them each function's element hangs on in a sound machine. */
  readonly #signals: readonly number[];
  readonly #own: readonly (readonly number[])[];
  /** Ends of each function's element that hang on such a node in a sound machine: the others are at a supply or a common. */
  readonly #hangs: readonly (readonly Int32Array[])[];
  /** 1: the set holds a pole of a source. */
  readonly #isPole: Uint8Array;
  readonly #diodes: readonly number[];
  /** By joint: it leads so well that a meter beeps. */
  readonly #beeps: readonly boolean[];
  /** Drivers of each driven function that are on together, for each way to switch it on. */
  readonly #ways: readonly (readonly (readonly number[])[])[];
  /** How many signal nodes are in each set. */
  readonly #signalsAt: Int32Array;

  constructor(network: ServiceNetwork, functions: readonly MachineFunction[]) {
    const { joints, nodes, sources } = network;
    this.#network = network;
    this.#functions = functions;
    this.#ends = {
      a: Int32Array.from(joints, ({ a }) => a),
      b: Int32Array.from(joints, ({ b }) => b),
      oneWay: Uint8Array.from(joints, ({ element }) => (ONE_WAY.has(element?.row.kind ?? "") ? 1 : 0)),
    };
    this.#beeps = joints.map(
      ({ element }, n) =>
        network.leads[n] === true &&
        !(element?.row.kind === "resistor" && (element.row.ohm ?? 0) > BEEPS_MOST_OHM),
    );
    this.#diodes = joints.flatMap(({ element }, n) => (element?.row.kind === "diode" ? [n] : []));
    this.#union = new UnionFind(nodes.length);
    this.#sets = new Int32Array(nodes.length);
    this.#signalsAt = new Int32Array(nodes.length);
    this.#isPole = new Uint8Array(nodes.length);
    const sound = disturbed([]);
    this.#join(sound);
    this.#needs = needsInSound(network, this.#sets);
    this.#needsOf = new Map(this.#needs.map(({ itemId }, n) => [itemId, n]));
    this.#makerOf = sources.map(({ itemId }) => this.#needsOf.get(itemId) ?? -1);
    this.#alive = this.#needs.map(() => true);
    this.#signals = [...new Set(functions.flatMap(({ signals }) => signals))].sort((a, b) => a - b);
    this.#own = functions.map((one) => {
      const at = new Set([this.#setOf(this.#ends.a, one.joint), this.#setOf(this.#ends.b, one.joint)]);
      return this.#signals.filter((node) => at.has(this.#sets[node] ?? -1));
    });
    this.#hangs = functions.map((one, f) =>
      [this.#ends.a, this.#ends.b].filter((side) =>
        this.#own[f]?.some((node) => this.#sets[node] === this.#setOf(side, one.joint)),
      ),
    );
    this.#ways = functions.map((one) => driveWays(network, this.#ends, this.#sets, one));
    this.#affected = new Affected(network, functions, this.#needsOf, this.#sets);
    this.set(sound);
  }

  /** Takes faults on: until the next ones everything else is answered under them. */
  set(faults: Disturbed): void {
    this.#join(faults);
    this.#revive(faults);
    this.#isPole.fill(0);
    for (const { plus, minus } of this.#network.sources)
      for (const node of [plus, minus]) this.#isPole[this.#sets[node] ?? 0] = 1;
    this.#signalsAt.fill(0);
    for (const node of this.#signals) {
      const set = this.#sets[node] ?? 0;
      this.#signalsAt[set] = (this.#signalsAt[set] ?? 0) + 1;
    }
  }

  /** Number of the set of joined nodes that each node is in. */
  sets(): Int32Array {
    return this.#sets.slice();
  }

  /** The same by what a meter's beeper calls joined; faults have to be set anew after it. */
  beeping(faults: Disturbed): Int32Array {
    this.#join(faults, this.#beeps);
    return this.#sets.slice();
  }

  /** Whether a source gives its volts. */
  isAlive(source: number): boolean {
    return this.#alive[this.#makerOf[source] ?? -1] ?? true;
  }

  /** A source whose poles touch, by itself or while something is switched on; null: none. */
  short(faults: Disturbed): ServiceShort | null {
    const alone = this.#sourceOver([], -1);
    if (alone >= 0) return { source: alone, by: [] };
    if (faults.closed.size === 0 && faults.joined.length === 0 && faults.swapped.size === 0) return null;
    // A feed that lies at a return or at a driven line has the diodes across the coils lie forward.
    const diodes = this.#diodes.filter((joint) => !faults.open.has(joint));
    const { up, down } = polesOver(this.#network, this.#ends, this.#sets, diodes);
    for (const [f, one] of this.#functions.entries()) {
      if (one.kind !== "driven" || !this.#isCommanded(one)) continue;
      for (const way of this.#ways[f] ?? []) {
        const by = way.filter((joint) => !faults.open.has(joint) && !faults.closed.has(joint));
        const ends = by.flatMap((joint) => [
          this.#setOf(this.#ends.a, joint),
          this.#setOf(this.#ends.b, joint),
        ]);
        if (!ends.some((set) => up[set] === 1) || !ends.some((set) => down[set] === 1)) continue;
        const isBeside = (joint: number): boolean =>
          ends.includes(this.#setOf(this.#ends.a, joint)) || ends.includes(this.#setOf(this.#ends.b, joint));
        const through = [...by, ...diodes.filter(isBeside)];
        const source = this.#sourceOver(through, -1);
        if (source >= 0) return { source, by: through };
      }
    }
    return null;
  }

  /** Symptoms other than `works`, by index of the function, where all are known to work in a sound machine. */
  symptoms(faults: Disturbed): ReadonlyMap<number, Symptom> {
    const hasDeadSupply = this.#makerOf.some((n) => this.#alive[n] === false);
    const affected = this.#affected.of(this.#sets, (n) => this.#alive[n] === true, hasDeadSupply);
    const touched = new Set([...faults.open, ...faults.closed, ...faults.stuck, ...faults.still]);
    const found = new Map<number, Symptom>();
    this.#functions.forEach(({ joint, controls, between }, f) => {
      const isTouched =
        touched.has(joint) || controls.some((n) => touched.has(n)) || between.some((n) => touched.has(n));
      if (!isTouched && affected[f] !== true) return;
      const symptom = this.symptom(f, faults);
      if (symptom !== "works") found.set(f, symptom);
    });
    return found;
  }

  /** What a function does. */
  symptom(f: number, faults: Disturbed): Symptom {
    const one = this.#functions[f];
    if (one === undefined) return "works";
    if (faults.still.has(one.joint)) return "dead";
    if (faults.stuck.has(one.joint)) return one.kind === "read" ? "on" : "dead";
    const isOpen = faults.open.has(one.joint);
    const does = one.kind === "driven" ? this.#driven(f, one, faults) : this.#read(one, faults);
    if (does === "on" && !(isOpen && one.kind === "driven")) return "on";
    if (isOpen) return "dead";
    return this.#isMixed(f, one) ? "mixed" : does;
  }

  #driven(f: number, one: MachineFunction, faults: Disturbed): Symptom {
    const { joint } = one;
    if (this.#network.joints[joint]?.element?.row.kind === "speaker")
      return this.#isSounding(one) ? "works" : "dead";
    const through = [joint, ...one.between.filter((other) => !faults.open.has(other))];
    if (this.#mayBeOn(through) && this.#sourceOver(through, joint) >= 0) return "on";
    if (!this.#isCommanded(one)) return "dead";
    const isOn = (drivers: readonly number[]): boolean =>
      this.#sourceOver([...through, ...drivers], joint) >= 0;
    const drivers = this.#drivers(one, faults);
    const ways = this.#ways[f] ?? [];
    // What turns one way only does not do what it should.
    const isBridge = ways.some((way) => way.length > 1);
    const does = isBridge
      ? ways.every((way) => isOn(way.filter((driver) => drivers.includes(driver))))
      : isOn(drivers);
    return does ? "works" : "dead";
  }

  /** Whether what lies in series reaches a pole at two of its ends: else no current flows while nothing is switched on. */
  #mayBeOn(through: readonly number[]): boolean {
    let poles = 0;
    for (const joint of through)
      for (const side of [this.#ends.a, this.#ends.b]) poles += this.#isPole[this.#setOf(side, joint)] ?? 0;
    return poles >= 2;
  }

  /** First source alive that drives a current over some joints, through one of them; −1: none. */
  #sourceOver(joints: readonly number[], must: number): number {
    const { sources } = this.#network;
    for (let s = 0; s < sources.length; s++) {
      const source = sources[s];
      if (source === undefined || !this.isAlive(s)) continue;
      const [plus, minus] = [this.#sets[source.plus] ?? -1, this.#sets[source.minus] ?? -1];
      if (passesThrough(this.#ends, this.#sets, joints, must, plus, minus)) return s;
    }
    return -1;
  }

  /** A speaker is driven at both its ends by one board, whatever the supply of its amplifier. */
  #isSounding(one: MachineFunction): boolean {
    const [a, b] = [this.#setOf(this.#ends.a, one.joint), this.#setOf(this.#ends.b, one.joint)];
    return this.#isCommanded(one) && one.controls.some((control) => this.#isAcross(control, a, b));
  }

  #read(one: MachineFunction, faults: Disturbed): Symptom {
    const { joints } = this.#network;
    const isInput = (joint: number): boolean => joints[joint]?.element?.row.kind === "input";
    const beside = [...one.between, ...one.controls.filter((joint) => !isInput(joint))].filter(
      (joint) => !faults.open.has(joint),
    );
    let isRead = false;
    for (const control of one.controls) {
      if (!isInput(control) || faults.open.has(control)) continue;
      if (!this.#works(joints[control]?.element?.itemId ?? "")) continue;
      const [from, to] = [this.#setOf(this.#ends.a, control), this.#setOf(this.#ends.b, control)];
      if (faults.closed.has(control) || passesThrough(this.#ends, this.#sets, beside, -1, from, to))
        return "on";
      isRead ||=
        !this.#isHeld(from, to) &&
        this.#works(one.itemId) &&
        passesThrough(this.#ends, this.#sets, [one.joint, ...beside], one.joint, from, to);
    }
    return isRead && this.#isCommanded(one) ? "works" : "dead";
  }

  /** Whether an input lies at both poles of a source: no contact pulls it down then. */
  #isHeld(from: number, to: number): boolean {
    return this.#network.sources.some(({ plus, minus }, s) => {
      if (!this.isAlive(s)) return false;
      const [p, q] = [this.#sets[plus], this.#sets[minus]];
      return p !== q && ((p === from && q === to) || (p === to && q === from));
    });
  }

  /** Whether the boards that have to do with it work, and what they tell each other arrives. */
  #isCommanded({ boardIds, commands }: MachineFunction): boolean {
    return (
      boardIds.every((id) => this.#works(id)) &&
      commands.every(([from, to]) => this.#sets[from] === this.#sets[to])
    );
  }

  #drivers({ controls }: MachineFunction, faults: Disturbed): readonly number[] {
    return controls.filter(
      (joint) =>
        this.#network.joints[joint]?.element?.row.kind === "driver" &&
        !faults.open.has(joint) &&
        !faults.closed.has(joint),
    );
  }

  /**
   * Whether its element hangs on the control of another than in a sound machine, at the end where it hangs on its own: what
   * another pulls down at the common end is nothing to it.
   */
  #isMixed(f: number, { joint }: MachineFunction): boolean {
    return (this.#hangs[f] ?? []).some((side) => {
      const set = this.#setOf(side, joint);
      let own = 0;
      for (const node of this.#own[f] ?? []) if (this.#sets[node] === set) own++;
      return (this.#signalsAt[set] ?? 0) > own;
    });
  }

  #join({ open, closed, joined, swapped }: Disturbed, leads = this.#network.leads): void {
    const { a, b } = this.#ends;
    const union = this.#union;
    union.reset();
    for (let n = 0; n < a.length; n++) {
      if (leads[n] !== true && !closed.has(n)) continue;
      if (!open.has(n)) union.join(a[n] ?? 0, b[swapped.get(n) ?? n] ?? 0);
    }
    for (const [one, other] of joined) union.join(one, other);
    for (let node = 0; node < this.#sets.length; node++) this.#sets[node] = union.find(node);
  }

  /** Takes life from what is not fed or hears nothing, until nothing more dies. */
  #revive(faults: Disturbed): void {
    this.#needs.forEach(({ itemId }, n) => {
      this.#alive[n] = !faults.deadIds.has(itemId);
    });
    for (let dies = true; dies; ) {
      dies = false;
      for (let n = 0; n < this.#needs.length; n++) {
        const needs = this.#needs[n];
        if (needs === undefined || this.#alive[n] !== true) continue;
        const isWell =
          needs.loads.every((load) => !faults.open.has(load) && this.#isFed(load)) &&
          needs.hears.every(([input, drivers]) => this.#isHeard(input, drivers, faults));
        if (isWell) continue;
        this.#alive[n] = false;
        dies = true;
      }
    }
  }

  #works(itemId: string): boolean {
    return this.#alive[this.#needsOf.get(itemId) ?? -1] ?? true;
  }

  #setOf(side: Int32Array, joint: number): number {
    return this.#sets[side[joint] ?? -1] ?? -1;
  }

  /** Whether a joint lies between two sets, this way or the other. */
  #isAcross(joint: number, one: number, other: number): boolean {
    if (one === other) return false;
    const [a, b] = [this.#setOf(this.#ends.a, joint), this.#setOf(this.#ends.b, joint)];
    return (a === one && b === other) || (a === other && b === one);
  }

  #isFed(load: number): boolean {
    const { sources } = this.#network;
    for (let s = 0; s < sources.length; s++) {
      const source = sources[s];
      if (source === undefined || !this.isAlive(s)) continue;
      if (this.#isAcross(load, this.#sets[source.plus] ?? -1, this.#sets[source.minus] ?? -1)) return true;
    }
    return false;
  }

  /** A message arrives when both wires of it do, each at its own end. */
  #isHeard(input: number, drivers: readonly number[], faults: Disturbed): boolean {
    const [a, b] = [this.#setOf(this.#ends.a, input), this.#setOf(this.#ends.b, input)];
    if (a === b || faults.open.has(input)) return false;
    return drivers.some(
      (driver) =>
        !faults.open.has(driver) &&
        !faults.closed.has(driver) &&
        this.#works(this.#network.joints[driver]?.element?.itemId ?? "") &&
        this.#setOf(this.#ends.a, driver) === a &&
        this.#setOf(this.#ends.b, driver) === b,
    );
  }
}
