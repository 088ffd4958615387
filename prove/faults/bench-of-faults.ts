import { NetlistWriter } from "../../packages/engine/src/electric/testing/netlist.ts";
import { type NodeVolts, simulateTurns } from "../../packages/engine/src/electric/testing/ngspice.ts";
import type {
  Machine,
  MachineFunction,
  PlacedElement,
  ServiceNetwork,
  Suspect,
  Symptom,
} from "../../packages/engine/src/index.ts";
import { type Built, extraElement, probed, touchesData, type Wires, withFault } from "./built.ts";

/** Beyond this multiple of its rating a fuse opens at once. */
const OPENS_AT = 3;
/** Less than this share of what there is in a sound machine does not feed a board, light a lamp or pull a coil. */
const ENOUGH = 0.6;
/** Volts that a board is made for where its load says none. */
const BOARD_V = 12;
/** Coils are made weaker by this, in the sound machine too, so that all may be commanded at once and no fuse minds. */
const WEAKER = 40;
/** Input that is read: volts of its own pull-up, and behind how many ohms. */
const SENSE = { volts: 5, ohm: 10_000 } as const;
/** A meter for ohms: so few volts that no diode conducts. */
const METER = { volt: 0.2, ohm: 10 } as const;
const MOST_ROUNDS = 12;
/** What a driver of message lines has in series (ISO 8482 lines are matched at 120 Ω, from memory). */
const LINE_OHM = 120;
/** Node between the two ends of a message line that is tried. */
const MIDDLE = "middle";
const OPTIONS = ".options reltol=1e-4 abstol=1e-9 vntol=1e-6 gmin=1e-10 itl1=2000 rshunt=1e10";

/** Controls that work together: of several those of one motion, which is what stands before the comma of their control. */
function motionsOf(controls: readonly PlacedElement[]): readonly (readonly PlacedElement[])[] {
  const motion = ({ row }: PlacedElement): string => row.control?.split(",")[0] ?? "";
  return [...new Set(controls.map(motion))].map((name) => controls.filter((one) => motion(one) === name));
}

type Volts = NodeVolts;
const NO_VOLTS: Volts = new Map();

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
  #tried: readonly {
    readonly f: number;
    readonly own: PlacedElement;
    /** One driver or input; a motor in a bridge has two drivers that turn it one way, and two the other. */
    readonly motions: readonly (readonly PlacedElement[])[];
  }[];
  readonly #all: Built;
  readonly #sound: { readonly rest: Volts; readonly on: Volts };
  /** Loads that feed boards and supplies, by item. */
  readonly #feeds: ReadonlyMap<string, readonly PlacedElement[]>;
  /** Message inputs by item, and the drivers of other items that are on the same wires in a sound machine. */
  readonly #hears: ReadonlyMap<
    string,
    readonly { readonly input: PlacedElement; readonly from: readonly PlacedElement[] }[]
  >;
  simulations = 0;

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
    this.#tried = functions.flatMap(({ joint, controls: all }, f) => {
      const own = element(joint);
      // A receiver that conducts while light falls on it is not switched by anything in the circuit.
      const isReceiver = own?.row.kind === "contact" && own.row.normally === "closed";
      if (own === null || own.row.kind === "speaker" || isReceiver) return [];
      const controls = all.flatMap((n) => element(n) ?? []);
      return controls.length === 1 || controls.every(({ row }) => row.kind === "driver")
        ? [{ f, own, motions: motionsOf(controls) }]
        : [];
    });
    const loads = machine.elements.filter(({ row }) => row.kind === "load");
    const feeds = new Map<string, PlacedElement[]>();
    for (const load of loads) feeds.set(load.itemId, [...(feeds.get(load.itemId) ?? []), load]);
    this.#feeds = feeds;
    this.#hears = this.#messages();
    const [rest = NO_VOLTS, on = NO_VOLTS] = this.#volts(this.#all, [new Set(), new Set(this.#commands())]);
    this.#sound = { rest, on };
    // What the circuit alone does not show to work (receivers of light) is not tried.
    const everyone = new Set(machine.elements.map(({ itemId }) => itemId));
    const [off, does] = [this.#does(this.#all, rest, everyone), this.#does(this.#all, on, everyone)];
    this.#tried = this.#tried.filter((_, n) => off[n] === false && does[n] === true);
  }

  /** Functions that are tried. */
  get tried(): readonly number[] {
    return this.#tried.map(({ f }) => f);
  }

  #commands(): readonly string[] {
    return this.#tried.flatMap(({ own, motions: [controls = []] }) =>
      controls.map(({ id, row }) => (row.kind === "driver" ? id : own.id)),
    );
  }

  /** Inputs, each with the drivers that speak on its wires: found by putting volts on one end of a circuit of wires alone. */
  #messages() {
    const { joints, messages } = this.#network;
    const hears = new Map<string, { input: PlacedElement; from: PlacedElement[] }[]>();
    const drivers = this.#machine.elements.filter(({ row }) => row.kind === "driver");
    for (const joint of messages) {
      const input = joints[joint]?.element;
      if (input === null || input === undefined) continue;
      const reach = this.#reachable(this.#all, input);
      const from = drivers.filter(
        (one) => one.itemId !== input.itemId && reach(one.fromPointId, one.toPointId),
      );
      if (from.length > 0) hears.set(input.itemId, [...(hears.get(input.itemId) ?? []), { input, from }]);
    }
    return hears;
  }

  /** Whether two points lie at the ends of an input, by volts that are put on its ends and nothing else. */
  #reachable(built: Built, input: PlacedElement): (a: string, b: string) => boolean {
    const wanted = (kind: string): boolean => kind === "link" || kind === "fuse";
    const elements = built.elements.filter(({ row }) => wanted(row.kind));
    // One end up, the other down, as a driver of lines does it that gives way to a short: what hangs on neither stays between.
    const probes = (
      [
        ["up", input.fromPointId, 1],
        ["down", input.toPointId, -1],
      ] as const
    ).flatMap(([id, point, volt]) => [
      extraElement(input, `probe ${id}`, "source", `probe ${id}`, MIDDLE, { volt }),
      extraElement(input, `probe ${id} ohm`, "resistor", `probe ${id}`, point, { ohm: LINE_OHM }),
    ]);
    const [volts] = this.#run({ ...built, elements: [...elements, ...probes] }, [new Set()], MIDDLE);
    const isNear = (point: string, volt: number): boolean => Math.abs((volts?.get(point) ?? 0) - volt) < 0.2;
    return (a, b) => isNear(a, 1) && isNear(b, -1);
  }

  #run(built: Built, turns: readonly ReadonlySet<string>[], ground: string): readonly Volts[] {
    this.simulations += turns.length;
    const known = new Set(this.#all.elements.map(({ id }) => id));
    const elements = built.elements.map((one): PlacedElement => {
      if (one.row.kind === "coil") return { ...one, row: { ...one.row, ohm: (one.row.ohm ?? 0) * WEAKER } };
      // A board takes less when it gets less, and nothing when a wire of it is off.
      const isBoard = one.row.kind === "load" && known.has(one.id);
      if (!isBoard) return one;
      return {
        ...one,
        row: { ...one.row, kind: "resistor", ohm: (one.row.volt ?? BOARD_V) / (one.row.amp || 0.01) },
      };
    });
    const machine = { ...this.#machine, elements };
    const netlist = new NetlistWriter({
      machine,
      wires: built.wires,
      corner: { contacts: "new", supply: "nominal", temperature: "nominal" },
      closed: new Set(),
      switches: new Set(turns.flatMap((closed) => [...closed])),
      on: new Set(built.elements.flatMap(({ id, row }) => (row.kind === "load" ? [id] : []))),
      fed: new Set(built.elements.flatMap(({ id, row }) => (row.kind === "led" ? [id] : []))),
      ground,
    }).write();
    // A dark lamp and a lit one differ by volts: micro-volts are close enough, and found sooner.
    return simulateTurns({ ...netlist, text: netlist.text.replace(/^\.options .*$/mu, OPTIONS) }, turns);
  }

  /** Volts of every node while some things are commanded, several times in turn; inputs have their pull-ups. */
  #volts(built: Built, turns: readonly ReadonlySet<string>[]): readonly Volts[] {
    // A pull-up as its equivalent of current and resistor: it adds no source of volts.
    const sensed = built.elements.flatMap((one) =>
      one.row.kind === "input"
        ? [
            extraElement(one, `${one.id} ohm`, "resistor", one.fromPointId, one.toPointId, {
              ohm: SENSE.ohm,
            }),
            extraElement(one, `${one.id} amp`, "load", one.toPointId, one.fromPointId, {
              amp: SENSE.volts / SENSE.ohm,
            }),
          ]
        : [],
    );
    return this.#run({ ...built, elements: [...built.elements, ...sensed] }, turns, this.#ground());
  }

  #ground(): string {
    return this.#machine.book.tables.supplies[0]?.negative ?? "";
  }

  static #across(volts: Volts, { fromPointId, toPointId }: PlacedElement): number {
    return Math.abs((volts.get(fromPointId) ?? 0) - (volts.get(toPointId) ?? 0));
  }

  /** What goes through a driven thing, up to a factor: volts across it beyond those that it needs to let any pass. */
  static #share(volts: Volts, one: PlacedElement): number {
    const across = (volts.get(one.fromPointId) ?? 0) - (volts.get(one.toPointId) ?? 0);
    if (one.row.kind !== "led") return Math.abs(across);
    const isBare = one.row.ohm === null && one.row.amp !== null;
    return Math.max(0, across - (one.row.volt ?? 0) * (isBare ? 0.8 : 1));
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
      this.#turns().map((isOn) => ({ isOn, motion: 0 })),
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
    const [volts] = this.#run({ elements: [...off, ...probes], wires, dead }, [new Set()], black);
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
      const [volts = NO_VOLTS] = this.#volts(built, [new Set()]);
      const alive = this.#alive(built, volts);
      const next = round < MOST_ROUNDS ? this.#after(built, volts, alive) : null;
      if (next === null) return { built, volts, alive };
      built = next;
    }
  }

  /** What everything does while some things are commanded, and the machine after the fuses that this opened. */
  #told(resting: Resting, commands: readonly Command[]): readonly Told[] {
    const volts = this.#volts(
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
        [now = NO_VOLTS] = this.#volts(at.built, [this.#closedBy(at, command)]);
      }
    });
  }

  /**
   * Commands that tell any two things apart: each thing that is commanded by itself has a word of bits, all with the same
   * number of ones, so that of any two each is on once while the other is not; in turn those are on whose word has the bit.
   */
  #turns(): readonly ((n: number) => boolean)[] {
    const commandOf = (n: number): string => {
      const one = this.#tried[n];
      const [control] = one?.motions[0] ?? [];
      return (control?.row.kind === "driver" ? control.id : one?.own.id) ?? "";
    };
    const commands = [...new Set([...this.#tried.keys()].map(commandOf))];
    const words: number[] = [];
    let length = 2;
    for (; words.length < commands.length; length++) {
      words.length = 0;
      for (let word = 0; word < 1 << length; word++)
        if (word.toString(2).replaceAll("0", "").length === length >> 1) words.push(word);
    }
    const wordOf = new Map(commands.map((id, n) => [id, words[n] ?? 0]));
    return Array.from(
      { length: length - 1 },
      (_, bit) =>
        (n: number): boolean =>
          (((wordOf.get(commandOf(n)) ?? 0) >> bit) & 1) === 1,
    );
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
        return isRead && FaultBench.#across(volts, control) < SENSE.volts / 2;
      }
      const sound = FaultBench.#share(this.#sound.on, own);
      return there.has(own.id) && sound > 0 && FaultBench.#share(volts, own) / sound > ENOUGH;
    });
  }

  /** Items that are fed and hear. */
  #alive(built: Built, rest: Volts): ReadonlySet<string> {
    const there = new Set(built.elements.map(({ id }) => id));
    const alive = new Set<string>();
    for (const { itemId } of this.#all.elements) {
      if (built.dead.has(itemId)) continue;
      const loads = this.#feeds.get(itemId) ?? [];
      const isFed = loads.every((load) => {
        const sound = FaultBench.#across(this.#sound.rest, load);
        return there.has(load.id) && FaultBench.#across(rest, load) >= ENOUGH * sound;
      });
      if (isFed) alive.add(itemId);
    }
    for (let dies = true; dies; ) {
      dies = false;
      for (const [itemId, all] of this.#hears) {
        if (!alive.has(itemId)) continue;
        const isHearing = all.every(({ input, from }) => {
          if (!there.has(input.id)) return false;
          const speaking = from.filter(({ id, itemId: of }) => there.has(id) && alive.has(of));
          if (speaking.length === 0) return false;
          const reach = this.#heard(built, input);
          return speaking.some((one) => reach(one.fromPointId, one.toPointId));
        });
        if (isHearing) continue;
        alive.delete(itemId);
        dies = true;
      }
    }
    return alive;
  }

  /** Reach of an input; where nothing on its wires is another than in a sound machine it is that of the sound one. */
  #heard(built: Built, input: PlacedElement): (a: string, b: string) => boolean {
    if (built.wires === this.#all.wires && built.elements === this.#all.elements) return () => true;
    if (this.#reachesOf !== built.wires) {
      this.#reachesOf = built.wires;
      this.#reaches.clear();
    }
    const leading = built.elements.flatMap(({ id, row }) =>
      row.kind === "link" || row.kind === "fuse" ? [id] : [],
    );
    const key = `${input.id} ${leading.join(" ")}`;
    const known = this.#reaches.get(key);
    if (known !== undefined) return known;
    const made = touchesData(this.#machine, this.#all, built) ? this.#reachable(built, input) : () => true;
    this.#reaches.set(key, made);
    return made;
  }
  /** Reaches of inputs with the wires that were asked last, by the input and what leads. */
  readonly #reaches = new Map<string, (a: string, b: string) => boolean>();
  #reachesOf: Wires | null = null;

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
      const times = FaultBench.#across(volts, one) / ohm / ratedA;
      if (times <= OPENS_AT) continue;
      const rank = areAllOn ? 1 / ratedA - times / 1e9 : times;
      if (rank > most) [worst, most] = [one.id, rank];
    }
    return new Set(worst === null ? [] : [worst]);
  }
}
