import type {
  Machine,
  MachineFunction,
  PlacedElement,
  ServiceNetwork,
  Suspect,
  Symptom,
} from "../../packages/engine/src/index.ts";
import { type Built, extraElement, probed, type Wires, withFault } from "./built.ts";
import { across, Circuit, NO_VOLTS, SENSE, shareOf, type Volts } from "./circuit.ts";
import { ENOUGH, Life } from "./life.ts";
import { motionsOf, type Tried, turnsOf } from "./turns.ts";

/** Beyond this multiple of its rating a fuse opens at once. */
const OPENS_AT = 3;
/** A meter for ohms: so few volts that no diode conducts. */
const METER = { volt: 0.2, ohm: 10 } as const;
const MOST_ROUNDS = 12;

/** A machine that is on and does nothing. */
interface Resting {
  readonly built: Built;
  readonly volts: Volts;
  readonly alive: ReadonlySet<string>;
}

/** Which of the tried things are on, and in which of its motions each. */
interface Command {
  readonly isOn: (n: number) => boolean;
  readonly motion: number;
}

interface Told {
  readonly isOn: (n: number) => boolean;
  readonly does: readonly boolean[];
  readonly at: Resting;
}

/**
 * Finds out what a machine does with something wrong by simulating its circuit in ngspice: netlists are made from elements and
 * wires alone, by code that shares nothing with the model of joined sets. Which things are tried is given; what a program
 * drives with several drivers at once, and what is heard, are not tried.
 */
export class FaultBench {
  readonly #machine: Machine;
  readonly #network: ServiceNetwork;
  readonly #tried: readonly Tried[];
  readonly #all: Built;
  readonly #circuit: Circuit;
  readonly #life: Life;
  /** Volts of the sound machine while everything is commanded. */
  readonly #soundOn: Volts;

  constructor(
    machine: Machine,
    wires: Wires,
    network: ServiceNetwork,
    functions: readonly MachineFunction[],
  ) {
    this.#machine = machine;
    this.#network = network;
    // Contacts that are closed whenever the machine is on: its switch, the interlocks of its doors.
    const standing = new Set(
      network.joints.flatMap(({ element, id }, n) =>
        element?.row.kind === "contact" && network.leads[n] === true ? [id] : [],
      ),
    );
    const elements = machine.elements.map(
      (one): PlacedElement =>
        standing.has(one.id) ? { ...one, row: { ...one.row, normally: "closed" } } : one,
    );
    this.#all = { elements, wires, dead: new Set() };
    const element = (joint: number | undefined): PlacedElement | null =>
      network.joints[joint ?? -1]?.element ?? null;
    const tried = functions.flatMap(({ joint, controls: all }, f) => {
      const own = element(joint);
      // A receiver that conducts while light falls on it is not switched by anything in the circuit.
      const isReceiver = own?.row.kind === "contact" && own.row.normally === "closed";
      if (own === null || own.row.kind === "speaker" || isReceiver) return [];
      const controls = all.flatMap((n) => element(n) ?? []);
      return controls.length === 1 || controls.every(({ row }) => row.kind === "driver")
        ? [{ f, own, motions: motionsOf(controls) }]
        : [];
    });
    this.#circuit = new Circuit(machine);
    const commands = tried.flatMap(({ own, motions: [controls = []] }) =>
      controls.map(({ id, row }) => (row.kind === "driver" ? id : own.id)),
    );
    const [rest = NO_VOLTS, on = NO_VOLTS] = this.#circuit.volts(this.#all, [new Set(), new Set(commands)]);
    this.#soundOn = on;
    this.#life = new Life(machine, network, this.#circuit, this.#all, rest);
    // What the circuit alone does not show to work (receivers of light) is not tried.
    this.#tried = tried;
    const everyone = new Set(machine.elements.map(({ itemId }) => itemId));
    const [off, does] = [this.#does(this.#all, rest, everyone), this.#does(this.#all, on, everyone)];
    this.#tried = tried.filter((_, n) => off[n] === false && does[n] === true);
  }

  /** Runs of the circuit so far. */
  get simulations(): number {
    return this.#circuit.simulations;
  }

  /** Functions that are tried. */
  get tried(): readonly number[] {
    return this.#tried.map(({ f }) => f);
  }

  /** The machine with some causes in it at once. */
  built(suspects: readonly Suspect[]): Built {
    return suspects.reduce((built, { fault }) => withFault(built, this.#network, fault), this.#all);
  }

  /** What the tried functions do with some causes at once, other than work. */
  symptoms(suspects: readonly Suspect[]): ReadonlyMap<number, Symptom> {
    // What is held in its place does not move, although the electricity is sound.
    const held = new Set(
      suspects.flatMap(({ fault }) =>
        fault.kind === "mechanical" ? (this.#network.joints[fault.joint]?.id ?? []) : [],
      ),
    );
    const resting = this.#settled(this.built(suspects));
    const off = this.#does(resting.built, resting.volts, resting.alive);
    // A fuse that opened at a command stays open; what turns both ways is sent both ways.
    const [forth] = this.#told(resting, [{ isOn: () => true, motion: 0 }]);
    const [back] = this.#told(forth?.at ?? resting, [{ isOn: () => true, motion: 1 }]);
    const turns = this.#told(
      back?.at ?? resting,
      turnsOf(this.#tried).map((isOn) => ({ isOn, motion: 0 })),
    );
    const found = new Map<number, Symptom>();
    this.#tried.forEach(({ f, own }, n) => {
      if (held.has(own.id) && own.row.kind !== "contact") found.set(f, "dead");
      else if (off[n] === true) found.set(f, "on");
      else if (forth?.does[n] !== true || back?.does[n] !== true) found.set(f, "dead");
      else if (turns.some(({ isOn, does }) => does[n] !== isOn(n))) found.set(f, "mixed");
    });
    return found;
  }

  /** Ohms that a meter reads between two nodes with some causes in the machine and its power off. */
  ohms(suspects: readonly Suspect[], a: string, b: string): number {
    const { elements, wires, dead } = this.built(suspects);
    const [like] = elements;
    if (like === undefined) return Number.POSITIVE_INFINITY;
    const [red, black] = [this.#probed(suspects, a), this.#probed(suspects, b)];
    const { volt, ohm } = METER;
    const probes = [
      extraElement(like, "meter", "source", "meter", black, { volt }),
      extraElement(like, "meter ohm", "resistor", "meter", red, { ohm }),
    ];
    const off = elements.filter(({ row }) => row.kind !== "source");
    const [volts] = this.#circuit.run({ elements: [...off, ...probes], wires, dead }, [new Set()], black);
    const across = volts?.get(red) ?? 0;
    return (across * ohm) / Math.max(1e-12, volt - across);
  }

  /** Volts between two nodes with some causes in the machine while it is on and does nothing; by the nodes. */
  volts(suspects: readonly Suspect[]): (plus: string, minus: string) => number {
    const { volts } = this.#settled(this.built(suspects));
    return (plus, minus) =>
      (volts.get(this.#probed(suspects, plus)) ?? 0) - (volts.get(this.#probed(suspects, minus)) ?? 0);
  }

  #probed(suspects: readonly Suspect[], node: string): string {
    const faults = suspects.map(({ fault }) => fault);
    return probed(this.#network, faults, node);
  }

  /** A machine that is switched on, after all that opens and dies by itself did so. */
  #settled(made: Built): Resting {
    let built = made;
    for (let round = 0; ; round++) {
      const [volts = NO_VOLTS] = this.#circuit.volts(built, [new Set()]);
      const alive = this.#life.alive(built, volts);
      const next = round < MOST_ROUNDS ? this.#after(built, volts, alive) : null;
      if (next === null) return { built, volts, alive };
      built = next;
    }
  }

  /** What everything does while some things are commanded, and the machine after the fuses that this opened. */
  #told(resting: Resting, commands: readonly Command[]): readonly Told[] {
    const volts = this.#circuit.volts(
      resting.built,
      commands.map((one) => this.#closedBy(resting, one)),
    );
    return commands.map((command, n) => {
      let [at, now] = [resting, volts[n] ?? NO_VOLTS];
      for (let round = 0; ; round++) {
        const { built, alive } = at;
        const blown = this.#blown(built, now, true);
        if (blown.size === 0 || round >= MOST_ROUNDS)
          return { isOn: command.isOn, does: this.#does(built, now, alive), at };
        at = this.#settled({ ...built, elements: built.elements.filter(({ id }) => !blown.has(id)) });
        [now = NO_VOLTS] = this.#circuit.volts(at.built, [this.#closedBy(at, command)]);
      }
    });
  }

  #closedBy({ built, alive }: Resting, { isOn, motion }: Command): ReadonlySet<string> {
    const there = new Set(built.elements.map(({ id }) => id));
    return new Set(
      this.#tried.flatMap(({ own, motions }, n) => {
        if (!isOn(n)) return [];
        return (motions[motion % motions.length] ?? []).flatMap(({ id, itemId, row }) => {
          if (row.kind === "driver") return alive.has(itemId) && there.has(id) ? [id] : [];
          // A sensor without its supply closes nothing.
          return there.has(own.id) && alive.has(own.itemId) ? [own.id] : [];
        });
      }),
    );
  }

  /** Whether each tried function answers: a driven thing has its volts, an input is pulled down. */
  #does(built: Built, volts: Volts, alive: ReadonlySet<string>): readonly boolean[] {
    const there = new Set(built.elements.map(({ id }) => id));
    return this.#tried.map(({ own, motions }) => {
      const control = motions[0]?.[0];
      if (control?.row.kind === "input") {
        const isRead = alive.has(control.itemId) && there.has(control.id);
        return isRead && across(volts, control) < SENSE.volts / 2;
      }
      const sound = shareOf(this.#soundOn, own);
      return there.has(own.id) && sound > 0 && shareOf(volts, own) / sound > ENOUGH;
    });
  }

  /** The machine after its supplies without input have gone and its fuses have opened; null: nothing more does. */
  #after(built: Built, rest: Volts, alive: ReadonlySet<string>): Built | null {
    const blown = this.#blown(built, rest, false);
    // A fuse opens before what sags behind it has gone: whether that comes back is seen in the next round.
    const gone = new Set(
      built.elements.flatMap(({ id, itemId, row }) =>
        blown.size === 0 && row.kind === "source" && !alive.has(itemId) ? [id] : [],
      ),
    );
    if (blown.size + gone.size === 0) return null;
    return { ...built, elements: built.elements.filter(({ id }) => !blown.has(id) && !gone.has(id)) };
  }

  /**
   * The fuse that opens, the others may hold when it has: the one that is furthest beyond its rating. In a machine one thing
   * is commanded after the other: where all are at once, and a fuse before several carries all their shorts together, it is
   * the one with the least rating of those beyond, and of two alike, which one thing alone would try equally, the one that
   * carries less.
   */
  #blown(built: Built, volts: Volts, areAllOn: boolean): ReadonlySet<string> {
    const { fuse_drop_mv } = this.#machine.shop.numbers;
    let worst: string | null = null;
    let most = 0;
    for (const one of built.elements) {
      if (one.row.kind !== "fuse") continue;
      const ratedA = one.row.amp ?? 1;
      const ohm = one.row.ohm ?? fuse_drop_mv / 1000 / ratedA;
      const times = across(volts, one) / ohm / ratedA;
      if (times <= OPENS_AT) continue;
      const rank = areAllOn ? 1 / ratedA - times / 1e9 : times;
      if (rank > most) [worst, most] = [one.id, rank];
    }
    return new Set(worst === null ? [] : [worst]);
  }
}
