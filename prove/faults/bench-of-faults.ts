import { NetlistWriter } from "../../packages/engine/src/electric/testing/netlist.ts";
import { simulate } from "../../packages/engine/src/electric/testing/ngspice.ts";
import type {
  Machine,
  MachineFunction,
  PlacedElement,
  ServiceFault,
  ServiceNetwork,
  SizedWire,
  Suspect,
  Symptom,
} from "../../packages/engine/src/index.ts";

type Wires = readonly Pick<SizedWire, "id" | "a" | "b" | "wireType" | "finishedMm">[];

/** A machine as it is built with something wrong: other elements, other wires. */
interface Built {
  readonly elements: readonly PlacedElement[];
  readonly wires: Wires;
  /** Items that do nothing although they are fed. */
  readonly dead: ReadonlySet<string>;
}

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
const MOST_ROUNDS = 12;
const LINK_OHM = 0.02;
/** What a driver of message lines has in series (ISO 8482 lines are matched at 120 Ω, from memory). */
const LINE_OHM = 120;
/** Node between the two ends of a message line that is tried. */
const MIDDLE = "middle";
const OPTIONS = ".options reltol=1e-4 abstol=1e-9 vntol=1e-6 gmin=1e-10 itl1=2000 rshunt=1e10";

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
    readonly control: PlacedElement;
  }[];
  readonly #all: Built;
  readonly #sound: { readonly rest: ReadonlyMap<string, number>; readonly on: ReadonlyMap<string, number> };
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
    this.#tried = functions.flatMap(({ joint, controls, kind }, f) => {
      const [own, control] = [element(joint), element(controls[0])];
      if (controls.length !== 1 || own === null || control === null || own.row.kind === "speaker") return [];
      return [{ f, own, control, kind }];
    });
    const loads = machine.elements.filter(({ row }) => row.kind === "load");
    const feeds = new Map<string, PlacedElement[]>();
    for (const load of loads) feeds.set(load.itemId, [...(feeds.get(load.itemId) ?? []), load]);
    this.#feeds = feeds;
    this.#hears = this.#messages();
    const rest = this.#volts(this.#all, new Set());
    const on = this.#volts(this.#all, new Set(this.#commands()));
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

  #commands(pattern: (n: number) => boolean = () => true): readonly string[] {
    return this.#tried.flatMap(({ own, control }, n) =>
      pattern(n) ? [control.row.kind === "driver" ? control.id : own.id] : [],
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
      this.#element(input, `probe ${id}`, "source", `probe ${id}`, MIDDLE, { volt }),
      this.#element(input, `probe ${id} ohm`, "resistor", `probe ${id}`, point, { ohm: LINE_OHM }),
    ]);
    const volts = this.#run({ ...built, elements: [...elements, ...probes] }, new Set(), MIDDLE);
    const isNear = (point: string, volt: number): boolean => Math.abs((volts.get(point) ?? 0) - volt) < 0.2;
    return (a, b) => isNear(a, 1) && isNear(b, -1);
  }

  #element(
    like: PlacedElement,
    id: string,
    kind: PlacedElement["row"]["kind"],
    fromPointId: string,
    toPointId: string,
    values: Partial<PlacedElement["row"]>,
  ): PlacedElement {
    return { id, itemId: like.itemId, fromPointId, toPointId, row: { ...like.row, id, kind, ...values } };
  }

  #run(built: Built, closed: ReadonlySet<string>, ground: string): ReadonlyMap<string, number> {
    this.simulations++;
    const elements = built.elements.map((one): PlacedElement => {
      if (one.row.kind === "coil") return { ...one, row: { ...one.row, ohm: (one.row.ohm ?? 0) * WEAKER } };
      // A board takes less when it gets less, and nothing when a wire of it is off.
      const isBoard = one.row.kind === "load" && this.#all.elements.some(({ id }) => id === one.id);
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
      closed,
      switches: new Set(),
      on: new Set(built.elements.flatMap(({ id, row }) => (row.kind === "load" ? [id] : []))),
      fed: new Set(built.elements.flatMap(({ id, row }) => (row.kind === "led" ? [id] : []))),
      ground,
    }).write();
    // A dark lamp and a lit one differ by volts: micro-volts are close enough, and found sooner.
    return simulate({ ...netlist, text: netlist.text.replace(/^\.options .*$/mu, OPTIONS) });
  }

  /** Volts of every node with some things commanded; inputs have their pull-ups. */
  #volts(built: Built, closed: ReadonlySet<string>): ReadonlyMap<string, number> {
    // A pull-up as its equivalent of current and resistor: it adds no source of volts.
    const sensed = built.elements.flatMap((one) =>
      one.row.kind === "input"
        ? [
            this.#element(one, `${one.id} ohm`, "resistor", one.fromPointId, one.toPointId, {
              ohm: SENSE.ohm,
            }),
            this.#element(one, `${one.id} amp`, "load", one.toPointId, one.fromPointId, {
              amp: SENSE.volts / SENSE.ohm,
            }),
          ]
        : [],
    );
    return this.#run({ ...built, elements: [...built.elements, ...sensed] }, closed, this.#ground());
  }

  #ground(): string {
    return this.#machine.book.tables.supplies[0]?.negative ?? "";
  }

  static #across(volts: ReadonlyMap<string, number>, { fromPointId, toPointId }: PlacedElement): number {
    return Math.abs((volts.get(fromPointId) ?? 0) - (volts.get(toPointId) ?? 0));
  }

  /** What goes through a driven thing, up to a factor: volts across it beyond those that it needs to let any pass. */
  static #share(volts: ReadonlyMap<string, number>, one: PlacedElement): number {
    const across = (volts.get(one.fromPointId) ?? 0) - (volts.get(one.toPointId) ?? 0);
    if (one.row.kind !== "led") return Math.abs(across);
    const isBare = one.row.ohm === null && one.row.amp !== null;
    return Math.max(0, across - (one.row.volt ?? 0) * (isBare ? 0.8 : 1));
  }

  /** What the tried functions do with a cause, other than work. */
  symptoms(suspect: Suspect, codes: boolean): ReadonlyMap<number, Symptom> {
    const joint = "joint" in suspect.fault ? this.#network.joints[suspect.fault.joint] : undefined;
    let built = this.#with(suspect.fault);
    let alive: ReadonlySet<string> = new Set();
    let rest: ReadonlyMap<string, number> = new Map();
    for (let round = 0; round < MOST_ROUNDS; round++) {
      rest = this.#volts(built, new Set());
      alive = this.#alive(built, rest);
      const next = this.#after(built, rest, alive);
      if (next === null) break;
      built = next;
    }
    const tell = (
      pattern: (n: number) => boolean,
    ): { readonly does: readonly boolean[]; readonly built: Built } => {
      let own = built;
      for (let round = 0; ; round++) {
        const volts = this.#volts(own, this.#closedBy(own, alive, pattern));
        const blown = this.#blown(own, volts);
        if (blown.size === 0 || round >= MOST_ROUNDS)
          return { does: this.#does(own, volts, alive), built: own };
        own = { ...own, elements: own.elements.filter(({ id }) => !blown.has(id)) };
      }
    };
    const off = this.#does(built, rest, alive);
    const all = tell(() => true);
    // A fuse that opened at a command stays open.
    built = all.built;
    // Each thing that is commanded by itself has a number; in turn those are on whose number has a bit.
    const numbers = new Map<string, number>();
    for (const { own, control } of this.#tried) {
      const id = control.row.kind === "driver" ? control.id : own.id;
      if (!numbers.has(id)) numbers.set(id, numbers.size + 1);
    }
    const numberOf = (n: number): number => {
      const one = this.#tried[n];
      const id = one?.control.row.kind === "driver" ? one.control.id : one?.own.id;
      return numbers.get(id ?? "") ?? 0;
    };
    const words = codes
      ? Array.from({ length: Math.ceil(Math.log2(numbers.size + 2)) }, (_, bit) => bit)
      : [];
    // Each bit both ways round: of two that go together neither is on whenever the other is.
    const turns = words.flatMap((bit) =>
      [1, 0].map((on) => (n: number) => ((numberOf(n) >> bit) & 1) === on),
    );
    const answers = turns.map((isOn) => ({ isOn, does: tell(isOn).does }));
    const found = new Map<number, Symptom>();
    this.#tried.forEach(({ f, own }, n) => {
      const isHeld = suspect.fault.kind === "mechanical" && joint?.element?.id === own.id;
      if (isHeld && own.row.kind !== "contact") found.set(f, "dead");
      else if (off[n] === true) found.set(f, "on");
      else if (all.does[n] !== true) found.set(f, "dead");
      else if (answers.some(({ isOn, does }) => does[n] !== isOn(n))) found.set(f, "mixed");
    });
    return found;
  }

  #closedBy(built: Built, alive: ReadonlySet<string>, pattern: (n: number) => boolean): ReadonlySet<string> {
    const there = new Set(built.elements.map(({ id }) => id));
    return new Set(
      this.#tried.flatMap(({ own, control }, n) => {
        if (!pattern(n)) return [];
        if (control.row.kind === "driver")
          return alive.has(control.itemId) && there.has(control.id) ? [control.id] : [];
        return there.has(own.id) ? [own.id] : [];
      }),
    );
  }

  /** Whether each tried function answers: a driven thing has its volts, an input is pulled down. */
  #does(built: Built, volts: ReadonlyMap<string, number>, alive: ReadonlySet<string>): readonly boolean[] {
    const there = new Set(built.elements.map(({ id }) => id));
    return this.#tried.map(({ own, control }) => {
      if (control.row.kind === "input") {
        const isRead = alive.has(control.itemId) && there.has(control.id);
        return isRead && FaultBench.#across(volts, control) < SENSE.volts / 2;
      }
      const sound = FaultBench.#share(this.#sound.on, own);
      return there.has(own.id) && sound > 0 && FaultBench.#share(volts, own) / sound > ENOUGH;
    });
  }

  /** Items that are fed and hear. */
  #alive(built: Built, rest: ReadonlyMap<string, number>): ReadonlySet<string> {
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
    const key = input.id;
    const known = this.#reaches.get(built)?.get(key);
    if (known !== undefined) return known;
    const made = this.#touches(built, input) ? this.#reachable(built, input) : () => true;
    const own = this.#reaches.get(built) ?? new Map<string, (a: string, b: string) => boolean>();
    own.set(key, made);
    this.#reaches.set(built, own);
    return made;
  }
  readonly #reaches = new WeakMap<Built, Map<string, (a: string, b: string) => boolean>>();

  /** Whether the fault lies on a net of class data at all. */
  #touches(built: Built, _input: PlacedElement): boolean {
    const data = new Set(
      this.#machine.ends.flatMap(({ point, net }) =>
        this.#machine.nets.get(net)?.class === "data" ? [point] : [],
      ),
    );
    const was = new Set(this.#all.wires.map((wire) => `${wire.id} ${wire.a} ${wire.b}`));
    const is = new Set(built.wires.map((wire) => `${wire.id} ${wire.a} ${wire.b}`));
    const others = [
      ...this.#all.wires.filter((wire) => !is.has(`${wire.id} ${wire.a} ${wire.b}`)),
      ...built.wires.filter((wire) => !was.has(`${wire.id} ${wire.a} ${wire.b}`)),
    ];
    const ids = new Set(built.elements.map(({ id }) => id));
    const known = new Set(this.#all.elements.map(({ id }) => id));
    const elements = [
      ...this.#all.elements.filter(({ id }) => !ids.has(id)),
      ...built.elements.filter(({ id }) => !known.has(id)),
    ];
    return (
      others.some(({ a, b }) => data.has(a) || data.has(b)) ||
      elements.some(({ fromPointId: a, toPointId: b }) => data.has(a) || data.has(b))
    );
  }

  /** The machine after its supplies without input have gone and its fuses have opened; null: nothing more does. */
  #after(built: Built, rest: ReadonlyMap<string, number>, alive: ReadonlySet<string>): Built | null {
    const blown = this.#blown(built, rest);
    const gone = new Set(
      built.elements.flatMap(({ id, itemId, row }) =>
        row.kind === "source" && !alive.has(itemId) ? [id] : [],
      ),
    );
    if (blown.size + gone.size === 0) return null;
    return { ...built, elements: built.elements.filter(({ id }) => !blown.has(id) && !gone.has(id)) };
  }

  /** The fuse that is furthest beyond its rating; the others may hold when it is open. */
  #blown(built: Built, volts: ReadonlyMap<string, number>): ReadonlySet<string> {
    const { fuse_drop_mv } = this.#machine.shop.numbers;
    let worst: string | null = null;
    let most = OPENS_AT;
    for (const one of built.elements) {
      if (one.row.kind !== "fuse") continue;
      const ohm = one.row.ohm ?? fuse_drop_mv / 1000 / (one.row.amp ?? 1);
      const times = FaultBench.#across(volts, one) / ohm / (one.row.amp ?? 1);
      if (times > most) [worst, most] = [one.id, times];
    }
    return new Set(worst === null ? [] : [worst]);
  }

  /** The machine with a fault put into its elements and wires. */
  #with(fault: ServiceFault): Built {
    const { elements, wires, dead } = this.#all;
    const joint = "joint" in fault ? this.#network.joints[fault.joint] : undefined;
    const swap = (p: string, q: string): Wires => {
      const to = (end: string): string => (end === p ? q : end === q ? p : end);
      return wires.map((wire) => ({ ...wire, a: to(wire.a), b: to(wire.b) }));
    };
    const without = (id: string): readonly PlacedElement[] => elements.filter((one) => one.id !== id);
    const linked = (id: string): readonly PlacedElement[] =>
      elements.map((one) =>
        one.id === id ? { ...one, row: { ...one.row, kind: "link", ohm: LINK_OHM } } : one,
      );
    switch (fault.kind) {
      case "open":
        if (joint?.kind === "wire")
          return { elements, dead, wires: wires.filter(({ id }) => id !== joint.id) };
        // A contact that is out still holds together the wires that are crimped in it.
        if (joint?.kind === "contact") return { elements, dead, wires: swap(joint.id, `${joint.id} out`) };
        return { elements: without(joint?.id ?? ""), wires, dead };
      case "closed":
        return { elements: linked(joint?.id ?? ""), wires, dead };
      case "mechanical":
        if (joint?.element?.row.kind !== "contact") return this.#all;
        return { elements: fault.stuck ? linked(joint.id) : without(joint.id), wires, dead };
      case "short": {
        const [p = "", q = ""] = [this.#network.nodes[fault.a], this.#network.nodes[fault.b]];
        const [like] = elements;
        if (like === undefined) return this.#all;
        return {
          elements: [...elements, this.#element(like, "short", "link", p, q, { ohm: LINK_OHM })],
          wires,
          dead,
        };
      }
      case "swapped": {
        const [p, q] = [this.#network.joints[fault.a]?.id ?? "", this.#network.joints[fault.b]?.id ?? ""];
        return { elements, dead, wires: swap(p, q) };
      }
      case "dead":
        return {
          elements: elements.filter(({ itemId, row }) => itemId !== fault.itemId || row.kind !== "source"),
          wires,
          dead: new Set([fault.itemId]),
        };
    }
  }
}
