// A table of data: the currencies, and the signs that stand for them.

/**
 * The alphabetic codes of ISO 4217 in use (list one as of November 2026, from memory), less precious metals, test
 * codes and units of account that no price is quoted in. Each is a dimension of its own: no rate of exchange is implied.
 */
export const CURRENCY_CODES: readonly string[] = `
  AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLF CLP
  CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF
  IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD
  MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB
  RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD
  UYU UZS VED VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG
`
  .trim()
  .split(/\s+/);

const CODES: ReadonlySet<string> = new Set(CURRENCY_CODES);

/** Whether a text is a currency code, and so a dimension of money. */
export function isCurrencyCode(text: string): boolean {
  return CODES.has(text);
}

/** Signs that mean one currency. `$` is not here: it is the book's own currency. */
export const CURRENCY_SIGNS: readonly (readonly [sign: string, code: string])[] = [
  ['€', 'EUR'],
  ['£', 'GBP'],
  ['₩', 'KRW'],
  ['₹', 'INR'],
  ['₺', 'TRY'],
  ['₱', 'PHP'],
  ['₫', 'VND'],
  ['₪', 'ILS'],
];

/** Elevation datums a book may name without defining them (tidal datums and vertical datums in common use). */
export const STANDARD_DATUMS: readonly string[] = [
  'MHHW',
  'MHW',
  'MTL',
  'MSL',
  'MLW',
  'MLLW',
  'HAT',
  'LAT',
  'CD',
  'NAVD88',
  'NGVD29',
  'IGLD85',
];
