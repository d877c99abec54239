import { type Problem, problem } from '../diagnostics/index.ts';
import { NAME_PATTERN } from '../document/index.ts';
import { findFunction } from '../language/index.ts';
import { normaliseLookAlikes } from '../units/index.ts';

/** A name as a person writes it (`∆_max`, `f’_c`), in the characters that books and formulas spell it with. */
export function spelledName(written: string): string {
  return normaliseLookAlikes(written).normalize('NFC').trim();
}

/** What is wrong with a name that no book may have: it is not spelled as a name. */
export function spellingProblems(name: string): readonly Problem[] {
  if (NAME_PATTERN.test(name)) return [];
  return [problem('book-name-spelling', { from: 0, to: name.length }, { path: 'a given', name })];
}

/** What is wrong with a name that formulas have for themselves: functions, TRUE and FALSE, in any case. */
export function reservedProblems(name: string): readonly Problem[] {
  if (!findFunction(name) && !/^(?:true|false)$/i.test(name)) return [];
  return [problem('rename-reserved', { from: 0, to: 0 }, { name })];
}
