import type { Book, BookRow, Outline, Shop } from "@pinwright/book";

/** Millimetres in a panel's frame: origin lower left, x right, y away from the player, seen from `top`. */
export interface PanelPoint {
  readonly xMm: number;
  readonly yMm: number;
}

export type Side = "top" | "under";

/** Where something is: on a side of a panel, in that panel's frame. */
export interface Place extends PanelPoint {
  readonly panelId: string;
  readonly side: Side;
  /** Anticlockwise seen from `top`. */
  readonly rotationDeg: number;
  /** Height of its origin off the panel side. */
  readonly zMm: number;
}

export type Languages = { readonly en: string; readonly zh: string };

export type FastenerMoment = "start" | "align" | "tighten" | "recheck";

interface ItemBase {
  /** `sw.lane-left`, or `flip.left/eos` for a child of a mechanism. */
  readonly id: string;
  readonly labels: Languages;
  readonly place: Place;
  /** Mechanism that it is a child of. */
  readonly parentId: string | null;
  /** Corners of its outline on the panel, in the panel's frame; a rectangle unless its type has an outline. */
  readonly footprint: readonly PanelPoint[];
}

export interface DeviceItem extends ItemBase {
  readonly kind: "device";
  readonly type: BookRow<"device_types">;
  readonly number: number | null;
}
export interface BoardItem extends ItemBase {
  readonly kind: "board";
  readonly type: BookRow<"board_types">;
  readonly address: number | null;
}
export interface MechanismItem extends ItemBase {
  readonly kind: "mechanism";
  readonly type: BookRow<"mechanism_types">;
}
export interface FastenerItem extends ItemBase {
  readonly kind: "fastener";
  readonly type: BookRow<"fastener_types">;
  readonly flangeMm: number;
  readonly holds: string | null;
  /** Moments at which it is driven, in their order. */
  readonly moments: readonly FastenerMoment[];
  readonly washer: BookRow<"fastener_types"> | null;
  /** Nut on the far side. */
  readonly nut: BookRow<"fastener_types"> | null;
  /** Depth of the tapped hole beyond the panel. */
  readonly tappedMm: number | null;
  readonly purpose: string;
}
export interface InlineItem extends ItemBase {
  readonly kind: "inline";
  readonly type: BookRow<"connectors">;
}
/** Anything placed on a panel side. */
export type Item = DeviceItem | BoardItem | MechanismItem | FastenerItem | InlineItem;

/**
 * Where wires of a harness land together: a housing with its cavities, or the bare terminals of one device.
 * Its id is `item:connector` for a board's or device's connector, `item:a` or `item:b` for half of an in-line
 * connector, and `item` alone for the terminals of a device.
 */
export interface Landing {
  readonly id: string;
  readonly itemId: string;
  /** The connector row when it is a housing; null for bare terminals. */
  readonly connector: BookRow<"connectors"> | null;
  /** Half of an in-line connector. */
  readonly half: "a" | "b" | null;
  readonly place: Place;
  /** Ids of its points, cavity 1 first, or terminals in book order. */
  readonly pointIds: readonly string[];
  /** Cavities that are blocked by a key. */
  readonly keyPins: readonly number[];
}

/** One electrical contact of an item. */
export interface Point {
  readonly id: string;
  readonly itemId: string;
  readonly landingId: string;
  /** Cavity number, or null for a terminal. */
  readonly pin: number | null;
  /** `j1.3` or `no`: the point inside its type. */
  readonly localId: string;
  readonly label: string;
  readonly use: "live" | "spare" | "key";
  readonly family: BookRow<"connector_families">;
  readonly place: Place;
}

/** An element of a type, set into an item of the machine. */
export interface PlacedElement {
  readonly id: string;
  readonly itemId: string;
  readonly fromPointId: string;
  readonly toPointId: string;
  readonly row: BookRow<"elements">;
}

/** The book with every type set into every place: what all chapters start from. */
export interface Machine {
  readonly book: Book;
  readonly shop: Shop;
  /** Options that this machine is built with. */
  readonly options: ReadonlySet<string>;
  readonly panels: ReadonlyMap<string, BookRow<"panels">>;
  readonly panelOutlines: ReadonlyMap<string, Outline>;
  readonly items: ReadonlyMap<string, Item>;
  readonly landings: ReadonlyMap<string, Landing>;
  readonly points: ReadonlyMap<string, Point>;
  /**
   * Elements of all items. From one `Resolver` it is the same list for as long as no item is added, removed or of
   * another kind or type, wherever the items are.
   */
  readonly elements: readonly PlacedElement[];
  readonly nets: ReadonlyMap<string, BookRow<"nets">>;
  readonly harnesses: ReadonlyMap<string, BookRow<"harnesses">>;
  /** Ends that apply to this machine, sorted by net, harness, point in code-point order. */
  readonly ends: readonly BookRow<"ends">[];
  readonly wireTypes: ReadonlyMap<string, BookRow<"wire_types">>;
  /** Choices by `kind` and then subject. */
  readonly choices: ReadonlyMap<string, ReadonlyMap<string, BookRow<"choices">>>;
}
