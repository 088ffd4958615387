/**
 * Codes of ISO 4217:2015 for money in use, from its list one as it stood in 2025, without funds and metals. From memory;
 * a test holds them against the Unicode locale data.
 */
const CODES =
  "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW ZWG";
/** Those without a smaller unit, and those whose smaller unit is a thousandth; all others have hundredths. */
const WHOLE = new Set("BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF".split(" "));
const THOUSANDTHS = new Set("BHD IQD JOD KWD LYD OMR TND".split(" "));

/** Every currency that is known, in code-point order. */
export const CURRENCY_CODES: readonly string[] = CODES.split(" ");
const KNOWN = new Set(CURRENCY_CODES);

/** Whether a text is the code of a currency in use. */
export const isCurrency = (code: string): boolean => KNOWN.has(code);

/** Decimal places in which a currency is paid: 2 for most, and for a code that is not known. */
export const currencyPlaces = (code: string): number => (WHOLE.has(code) ? 0 : THOUSANDTHS.has(code) ? 3 : 2);
