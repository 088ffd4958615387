import type { BookRow, ShopNumbers } from "@pinwright/book";

/** Resistance of a contact over that of a new one: a setting of the shop for the end of its life (common practice, no source). */
export const wearFactor = (contacts: "new" | "worn", numbers: Pick<ShopNumbers, "contact_worn">): number =>
  contacts === "worn" ? numbers.contact_worn : 1;

/**
 * Ω of one mated or landed contact: its family's when new, so many times that when worn. An in-line connector's two
 * halves meet in one such contact.
 */
export function contactOhm(
  family: Pick<BookRow<"connector_families">, "contact_mohm">,
  contacts: "new" | "worn",
  numbers: Pick<ShopNumbers, "contact_worn">,
): number {
  return (family.contact_mohm / 1000) * wearFactor(contacts, numbers);
}
