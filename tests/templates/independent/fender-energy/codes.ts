import type { Inputs } from './values.ts';

/** The codes, and what each of them has of the methods: the rest is of another code, or of none. */
const codes: readonly { readonly name: string; readonly has: ReadonlySet<string> }[] = [
  {
    name: 'PIANC WG 33 (2002)',
    has: new Set([
      'clearance rule',
      'end-on',
      'general',
      'right angle',
      'block coefficient',
      'Brolsma curve',
    ]),
  },
  {
    name: 'BS 6349-4:1994',
    has: new Set([
      'Vasco Costa',
      'Vasco Costa, 1.5 to 2.0',
      'general',
      'right angle',
      'block coefficient',
      'Brolsma curve',
    ]),
  },
  {
    name: 'OCDI (2002)',
    has: new Set(['Ueda', 'along the berth', 'block coefficient', 'quarter length']),
  },
  {
    name: 'IS 4651-3:1974',
    has: new Set([
      'Vasco Costa',
      'Vasco Costa, 1.5 to 2.0',
      'water cylinder',
      'IS 4651',
      'quarter length',
      'IS 4651-3',
    ]),
  },
  {
    name: 'UFC 4-152-01 (2005)',
    has: new Set(['clearance rule', 'along the berth', 'block coefficient', 'quarter length']),
  },
];

/** Methods that are no milder than any code’s: the largest of the rules, and a speed known otherwise. */
const ofAny: ReadonlySet<string> = new Set(['largest of three', 'stated']);

/** The codes that have every method chosen. */
export interface Codes {
  readonly columns: Readonly<Record<'k_M' | 'k_E' | 'k_K' | 'k_v' | 'all', readonly number[]>>;
  readonly names: readonly string[];
  readonly count: number;
  readonly first: string;
}

/** Looks the methods chosen up in each code. */
export function workCodes({ text }: Inputs): Codes {
  const names = {
    k_M: 'ship.C_M_rule',
    k_E: 'energy.C_E_rule',
    k_K: 'ship.K_rule',
    k_v: 'energy.speed_from',
  } as const;
  const has = (name: keyof typeof names): readonly number[] =>
    codes.map((code) => Number(ofAny.has(text(names[name])) || code.has.has(text(names[name]))));
  const columns = { k_M: has('k_M'), k_E: has('k_E'), k_K: has('k_K'), k_v: has('k_v') };
  const all = codes.map((_, row) => Number(Object.values(columns).every((column) => column[row] === 1)));
  return {
    columns: { ...columns, all },
    names: codes.map(({ name }) => name),
    count: all.filter((one) => one === 1).length,
    first: codes[all.indexOf(1)]?.name ?? 'none: they are of several codes',
  };
}
