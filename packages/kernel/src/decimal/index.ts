export {
  ceilToDecimal,
  DECIMAL_PLACES,
  type Decimal,
  decimal,
  divideDecimal,
  numberOfDecimal,
  roundDecimal,
  sumDecimals,
  textOfDecimal,
  timesDecimal,
  ZERO,
} from "./decimal.ts";
