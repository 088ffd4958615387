import type { BookRow, Outline } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

/** What a device type is on the outside, and what its terminals and insides are. */
export interface DeviceKind {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly class: BookRow<"device_types">["class"];
  readonly letter: string;
  /** Width, depth, height off its side, and reach through the panel, in mm. */
  readonly size: readonly [width: number, depth: number, height: number, reach?: number];
  /** Drawn about its own origin, for what is no rectangle about it. */
  readonly outline?: Outline;
  /** Name, connector family, place in the device's own frame. */
  readonly terminals: readonly (readonly [name: string, family: string, x: number, y: number])[];
  readonly elements: readonly Partial<BookRow<"elements">>[];
}

type Named = readonly [id: string, label: string, label_zh: string];
type Size = DeviceKind["size"];

/** Two tabs or lugs beside each other at the rear end of the device. */
const pair = (first: string, second: string, family: string, dx: number, y: number) =>
  [
    [first, family, -dx, y],
    [second, family, dx, y],
  ] as const;

const named = ([id, label, label_zh]: Named) => ({ id, label, label_zh });

/** A diode for 3 A and 200 V: the largest coil leaves it 11.4 A for a moment. */
export const flyback = (from: string, to: string): Partial<BookRow<"elements">> => ({
  kind: "diode",
  from,
  to,
  volt: 0.9,
  control: "flyback",
  amp: 3,
  peak_a: 30,
  block_v: 200,
});

/** A coil of one winding; its diode is fitted across the lugs, cathode at the supply side. */
export const coilKind = (name: Named, size: Size, ohm: number, mh: number, family = "lug"): DeviceKind => ({
  ...named(name),
  class: "coil",
  letter: "M",
  size,
  terminals: pair("pos", "neg", family, 6, -size[1] / 2),
  elements: [{ kind: "coil", from: "pos", to: "neg", ohm, mh }, flyback("neg", "pos")],
});

/** An LED with its series resistor; `volt` is that of the supply that it is made for. */
export const lampKind = (
  name: Named,
  size: Size,
  family: string,
  led: { readonly volt: number; readonly amp: number; readonly ohm: number },
): DeviceKind => ({
  ...named(name),
  class: "lamp",
  letter: "E",
  size,
  terminals: pair("a", "k", family, 5, -size[1] / 2),
  elements: [
    { kind: "led", from: "a", to: "k", rated_w: led.amp > 0.1 ? 1 : led.amp > 0.05 ? 0.5 : 0.25, ...led },
  ],
});

export const switchKind = (name: Named, size: Size, family: string, control: string): DeviceKind => ({
  ...named(name),
  class: "switch",
  letter: "B",
  size,
  terminals: pair("com", "no", family, 4, -size[1] / 2),
  elements: [{ kind: "contact", from: "com", to: "no", control, normally: "open", ohm: 0.05 }],
});

export const motorKind = (
  name: Named,
  size: Size,
  motor: { readonly volt: number; readonly amp: number; readonly ohm: number; readonly mh: number },
): DeviceKind => ({
  ...named(name),
  class: "motor",
  letter: "M",
  size,
  terminals: pair("a", "b", "tab-28", 6, -size[1] / 2),
  elements: [{ kind: "motor", from: "a", to: "b", ...motor }],
});

/** A part that carries no wire. */
export const plainKind = (name: Named, size: Size, outline?: Outline): DeviceKind => ({
  ...named(name),
  class: "other",
  letter: "",
  size,
  ...(outline === undefined ? {} : { outline }),
  terminals: [],
  elements: [],
});

const drawing = (kind: DeviceKind) => `${kind.id.replace("dt.", "device-")}.svg`;

/** The tables that device types make: themselves, their terminals, what is inside them. */
export const deviceKinds = (kinds: readonly DeviceKind[]): Topic => ({
  tables: {
    device_types: rows(
      "device_types",
      kinds.map((kind) => ({
        id: kind.id,
        label: kind.label,
        label_zh: kind.label_zh,
        class: kind.class,
        letter: kind.letter,
        outline: kind.outline === undefined ? null : drawing(kind),
        width_mm: kind.size[0],
        depth_mm: kind.size[1],
        height_mm: kind.size[2],
        reach_mm: kind.size[3] ?? 0,
      })),
    ),
    terminals: rows(
      "terminals",
      kinds.flatMap((kind) =>
        kind.terminals.map(([terminal, family, x_mm, y_mm]) => ({
          device_type: kind.id,
          terminal,
          family,
          x_mm,
          y_mm,
        })),
      ),
    ),
    elements: rows(
      "elements",
      kinds.flatMap((kind) =>
        kind.elements.map((element, i) => ({
          id: `el.${kind.id.replace("dt.", "")}-${i + 1}`,
          device_type: kind.id,
          ...element,
        })),
      ),
    ),
  },
  outlines: new Map(
    kinds.flatMap((kind): [string, Outline][] =>
      kind.outline === undefined ? [] : [[drawing(kind), kind.outline]],
    ),
  ),
});
