import { UnionFind } from "@pinwright/kernel";
import type { Corner, Machine, PlacedElement, SizedWire } from "../../model/index.ts";

/** What is simulated: a machine's elements and wires at one corner, with what is closed and what is on. */
export interface NetlistTask {
  readonly machine: Machine;
  readonly wires: readonly Pick<SizedWire, "id" | "a" | "b" | "wireType" | "finishedMm">[];
  readonly corner: Corner;
  /** Drivers and contacts that are closed; all others stay as they rest. */
  readonly closed: ReadonlySet<string>;
  /** Drivers and contacts that something can close: open they leak, all others are not there at all. */
  readonly switches: ReadonlySet<string>;
  /** Loads that draw a current of their own while they are on: boards, motors. */
  readonly on: ReadonlySet<string>;
  /** Loads that are fed when they are on: LEDs beside them are not there at all. */
  readonly fed: ReadonlySet<string>;
  /** Node at 0 V. */
  readonly ground: string;
}

export interface Netlist {
  readonly text: string;
  /** Name in the netlist of each node of the circuit: of a point's item side, of its wire side, of a splice. */
  readonly nameOf: ReadonlyMap<string, string>;
  /** Names of the resistors that stand for what can be switched, by element; and their ohms while it is closed. */
  readonly switchOf: ReadonlyMap<string, { readonly name: string; readonly closedOhm: number }>;
}

/** Ohms of what can be switched while it is open. */
export const OPEN_OHM = 1e7;

/** File that ngspice writes its results to, in the folder that it runs in. */
export const RAW_FILE = "result.raw";

const wireSide = (machine: Machine, end: string): string => (machine.points.has(end) ? `wire:${end}` : end);

/**
 * The netlist for ngspice, made from elements and wires alone: it shares no code with the network that it is to test,
 * neither for what is joined to what nor for the value of anything.
 */
export class NetlistWriter {
  readonly #task: NetlistTask;
  readonly #cards: string[] = [];
  readonly #joined: [string, string][] = [];
  readonly #nodes = new Set<string>();
  readonly #switchOf = new Map<string, { readonly name: string; readonly closedOhm: number }>();
  readonly #kelvin: number;

  constructor(task: NetlistTask) {
    this.#task = task;
    const { cold_c, hot_c } = task.machine.shop.numbers;
    const celsius = { cold: cold_c, nominal: 20, hot: hot_c }[task.corner.temperature];
    this.#kelvin = (234.5 + celsius) / 254.5;
  }

  write(): Netlist {
    const { machine, wires } = this.#task;
    const { numbers } = machine.shop;
    for (const { a, b, wireType, finishedMm } of wires) {
      const ohm = ((numbers.strand_lay * finishedMm) / 1000 / 58 / wireType.area_mm2) * this.#kelvin;
      this.#resistor(wireSide(machine, a), wireSide(machine, b), ohm);
    }
    this.#contacts();
    for (const element of machine.elements) this.#element(element);
    return this.#finish();
  }

  #contacts(): void {
    const { machine, wires, corner } = this.#task;
    const wear = corner.contacts === "worn" ? machine.shop.numbers.contact_worn : 1;
    const done = new Set<string>();
    const halves = new Map<string, string[]>();
    for (const { id, itemId, pin, landingId } of machine.points.values()) {
      if (machine.landings.get(landingId)?.half == null) continue;
      const key = `${itemId} ${pin}`;
      halves.set(key, [...(halves.get(key) ?? []), id]);
    }
    for (const pointId of new Set(wires.flatMap(({ a, b }) => [a, b]))) {
      const point = machine.points.get(pointId);
      if (point === undefined || done.has(pointId)) continue;
      const mate = halves.get(`${point.itemId} ${point.pin}`)?.find((id) => id !== pointId);
      const ohm = (point.family.contact_mohm / 1000) * wear;
      this.#resistor(`wire:${pointId}`, mate === undefined ? pointId : `wire:${mate}`, ohm);
      done.add(pointId);
      if (mate !== undefined) done.add(mate);
    }
  }

  #element(element: PlacedElement): void {
    const { row, fromPointId: a, toPointId: b, id } = element;
    const { machine, on, fed } = this.#task;
    const { numbers } = machine.shop;
    switch (row.kind) {
      case "link":
      case "resistor":
        if (row.ohm) this.#resistor(a, b, row.ohm);
        else this.#join(a, b);
        break;
      case "fuse":
        this.#resistor(a, b, row.ohm ?? numbers.fuse_drop_mv / 1000 / (row.amp ?? 1));
        break;
      case "coil":
        this.#resistor(a, b, (row.ohm ?? 0) * this.#kelvin);
        break;
      case "driver":
      case "contact":
        this.#switch(element, row.kind === "driver" ? numbers.driver_on_mohm / 1000 : 1e-6);
        break;
      case "source":
        this.#source(element);
        break;
      case "load":
        if (on.has(id)) this.#card("I", a, b, String(row.amp ?? 0));
        break;
      case "motor":
        this.#motor(element, on.has(id));
        break;
      case "led":
        if (fed.has(id)) this.#led(element);
        break;
      case "diode":
        this.#diode(a, b, row.volt ?? 0.8, row.ohm ?? 0.1);
        break;
      default:
    }
  }

  #switch({ row, fromPointId: a, toPointId: b, id }: PlacedElement, closedOhm: number): void {
    const { closed, switches } = this.#task;
    if (switches.has(id))
      this.#switchOf.set(id, { name: `R${this.#cards.length}`, closedOhm: row.ohm ?? closedOhm });
    if (closed.has(id) || (row.kind === "contact" && row.normally === "closed"))
      this.#resistor(a, b, row.ohm ?? closedOhm);
    else if (switches.has(id)) this.#resistor(a, b, OPEN_OHM);
  }

  #source({ row, fromPointId: a, toPointId: b }: PlacedElement): void {
    const supply = this.#task.machine.book.tables.supplies.find((s) => s.positive === a && s.negative === b);
    const sign = { low: -1, nominal: 0, high: 1 }[this.#task.corner.supply];
    const volts = (supply?.volts ?? row.volt ?? 0) * (1 + (sign * (supply?.tolerance_pct ?? 0)) / 100);
    this.#card("V", a, b, String(volts));
  }

  /** A motor that does not run is its winding alone, off a closed way. */
  #motor({ row, fromPointId: a, toPointId: b, id }: PlacedElement, runs: boolean): void {
    const ohm = (row.ohm ?? (row.volt ?? 0) / (row.amp ?? 1)) * this.#kelvin;
    const back = runs && row.ohm !== null ? Math.max(0, (row.volt ?? 0) - row.ohm * (row.amp ?? 0)) : 0;
    const inner = `back of ${id}`;
    this.#resistor(a, inner, ohm);
    this.#card("V", inner, b, String(back));
  }

  #led({ row, fromPointId: a, toPointId: b }: PlacedElement): void {
    const bare = row.ohm === null && row.amp !== null;
    const forward = (row.volt ?? 0) * (bare ? 0.8 : 1);
    const ohm = bare ? (0.2 * (row.volt ?? 0)) / (row.amp ?? 1) : (row.ohm ?? 0);
    this.#diode(a, b, forward, Math.max(0.1, ohm));
  }

  #diode(a: string, b: string, forward: number, ohm: number): void {
    const [p, q] = [this.#slot(a), this.#slot(b)];
    this.#cards.push(`B# ${p} ${q} I=uramp(V(${p},${q})-${forward})/${ohm}+V(${p},${q})*1e-9`);
  }

  #resistor(a: string, b: string, ohm: number): void {
    this.#card("R", a, b, String(Math.max(1e-6, ohm)));
  }

  #join(a: string, b: string): void {
    this.#slot(a);
    this.#slot(b);
    this.#joined.push([a, b]);
  }

  #card(kind: string, a: string, b: string, value: string): void {
    this.#cards.push(`${kind}# ${this.#slot(a)} ${this.#slot(b)} ${value}`);
  }

  /** A place for a node's name, which is only known when all joints are. */
  #slot(node: string): string {
    this.#nodes.add(node);
    return `{${node}}`;
  }

  #finish(): Netlist {
    const index = new Map([...this.#nodes].map((node, n) => [node, n]));
    const sets = new UnionFind(index.size);
    for (const [a, b] of this.#joined) sets.join(index.get(a) ?? 0, index.get(b) ?? 0);
    const ground = sets.find(index.get(this.#task.ground) ?? 0);
    const nameOf = new Map(
      [...index].map(([node, n]) => [node, sets.find(n) === ground ? "0" : `n${sets.find(n)}`]),
    );
    const cards = this.#cards.map((card, n) =>
      card.replace("#", String(n)).replace(/\{([^}]*)\}/g, (_, node: string) => nameOf.get(node) ?? "0"),
    );
    const text = [
      "a machine's circuit",
      ...cards,
      ".options reltol=1e-9 abstol=1e-12 vntol=1e-10 gmin=1e-15 itl1=1000 rshunt=1e13",
      ".control",
      "set filetype=ascii",
      "op",
      `write ${RAW_FILE} all`,
      ".endc",
      ".end",
      "",
    ].join("\n");
    return { text, nameOf, switchOf: this.#switchOf };
  }
}
