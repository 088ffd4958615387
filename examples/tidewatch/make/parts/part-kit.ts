import type { BookRow, ShopRow } from "@pinwright/book";

export type Part = Partial<BookRow<"parts">> & Pick<BookRow<"parts">, "id" | "label" | "label_zh" | "kind">;

/**
 * What a supplier asks: the price at the quantity of a hundred machines or so, the pack, and the lead time where it is
 * not the supplier's usual one. Breaks follow from how such a supplier works.
 */
export type Offer = readonly [supplier: string, price: number, pack?: number, leadDays?: number];

/** A part with what it costs, what is in it, and how else it could be got. */
export interface Item {
  readonly part: Part;
  readonly offers: readonly Offer[];
  /** Parts in it, with how many. */
  readonly contains: Readonly<Record<string, number>>;
}

export type Extra = Partial<BookRow<"parts">>;
type Names = readonly [id: string, label: string, label_zh: string];
type Contents = Readonly<Record<string, number>>;

const item = (
  [id, label, label_zh]: Names,
  kind: Part["kind"],
  cells: Extra,
  offers: readonly Offer[],
  contains: Contents = {},
): Item => ({ part: { id, label, label_zh, kind, ...cells }, offers, contains });

/** What is made to a drawing of ours: its revision is the one that is made now. */
const drawn = (material: string, thickness_mm: number | null, finish: string): Extra => ({
  source: "have-made",
  revision: "A",
  material,
  thickness_mm,
  finish,
});

/** Fails so often in a year of play, and a spare is worth keeping. */
export const wears = (fails_per_year: number): Extra => ({ wear: true, fails_per_year });

/** Cut by laser from sheet and bent, in the metal workshop. */
export const sheetMetal = (
  names: Names,
  thickness: number,
  price: number,
  extra: Extra = {},
  [material, finish]: readonly [string, string] = ["steel sheet, cold rolled", "zinc-plated"],
): Item =>
  item(names, "laser-cut", { ...drawn(material, thickness, finish), ...extra }, [["metalwork", price]]);

/** Turned from bar. */
export const turned = (
  names: Names,
  material: string,
  finish: string,
  price: number,
  extra: Extra = {},
): Item => item(names, "turned", { ...drawn(material, null, finish), ...extra }, [["turner", price]]);

/** The moulder asks in another currency. */
export const CNY_EUR = 0.128;

/** Injection-moulded; the mould is ours. The price is in EUR. */
export const moulded = (names: Names, material: string, price: number, extra: Extra = {}): Item =>
  item(names, "moulded", { ...drawn(material, null, ""), ...extra }, [["moulder", price / CNY_EUR, 10]]);

/** Wound of spring wire. */
export const spring = (names: Names, wireMm: number, price: number, extra: Extra = {}): Item =>
  item(names, "hardware", { ...drawn("spring wire, stainless", wireMm, ""), ...extra }, [
    ["springs", price, 10],
  ]);

/** Bent of wire and welded. */
export const wireForm = (
  names: Names,
  wireMm: number,
  finish: string,
  price: number,
  extra: Extra = {},
): Item =>
  item(names, "hardware", { ...drawn("stainless wire", wireMm, finish), ...extra }, [
    ["springs", price, 1, 20],
  ]);

/** Cut by laser from sheet plastic, printed where the finish says so. */
export const sheetPlastic = (
  names: Names,
  thickness: number,
  finish: string,
  price: number,
  extra: Extra = {},
): Item =>
  item(names, "laser-cut", { ...drawn("polycarbonate, clear", thickness, finish), ...extra }, [
    ["plastics", price],
  ]);

/** Made by others to our drawing in whatever way the material says. */
export const haveMade = (
  names: Names,
  kind: Part["kind"],
  [material, thickness, finish]: readonly [string, number | null, string],
  offer: Offer,
  extra: Extra = {},
): Item => item(names, kind, { ...drawn(material, thickness, finish), ...extra }, [offer]);

/** Bought from one or two who have it on the shelf. */
export const bought = (names: Names, kind: Part["kind"], offers: readonly Offer[], extra: Extra = {}): Item =>
  item(names, kind, extra, offers);

/** Put together or made here from other parts. */
export const made = (names: Names, kind: Part["kind"], contains: Contents, extra: Extra = {}): Item =>
  item(names, kind, { source: "make", revision: "A", ...extra }, [], contains);

export type Way = Partial<ShopRow<"ways">> & Pick<ShopRow<"ways">, "part" | "way" | "kind">;
