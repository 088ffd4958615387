import type { BillWhy, Finding, Languages, Place, Point } from "../../model/index.ts";

/** What an id can stand for. */
export type ThingKind =
  | "item"
  | "connector"
  | "point"
  | "net"
  | "wire"
  | "harness"
  | "lane"
  | "panel"
  | "fuse"
  | "supply"
  | "step"
  | "test"
  | "type"
  | "part";

/** Something by its id and what people call it. */
export interface NamedThing {
  readonly id: string;
  readonly labels: Languages;
}

/** A wire as it is told of: what is printed on it, what it is made of, where its ends are. */
export interface ThingWire {
  readonly id: string;
  /** Number of the harness, a dash, number of the wire. */
  readonly number: string;
  readonly harness: NamedThing;
  readonly netId: string;
  /** IEC 60757 code: base, then stripe. */
  readonly colour: string;
  readonly areaMm2: number;
  readonly lengthMm: number;
  readonly cutMm: number;
  /** Point or splice, and the item that the point is of. Seen from a pin, `a` is that pin. */
  readonly a: WireEnd;
  readonly b: WireEnd;
}

export interface WireEnd {
  readonly id: string;
  readonly item: NamedThing | null;
}

/** One pin or terminal, its net, and what lands on it. */
export interface ThingPin {
  readonly id: string;
  readonly label: string;
  readonly use: Point["use"];
  readonly net: NamedThing | null;
  readonly wires: readonly ThingWire[];
}

/** Why other things fail together with this one. */
export type ShareKind =
  | "supply"
  | "fuse"
  | "return"
  | "feed"
  | "net"
  | "column"
  | "row"
  | "board"
  | "connector"
  | "harness";

/** What has something in common with this one. */
export interface Share {
  readonly kind: ShareKind;
  readonly of: NamedThing;
  /** Without the thing itself, in code-point order of the ids. */
  readonly things: readonly NamedThing[];
}

export interface ThingPart extends NamedThing {
  readonly why: BillWhy;
  /** In it, as text with its unit's precision. */
  readonly quantity: string;
  readonly unit: string;
  /** Ordering number in the service book; blank: none. */
  readonly orderNumber: string;
}

/** Screws of one type that hold it. */
export interface ThingScrews extends NamedThing {
  readonly ids: readonly string[];
}

export interface ThingStep extends NamedThing {
  readonly number: number;
  /** It is put in, its screws are driven or checked again, its harness is laid, or it is built there. */
  readonly why: "fitted" | "screwed" | "rechecked" | "laid" | "built";
}

/** What is driven or read for it, as the game program's map has it. */
export interface ThingControl {
  readonly board: NamedThing;
  readonly address: number | null;
  readonly pointId: string;
  readonly kind: "driver" | "input" | "both";
  readonly control: string;
}

/** Everything that the book says of one id. */
export interface Thing {
  readonly kind: ThingKind;
  readonly id: string;
  readonly labels: Languages;
  /** What kind of item it is; null: it is none. */
  readonly itemKind: string | null;
  /** Number that people call it by: of a switch, a harness, a wire, a step; blank: it has none. */
  readonly number: string;
  /** Row of its type; null: it has none. */
  readonly type: NamedThing | null;
  readonly place: Place | null;
  /** Item that it belongs to: of a pin, of a child of a mechanism, of a fuse. */
  readonly of: NamedThing | null;
  /** What is within it, or of its type. */
  readonly children: readonly NamedThing[];
  /** Plain facts of its own by name: `volts`, `ratedA`; units are in the names. */
  readonly figures: Readonly<Record<string, number | string>>;
  readonly pins: readonly ThingPin[];
  /** Wires that are not already under a pin. */
  readonly wires: readonly ThingWire[];
  readonly controls: readonly ThingControl[];
  readonly shares: readonly Share[];
  readonly parts: readonly ThingPart[];
  readonly screws: readonly ThingScrews[];
  readonly steps: readonly ThingStep[];
  readonly tests: readonly NamedThing[];
  readonly harnessIds: readonly string[];
  readonly findings: readonly Finding[];
}
