import type { BookRow, ShopNumbers } from "@pinwright/book";

/**
 * Ω of one mated or landed contact: its family's when new; at the end of its life, so many times that, which is a
 * setting of the shop (common practice, no source). An in-line connector's two halves meet in one such contact.
 */
export function contactOhm(
  family: Pick<BookRow<"connector_families">, "contact_mohm">,
  contacts: "new" | "worn",
  numbers: Pick<ShopNumbers, "contact_worn">,
): number {
  return (family.contact_mohm / 1000) * (contacts === "worn" ? numbers.contact_worn : 1);
}
