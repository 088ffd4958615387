import type { BookRow } from "@pinwright/book";
import { seededRandom } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";
import { createBook, createMachine, createShop, type SomeTables } from "../../testing/book.ts";
import type { NetworkWire } from "../network/parts.ts";

type Element = Partial<BookRow<"elements">>;
type RandomWire = NetworkWire & { readonly finishedMm: number };

export interface RandomMachine {
  readonly machine: Machine;
  readonly wires: readonly RandomWire[];
}

const WAYS = 12;

/**
 * A machine of random supplies, boards and loads, with wires of random lengths: chains, stars, a few loops, returns that
 * supplies share, in-line connectors, fuses, shunts, diodes, H-bridges, groups that are disjoint or cross.
 * @param seed the same seed gives the same machine
 */
export function randomMachine(seed: number): RandomMachine {
  return new Maker(seed).make();
}

class Maker {
  readonly #random: () => number;
  readonly #elements: Element[] = [];
  readonly #devices: { readonly id: string; readonly type: string }[] = [];
  readonly #wires: RandomWire[] = [];
  readonly #activity: Partial<BookRow<"activity">>[] = [];
  readonly #supplies: Partial<BookRow<"supplies">>[] = [];
  readonly #inlines: string[] = [];
  #boards = 0;

  constructor(seed: number) {
    this.#random = seededRandom(seed);
  }

  make(): RandomMachine {
    const supplies = 1 + this.#below(3);
    for (let s = 0; s < supplies; s++) this.#supply(`psu${s}`);
    this.#tie(supplies);
    for (let s = 0; s < supplies; s++) {
      const boards = 1 + this.#below(3);
      let [plus, minus] = [`psu${s}:vp`, `psu${s}:vn`];
      for (let b = 0; b < boards; b++) {
        const id = this.#board();
        this.#wire(plus, `${id}:j1.1`);
        this.#wire(minus, `${id}:j1.2`);
        // A second wire beside the first, or back to the supply unit, makes a loop.
        if (this.#random() < 0.3) this.#wire(`psu${s}:vn`, `${id}:j1.12`);
        if (this.#random() < 0.7) [plus, minus] = [`${id}:j1.1`, `${id}:j1.2`];
        this.#loads(id);
      }
    }
    const machine = createMachine(this.#tables(), createShop());
    return { machine, wires: this.#wires };
  }

  #below(n: number): number {
    return Math.floor(this.#random() * n);
  }

  #between(low: number, high: number): number {
    return Math.round((low + this.#random() * (high - low)) * 1000) / 1000;
  }

  #pick<T>(list: readonly [T, ...T[]]): T {
    return list[this.#below(list.length)] ?? list[0];
  }

  /** A device of a type of its own with some terminals and elements; terminals take any number of wires. */
  #device(id: string, elements: readonly Element[]): void {
    this.#devices.push({ id, type: `t.${id}` });
    elements.forEach((element, n) => {
      this.#elements.push({ ...element, id: `el.${id}.${n}`, device_type: `t.${id}` });
    });
  }

  #supply(id: string): void {
    const volts = this.#pick([5, 12, 24, 48]);
    this.#device(id, [{ kind: "source", from: "vp", to: "vn", volt: volts, amp: 20 }]);
    this.#supplies.push({
      id: `sup.${id}`,
      volts,
      tolerance_pct: this.#below(10),
      positive: `${id}:vp`,
      negative: `${id}:vn`,
      rated_a: 20,
    });
  }

  /** Returns meet at one point, each by a tie of its own. */
  #tie(supplies: number): void {
    if (supplies < 2) return;
    const pins = Array.from({ length: supplies }, (_, s) => `r${s}`);
    this.#device(
      "star",
      pins.map((from) => ({ kind: "resistor", from, to: "pe", ohm: 0.005 })),
    );
    for (const [s, pin] of pins.entries()) this.#wire(`psu${s}:vn`, `star:${pin}`);
  }

  /** A board: supply at 1, return at 2, fused supply at 3, a linked return at 12, drivers at 4 to 9. */
  #board(): string {
    const id = `b${this.#boards++}`;
    const element = (row: Element): void => {
      this.#elements.push({ ...row, id: `el.${id}.${this.#elements.length}`, board_type: `t.${id}` });
    };
    element({ kind: "fuse", from: "j1.1", to: "j1.3", amp: this.#pick([1, 2, 4]) });
    element({ kind: "link", from: "j1.2", to: "j1.10" });
    element({ kind: "resistor", from: "j1.10", to: "j1.12", ohm: this.#pick([0, 0.005, 0.02]) });
    element({ kind: "load", from: "j1.1", to: "j1.2", volt: 12, amp: this.#between(0.01, 0.3) });
    for (let pin = 4; pin <= 9; pin++)
      element({
        kind: "driver",
        from: `j1.${pin}`,
        to: this.#pick(["j1.2", "j1.10", "j1.12"]),
        amp: 5,
        ohm: this.#pick([null, 0.1]),
      });
    return id;
  }

  #loads(board: string): void {
    let plus = `${board}:j1.3`;
    const loads = 1 + this.#below(6);
    for (let n = 0; n < loads; n++) {
      const id = `${board}.l${n}`;
      const kind = this.#pick(["coil", "coil", "led", "motor", "string"] as const);
      this.#device(id, this.#loadElements(kind));
      this.#feed(plus, `${id}:p`);
      this.#feed(`${id}:n`, `${board}:j1.${4 + n}`);
      if (this.#random() < 0.5) plus = `${id}:p`;
      if (kind === "coil" || this.#random() < 0.5) this.#activity.push(this.#activityOf(id));
    }
  }

  #loadElements(kind: "coil" | "led" | "motor" | "string"): readonly Element[] {
    switch (kind) {
      case "coil":
        return [
          { kind, from: "p", to: "n", ohm: this.#between(4, 60), mh: 10 },
          { kind: "diode", from: "n", to: "p", volt: 0.9 },
        ];
      case "led":
        return [{ kind, from: "p", to: "n", ohm: this.#between(50, 300), volt: 2.1, amp: 0.02 }];
      case "motor":
        return [{ kind, from: "p", to: "n", ohm: this.#between(2, 10), volt: 5, amp: 0.2 }];
      case "string":
        return [
          { kind: "led", from: "p", to: "m", volt: 1.3, amp: 0.02 },
          { kind: "resistor", from: "m", to: "n", ohm: this.#between(100, 400) },
        ];
    }
  }

  #activityOf(item: string): Partial<BookRow<"activity">> {
    return {
      item,
      pulse_ms: 30,
      repeat_ms: 200,
      duty_pct: this.#below(60),
      hold_ms: this.#pick([null, 2000]),
      hold_duty_pct: 40,
    };
  }

  /** A wire, sometimes over an in-line connector. */
  #feed(a: string, b: string): void {
    if (this.#random() > 0.3) {
      this.#wire(a, b);
      return;
    }
    const id = `il${this.#inlines.length}`;
    this.#inlines.push(id);
    this.#wire(a, `${id}:a.1`);
    this.#wire(`${id}:b.1`, b);
  }

  #wire(a: string, b: string): void {
    const area = this.#pick([0.22, 0.5, 0.82, 1.5]);
    const wireType = createBook({ wire_types: [{ id: `w${area}`, area_mm2: area }] }).tables.wire_types[0];
    if (wireType === undefined) throw new Error("a book of one wire type has none");
    const id = `w${String(this.#wires.length).padStart(3, "0")}`;
    const finishedMm = 10 * (1 + this.#below(300));
    this.#wires.push({ id, a, b, wireType, finishedMm, netId: "net", harnessId: "h" });
  }

  #tables(): SomeTables {
    const boards = Array.from({ length: this.#boards }, (_, n) => `b${n}`);
    const family = { kind: "housing", pitch_mm: 4, rated_a: 9, contact_mohm: this.#between(1, 20) } as const;
    const terminalsOf = (device: string): readonly string[] => [
      ...new Set(
        this.#elements.flatMap((e) => (e.device_type === device ? [String(e.from), String(e.to)] : [])),
      ),
    ];
    const place = { panel: "pf", side: "under", x_mm: 0, y_mm: 0 } as const;
    return {
      panels: [{ id: "pf", purpose: "playfield", width_mm: 500, height_mm: 1000, thickness_mm: 13 }],
      connector_families: [{ ...family, id: "f", wires_per_contact: 8 }],
      device_types: this.#devices.map(({ type }) => ({ id: type, class: "other", width_mm: 9, depth_mm: 9 })),
      terminals: this.#devices.flatMap(({ type }) =>
        terminalsOf(type).map((terminal) => ({ device_type: type, terminal, family: "f" })),
      ),
      devices: this.#devices.map(({ id, type }) => ({ ...place, id, type })),
      board_types: boards.map((id) => ({ id: `t.${id}`, revision: "A", width_mm: 40, depth_mm: 30 })),
      boards: boards.map((id) => ({ ...place, id, type: `t.${id}` })),
      connectors: [
        ...boards.map((id) => ({
          id: `c.${id}`,
          board_type: `t.${id}`,
          name: "j1",
          family: "f",
          ways: WAYS,
        })),
        { id: "c.il", name: "x", family: "f", ways: 1 },
      ],
      inlines: this.#inlines.map((id) => ({ ...place, id, connector: "c.il" })),
      elements: this.#elements,
      supplies: this.#supplies,
      activity: this.#activity,
      groups: this.#groups(),
    };
  }

  #groups(): readonly Partial<BookRow<"groups">>[] {
    const items = this.#activity.flatMap(({ item }) => (item === undefined ? [] : [item]));
    return Array.from({ length: this.#below(4) }, (_, n) => ({
      id: `g${n}`,
      most_on: 1 + this.#below(3),
      items: items.filter(() => this.#random() < 0.4),
    }));
  }
}
