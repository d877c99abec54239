/** How far a recheck has come: it is written as plain formulas, computed whole, then compared sheet by sheet. */
export type RecheckProgress =
  | { readonly stage: 'translating' | 'computing' }
  /** `sheet` is being compared, after `done` of all of them. */
  | { readonly stage: 'comparing'; readonly sheet: string; readonly done: number; readonly of: number };
