// A table of data: what people write for a unit and the registry refuses, with what they may have meant.

/**
 * A symbol that is refused. `choices` are units to write instead, the likeliest first.
 * `because` completes the sentence "lb …": with it the symbol has several meanings, without it is a slip.
 */
export interface RefusedUnit {
  readonly symbol: string;
  readonly choices: readonly string[];
  readonly because?: string;
}

const POUND = 'is a mass or a force';
const TON = 'is one of three masses';
const TON_FORCE = 'is one of three forces';
const TONS = ['t', 'ST', 'LT'];
const TON_FORCES = ['tf', 'STf', 'LTf'];

const KRONER = ['DKK', 'NOK', 'SEK', 'ISK'];
const FRANCS = ['CHF', 'XOF', 'XAF', 'XPF'];
const RUPEES = ['INR', 'PKR', 'LKR', 'NPR', 'MUR'];
const DOLLARS = ['USD', 'CAD', 'AUD', 'NZD', 'SGD', 'HKD'];
const PESOS = ['MXN', 'PHP', 'CLP', 'COP', 'ARS'];

/** Symbols that all mean the same several units. */
function named(symbols: string, choices: readonly string[], because: string): readonly RefusedUnit[] {
  return symbols.split(' ').map((symbol) => ({ symbol, choices, because }));
}

const AMBIGUOUS: readonly RefusedUnit[] = [
  { symbol: 'lb', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: 'lbs', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: 'LB', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: 'LBS', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: 'Lb', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: '#', choices: ['lbm', 'lbf'], because: POUND },
  { symbol: 'pound', choices: ['lbm', 'lbf', 'GBP'], because: 'is a mass, a force or money' },
  { symbol: 'pounds', choices: ['lbm', 'lbf', 'GBP'], because: 'is a mass, a force or money' },
  { symbol: 'ton', choices: TONS, because: TON },
  { symbol: 'tons', choices: TONS, because: TON },
  { symbol: 'Ton', choices: TONS, because: TON },
  { symbol: 'Tons', choices: TONS, because: TON },
  { symbol: 'TON', choices: TONS, because: TON },
  { symbol: 'TONS', choices: TONS, because: TON },
  { symbol: 'T', choices: TONS, because: TON },
  { symbol: 'tn', choices: TONS, because: TON },
  { symbol: 'tonf', choices: TON_FORCES, because: TON_FORCE },
  { symbol: 'tonsf', choices: TON_FORCES, because: TON_FORCE },
  {
    symbol: 'tsf',
    choices: ['STf/ft^2', 'LTf/ft^2', 'tf/ft^2'],
    because: 'is a ton-force of three kinds over a square foot',
  },
  { symbol: '¥', choices: ['JPY', 'CNY'], because: 'is yen or yuan' },
  ...named('kr kr. Kr Kr. krone kroner krona kronor', KRONER, 'is a krone of several countries'),
  ...named('Fr Fr. fr fr. franc francs Franc Francs', FRANCS, 'is a franc of several countries'),
  ...named('Rs Rs. rupee rupees Rupees ₨', RUPEES, 'is a rupee of several countries'),
  ...named('dollar dollars Dollar Dollars', DOLLARS, 'is a dollar of several countries'),
  ...named('peso pesos Peso Pesos', PESOS, 'is a peso of several countries'),
  ...named('руб руб. ₽', ['RUB', 'BYN'], 'is a rouble of two countries'),
  ...named('元 圓', ['CNY', 'TWD', 'HKD'], 'is yuan or dollars of several countries'),
  ...named('﷼', ['SAR', 'IRR', 'QAR', 'OMR', 'YER'], 'is a rial of several countries'),
  ...named('C$', ['CAD', 'NIO'], 'is Canadian dollars or córdobas'),
  { symbol: 'ml', choices: ['m'], because: 'is a running metre or a thousandth of a litre' },
  {
    symbol: 'Mm',
    choices: ['mm'],
    because: 'may be millimetres, or millions of a metre: multiply a number in millions out',
  },
  { symbol: 'k', choices: ['kip'], because: 'may be kips, or thousands: multiply a number in thousands out' },
  { symbol: 'M', choices: ['m'], because: 'may be metres, or millions: multiply a number in millions out' },
  { symbol: 'per', choices: ['/'], because: 'is written as a slash' },
  {
    symbol: 'oz',
    choices: ['lbm', 'lbf'],
    because: 'is a mass, a force or a volume, none of them in the registry',
  },
];

/** Slips: what is written, then what was meant. */
const SLIPS: readonly (readonly [symbols: string, ...choices: string[]])[] = [
  ['mPa mpa Mpa MPA', 'MPa'],
  ['KPa kpa Kpa KPA', 'kPa'],
  ['gPa Gpa gpa GPA', 'GPa'],
  ['pa PA', 'Pa'],
  ['hPa', 'Pa'],
  ['mN mn Mn', 'MN'],
  ['KN Kn', 'kN', 'kn'],
  ['n', 'N'],
  ['kNm KNm KNM kNM knm', 'kN·m'],
  ['Nm NM', 'N·m', 'nmi'],
  ['nm', 'nmi', 'N·m'],
  ['MNm', 'MN·m'],
  ['MM', 'mm'],
  ['CM Cm', 'cm'],
  ['KM Km', 'km'],
  ['meter meters metre metres mtr Mtr MTR mtrs lm Lm LM rm rmt RMT lfm lfdm', 'm'],
  ['inch inches IN In', 'in'],
  ['foot feet FT Ft', 'ft'],
  ['yard yards YD yds YDS', 'yd'],
  ['mile miles MI', 'mi'],
  ['LF Lf lft LFT rft RFT L.F. l.f.', 'lf'],
  ['SF Sf sft SFT SFs sqft SQFT sq.ft. sq.ft S.F. s.f.', 'sf'],
  ['SY Sy SYs sqyd SQYD sq.yd. sq.yd S.Y. s.y.', 'sy'],
  ['CF Cf CFs cft CFT cuft CUFT cu.ft. cu.ft C.F. c.f.', 'cf'],
  ['CY Cy CYs cys cyd CYD cyds CYDS cuyd CUYD cuyds cu.yd. cu.yd cu.yds. cu.yds C.Y. c.y.', 'cy'],
  ['sqm SQM Sqm sqmt SQMT qm mq MQ ㎡ Quadratmeter', 'm^2'],
  ['cum CUM Cum cbm CBM cumt CUMT mc MC ㎥ Kubikmeter', 'm^3'],
  ['dm3 dm³', 'L'],
  ['м', 'm'],
  ['мм ㎜', 'mm'],
  ['см ㎝', 'cm'],
  ['кг', 'kg'],
  ['т', 't'],
  ['acre acres AC', 'ac'],
  ['hectare hectares', 'ha'],
  ['gallon gallons gals GAL', 'gal'],
  ['l litre litres liter liters', 'L'],
  ['Kg KG kgs', 'kg'],
  ['tonne tonnes MT mt', 't'],
  ['slugs', 'slug'],
  ['Kip Kips KIP KIPS', 'kip'],
  ['Kgf KGF', 'kgf'],
  ['LBF lbsf', 'lbf'],
  ['LBM', 'lbm'],
  ['PSI Psi', 'psi'],
  ['KSI Ksi', 'ksi'],
  ['PSF Psf', 'psf'],
  ['KSF Ksf', 'ksf'],
  ['PCF Pcf', 'pcf'],
  ['KCF', 'kcf'],
  ['PCI', 'pci'],
  ['PLF Plf', 'plf'],
  ['KLF Klf', 'klf'],
  ['kft kipft', 'kip·ft'],
  ['ftlb ftlbs', 'ft·lbf'],
  ['fps', 'ft/s'],
  ['mps', 'm/s'],
  ['kph kmh', 'km/h'],
  ['gpm', 'gal/min'],
  ['knot knots kt kts', 'kn'],
  ['MPH Mph', 'mph'],
  ['HP Hp', 'hp'],
  ['w', 'W'],
  ['KW Kw kw', 'kW'],
  ['j', 'J'],
  ['KJ Kj kj', 'kJ'],
  ['S sec secs second seconds', 's'],
  ['mins minute minutes', 'min'],
  ['hour hours H', 'h'],
  ['day days D', 'd'],
  ['week weeks wks', 'wk'],
  ['degree degrees', 'deg'],
  ['radian radians', 'rad'],
  ['C', 'degC'],
  ['F', 'degF'],
  ['percent pct', '%'],
  ['EA Ea each nos Nos NOS nr Nr pcs pc Stk Stück шт', 'ea'],
  ['LS Ls', 'ls'],
  ['usd', 'USD'],
  ['eur euro euros Euro Euros EURO EUROS', 'EUR'],
  ['SFr SFr. sFr sFr. Franken', 'CHF'],
  ['US$ U$S', 'USD'],
  ['A$ AU$', 'AUD'],
  ['CA$ CAN$', 'CAD'],
  ['NZ$', 'NZD'],
  ['HK$', 'HKD'],
  ['S$ SG$', 'SGD'],
  ['NT$', 'TWD'],
  ['R$ reais', 'BRL'],
  ['MX$ Mex$', 'MXN'],
  ['zł zł. zl zloty złoty złotych', 'PLN'],
  ['Kč', 'CZK'],
  ['forint', 'HUF'],
  ['RMB 人民币', 'CNY'],
  ['円 yen', 'JPY'],
  ['원', 'KRW'],
  ['RM', 'MYR'],
  ['Rp Rp.', 'IDR'],
  ['TL', 'TRY'],
  ['NIS', 'ILS'],
  ['грн грн. ₴', 'UAH'],
  ['฿ บาท', 'THB'],
  ['₦', 'NGN'],
  ['₵', 'GHS'],
  ['₡', 'CRC'],
  ['₲', 'PYG'],
  ['₸', 'KZT'],
  ['₾', 'GEL'],
  ['₼', 'AZN'],
  ['₮', 'MNT'],
  ['₭', 'LAK'],
  ['৳', 'BDT'],
  ['֏', 'AMD'],
];

/** Several words for one unit, refused as a whole: "sq ft". */
const PHRASES: readonly (readonly [phrases: string, ...choices: string[]])[] = [
  ['sq ft,sq. ft,sq. ft.,square feet,square foot', 'sf'],
  ['sq yd,sq. yd.,sq yds,sq. yds.,square yards,square yard', 'sy'],
  ['sq in,sq. in.,square inches', 'in^2'],
  [
    'sq m,sq mtr,vierkante meter,mètre carré,mètres carrés,metro cuadrado,metros cuadrados,metro quadrado,metros quadrados,metri quadrati,metri quadri,square metres,square meters,square metre,square meter',
    'm^2',
  ],
  ['cu ft,cu. ft.,cubic feet,cubic foot', 'cf'],
  ['cu yd,cu. yd.,cu yds,cu. yds.,cubic yds,cubic yards,cubic yard', 'cy'],
  [
    'cu m,cu mtr,kubieke meter,mètre cube,mètres cubes,metro cúbico,metros cúbicos,metro cubo,metri cubi,cubic metres,cubic meters,cubic metre,cubic meter',
    'm^3',
  ],
  ['lin ft,lin. ft.,linear feet,running feet', 'lf'],
  ['lin m,lin. m,lfd m,lfd. m,running metres,running meters,linear metres,linear meters', 'm'],
  ['short ton,short tons', 'ST'],
  ['long ton,long tons', 'LT'],
  ['metric ton,metric tons', 't'],
  ['deg C,degrees C,deg. C', 'degC'],
  ['deg F,degrees F,deg. F', 'degF'],
];

const split = (rows: readonly (readonly [string, ...string[]])[], separator: string): RefusedUnit[] =>
  rows.flatMap(([symbols, ...choices]) => symbols.split(separator).map((symbol) => ({ symbol, choices })));

/** Every refused symbol and phrase with what to write instead. */
export const REFUSED_TABLE: readonly RefusedUnit[] = [
  ...AMBIGUOUS,
  ...split(SLIPS, ' '),
  ...split(PHRASES, ','),
];
