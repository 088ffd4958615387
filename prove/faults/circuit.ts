import { NetlistWriter } from "../../packages/engine/src/electric/testing/netlist.ts";
import { type NodeVolts, simulateTurns } from "../../packages/engine/src/electric/testing/ngspice.ts";
import type { Machine, PlacedElement } from "../../packages/engine/src/index.ts";
import { type Built, extraElement } from "./built.ts";

/** Volts that a board is made for where its load says none. */
const BOARD_V = 12;
/** Coils are made weaker by this, in the sound machine too, so that all may be commanded at once and no fuse minds. */
const WEAKER = 40;
/** Input that is read: volts of its own pull-up, and behind how many ohms. */
export const SENSE = { volts: 5, ohm: 10_000 } as const;
/** What a driver of message lines has in series (ISO 8482 lines are matched at 120 Ω, from memory). */
const LINE_OHM = 120;
/** Node between the two ends of a message line that is tried. */
const MIDDLE = "middle";
const OPTIONS = ".options reltol=1e-4 abstol=1e-9 vntol=1e-6 gmin=1e-10 itl1=2000 rshunt=1e10";

/** Volts of every node. */
export type Volts = NodeVolts;
export const NO_VOLTS: Volts = new Map();

export function across(volts: Volts, { fromPointId, toPointId }: PlacedElement): number {
  return Math.abs((volts.get(fromPointId) ?? 0) - (volts.get(toPointId) ?? 0));
}

/** What goes through a driven thing, up to a factor: volts across it beyond those that it needs to let any pass. */
export function shareOf(volts: Volts, one: PlacedElement): number {
  const across = (volts.get(one.fromPointId) ?? 0) - (volts.get(one.toPointId) ?? 0);
  if (one.row.kind !== "led") return Math.abs(across);
  const isBare = one.row.ohm === null && one.row.amp !== null;
  return Math.max(0, across - (one.row.volt ?? 0) * (isBare ? 0.8 : 1));
}

/** The circuit of a machine in ngspice, whatever is wrong with it. */
export class Circuit {
  readonly #machine: Machine;
  readonly #known: ReadonlySet<string>;
  simulations = 0;

  /** @param machine as it is when it is sound */
  constructor(machine: Machine) {
    this.#machine = machine;
    this.#known = new Set(machine.elements.map(({ id }) => id));
  }

  /** Volts of every node against one of them while some contacts are closed, several times in turn. */
  run(built: Built, turns: readonly ReadonlySet<string>[], ground: string): readonly Volts[] {
    this.simulations += turns.length;
    const elements = built.elements.map((one): PlacedElement => {
      if (one.row.kind === "coil") return { ...one, row: { ...one.row, ohm: (one.row.ohm ?? 0) * WEAKER } };
      // A board takes less when it gets less, and nothing when a wire of it is off.
      const isBoard = one.row.kind === "load" && this.#known.has(one.id);
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
  volts(built: Built, turns: readonly ReadonlySet<string>[]): readonly Volts[] {
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
    return this.run({ ...built, elements: [...built.elements, ...sensed] }, turns, this.#ground());
  }

  #ground(): string {
    return this.#machine.book.tables.supplies[0]?.negative ?? "";
  }

  /** Whether two points lie at the ends of an input, by volts that are put on its ends and nothing else. */
  reach(built: Built, input: PlacedElement): (a: string, b: string) => boolean {
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
    const [volts] = this.run({ ...built, elements: [...elements, ...probes] }, [new Set()], MIDDLE);
    const isNear = (point: string, volt: number): boolean => Math.abs((volts?.get(point) ?? 0) - volt) < 0.2;
    return (a, b) => isNear(a, 1) && isNear(b, -1);
  }
}
