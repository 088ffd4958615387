import { CURRENCY_CODES, isCurrency } from "@pinwright/kernel";
import { nearest } from "../text/nearest.ts";
import { type ShopRule, shopRule } from "./shop-rule.ts";

const notCurrency = (column: string, value: string) => ({
  column,
  value,
  expected: "the code of a currency in use, as ISO 4217 has it: three capitals such as EUR",
  nearest: nearest(value, CURRENCY_CODES),
});

const currencyCode = shopRule(
  "currencies",
  "A currency is one of ISO 4217.",
  ["id"],
  () =>
    ({ id }) =>
      isCurrency(id) ? null : notCurrency("id", id),
);

const supplierCurrency = shopRule(
  "suppliers",
  "A supplier's currency is one of ISO 4217.",
  ["currency"],
  () =>
    ({ currency }) =>
      isCurrency(currency) ? null : notCurrency("currency", currency),
);

const oneOwn = shopRule("currencies", "At most one currency is the shop's own.", ["own"], () => {
  let before = "";
  return ({ id, own }) => {
    if (own === "no") return null;
    if (before === "") {
      before = id;
      return null;
    }
    return {
      column: "own",
      value: own,
      expected: `\`no\`, because the shop counts in \`${before}\` already`,
      nearest: "no",
    };
  };
});

const ownRate = shopRule(
  "currencies",
  "The shop's own currency is worth 1.",
  ["own", "rate"],
  () => (row) =>
    row.own === "no" || row.rate === 1
      ? null
      : { column: "rate", value: String(row.rate), expected: "1, or blank", nearest: "1" },
);

/** Rules of currencies. */
export const SHOP_MONEY: readonly ShopRule[] = [currencyCode, supplierCurrency, oneOwn, ownRate];
