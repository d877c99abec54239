import { describe, expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { contest } from './independent/contest.ts';
import type { IndependentProgram } from './independent/program.ts';

const seed = 20_261_129;

/** The tests of a template beside the program that was written apart from it. */
export function describeIndependent(program: IndependentProgram): void {
  describe(`the independent program for ${program.template}`, () => {
    test('agrees with the template on every result and verdict', { timeout: 240_000 }, () => {
      const tallies = contest(templateBook(program.template), program, { draws: 300, seed });
      const differing = [...tallies].flatMap(([name, { differed, first }]) =>
        differed > 0 ? [`${name} ${differed} times, first in draw ${first?.draw}: ${first?.words}`] : [],
      );
      expect(differing).toEqual([]);
      const neverValued = [...tallies].filter(([, { valued }]) => valued === 0).map(([name]) => name);
      expect(neverValued).toEqual([]);
    });

    test('leaves few differences larger than one part in a million', () => {
      for (const [name, { relative, reason }] of Object.entries(program.loose ?? {})) {
        expect(relative, name).toBeLessThanOrEqual(0.005);
        expect(reason.trim(), name).not.toBe('');
      }
    });
  });
}
