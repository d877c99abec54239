import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Problems of a written unit, and of the units, datums and currency a book defines. */
export const units = {
  'unit-unknown': entry<{ symbol: string; nearest: readonly string[]; state?: string; wants?: string }>({
    title: 'A unit that is not in the registry',
    explain:
      'The symbol is neither a unit the program knows nor one this book defines. Symbols keep their case: kN is a kilonewton and kn a knot. A book can define units of its own in its settings.',
    words: ({ symbol, nearest, state, wants = '' }) => ({
      message: `${quoted(symbol)} is not a unit`,
      hint:
        state !== undefined
          ? `it may be ${state}: write ${listed(nearest.map(quoted))} if such numbers are meant there, or define ${quoted(symbol)} in the settings of the book`
          : nearest.length > 0
            ? `did you mean ${listed(nearest.map(quoted))}?`
            : `write a unit that is known${wants === '' ? '' : `, of the kind of ${wants}`}, or define ${quoted(symbol)} in the settings of the book`,
    }),
  }),
  'unit-ambiguous': entry<{ symbol: string; because: string; choices: readonly string[] }>({
    title: 'A unit with more than one meaning',
    explain:
      'Some symbols mean different things to different people: lb is a mass on a truck scale and a force on a beam, and a ton is 2000 lb, 2240 lb or 1000 kg. A slip between them is not visible in the result, so the symbol is refused and the exact ones are offered.',
    words: ({ symbol, because, choices }) => ({
      message: `${quoted(symbol)} ${because}`,
      hint: `write ${listed(choices.map(quoted))}`,
    }),
  }),
  'unit-slip': entry<{ symbol: string; choices: readonly string[] }>({
    title: 'A unit written almost right',
    explain:
      'The symbol is a common slip, a plural or a word for a unit that has one symbol here. It is not corrected silently, because case and prefix change the size: mPa would be a thousandth of a pascal, MPa is a million.',
    words: ({ symbol, choices }) => ({
      message: `${quoted(symbol)} is not a unit here`,
      hint: `write ${listed(choices.map(quoted))}`,
    }),
  }),
  'unit-after-slash': entry<{ written: string; readings: readonly string[] }>({
    title: 'A unit that can be read two ways after its slash',
    explain:
      'A unit has one slash, and only the one symbol after it is divided by. What follows must be in parentheses if it belongs below as well: kN/(m·s) and kN·s/m are different units.',
    words: ({ written, readings }) => ({
      message: `${quoted(written)} can be read two ways after the slash`,
      hint:
        readings.length > 0
          ? `write ${listed(readings)}`
          : 'put everything below the slash in one pair of parentheses',
    }),
  }),
  'unit-digits': entry<{ written: string; meant: string }>({
    title: 'A digit straight after a unit symbol',
    explain:
      'A power is written with a caret or raised: kN^2 or kN². Behind a unit of length the digits 2, 3 and 4 are read as its power, and behind one of time a 2, because they can be nothing else there: m2, kN/m3, m/s2. Any other bare digit might be a power or a slip.',
    words: ({ written, meant }) => ({
      message: `${quoted(written)} has digits straight after a symbol`,
      hint: `write ${meant} for the power`,
    }),
  }),
  'unit-exponent': entry<{ written: string }>({
    title: 'A power of a unit that does not read',
    explain:
      'The power of a unit is a whole number other than zero, or an exact fraction in parentheses: m^2, s^-1, m^(1/2). It must be small enough to make sense.',
    words: ({ written }) => ({
      message: `the unit ${quoted(written)} has a power that does not read`,
      hint: 'write powers as m^2, s^-1 or m^(1/2)',
    }),
  }),
  'unit-broken': entry<{ written: string; found: string }>({
    title: 'A unit that does not read',
    explain:
      'A unit is one symbol, or symbols joined by ·, *, a hyphen or a space, with powers, and at most one slash: kN·m, kip-ft, lbf/ft^2, kJ/(m^2·s).',
    words: ({ written, found }) => ({
      message:
        found === '' || found === written
          ? `${quoted(written)} does not read as a unit`
          : `${quoted(written)} does not read as a unit: ${quoted(found)} does not fit`,
      hint: 'write a unit like kN·m, kip-ft or lbf/ft^2',
    }),
  }),
  'unit-too-long': entry<{ longest: number }>({
    title: 'A unit that is too long',
    explain: 'No unit of measure needs so many characters; something else was pasted here.',
    words: ({ longest }) => ({ message: `the unit is longer than ${longest} characters` }),
  }),
  'unit-datum-unknown': entry<{ datum: string; nearest: readonly string[] }>({
    title: 'A datum nobody has defined',
    explain:
      'An elevation names the datum it is measured from. Common tidal and vertical datums are known; the settings of the book define others. Elevations to different datums never mix.',
    words: ({ datum, nearest }) => ({
      message: `${quoted(datum)} is not a datum of this book`,
      hint:
        nearest.length > 0
          ? `did you mean ${listed(nearest)}?`
          : 'define the datum in the settings of the book',
    }),
  }),
  'unit-elevation-length': entry<{ unit: string }>({
    title: 'An elevation that is not a length',
    explain:
      'An elevation is a height above or below a datum, so its unit is a unit of length such as ft or m.',
    words: ({ unit }) => ({
      message: `${quoted(unit)} is not a unit of length, so it cannot measure an elevation`,
    }),
  }),
  'define-symbol': entry<{ symbol: string }>({
    title: 'A symbol a book cannot give a unit',
    explain: 'The symbol of a unit of the book is one to twelve letters, such as bcy, shift or wd.',
    words: ({ symbol }) => ({
      message: `${quoted(symbol)} cannot be the symbol of a unit`,
      hint: 'use one to twelve letters and nothing else',
    }),
  }),
  'define-taken': entry<{ symbol: string; holder: string }>({
    title: 'A symbol that already means something',
    explain:
      'A book cannot redefine a unit, a datum, a currency, or a symbol that is refused because it is ambiguous: a reader of the printed page would take it for the usual one.',
    words: ({ symbol, holder }) => ({
      message: `${quoted(symbol)} cannot be defined: ${holder}`,
      hint: 'choose another symbol',
    }),
  }),
  'define-size': entry<{ symbol: string; definition: string }>({
    title: 'A definition of a unit that does not read',
    explain:
      'A unit of the book is defined as a positive number of a unit already known, such as 10 h or 1 shift, or as base for a new kind of quantity.',
    words: ({ symbol, definition }) => ({
      message: `${quoted(definition)} does not define the unit ${quoted(symbol)}`,
      hint: 'write a positive number and a unit, such as 10 h, or the word base',
    }),
  }),
  'define-datum': entry<{ datum: string }>({
    title: 'A name a datum cannot have',
    explain:
      'The name of a datum starts with a letter and has letters and digits only, such as MLLW or NAVD88.',
    words: ({ datum }) => ({
      message: `${quoted(datum)} cannot be the name of a datum`,
      hint: 'use letters and digits only, starting with a letter',
    }),
  }),
  'define-currency': entry<{ currency: string; nearest: readonly string[] }>({
    title: 'A currency that is not in use',
    explain: 'The currency of a book is one of the three-letter codes of ISO 4217, such as USD or EUR.',
    words: ({ currency, nearest }) => ({
      message: `${quoted(currency)} is not a currency code of ISO 4217`,
      ...(nearest.length > 0 && { hint: `did you mean ${listed(nearest)}?` }),
    }),
  }),
};
