import { readdirSync, readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';
import { expect } from 'vitest';
import type { Problem } from '../../src/diagnostics/index.ts';

/** A line of a text fixture, cut at " | ", with the file and line it stands at. */
export interface FixtureLine {
  readonly place: string;
  readonly columns: readonly string[];
}

/** Reads every fixture file of a folder beside the tests. Lines are blank, `# comment`, or columns. */
export function readFixtures(folder: string): FixtureLine[] {
  const directory = new URL(`./${folder}/`, import.meta.url);
  return readdirSync(directory)
    .sort()
    .flatMap((file) => fixtureFile(`${folder}/${file}`));
}

/** Reads one fixture file. `\u202f` stands for the character; columns after the first lose their outer spaces. */
export function fixtureFile(path: string): FixtureLine[] {
  const text = readFileSync(new URL(`./${path}`, import.meta.url), 'utf8');
  return text.split('\n').flatMap((line, index) => {
    if (line.trim() === '' || line.startsWith('# ')) return [];
    const [first = '', ...rest] = line.split('|');
    const written = first
      .replace(/ $/, '')
      .replace(/\\u([0-9a-f]{4})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
    return [{ place: `${path}:${index + 1}`, columns: [written, ...rest.map((column) => column.trim())] }];
  });
}

/** Works out an expected value from exact definitions: inch, foot, lb (kg), g (m/s²), all of NIST SP 811 App. B. */
export function workOut(expression: string): number {
  const value: unknown = evaluate(expression, { inch: 0.0254, foot: 0.3048, lb: 0.45359237, g: 9.80665 });
  if (typeof value !== 'number') throw new Error(`not a number: ${expression}`);
  return value;
}

/** Whether two numbers agree to a few units in the last place. */
export function expectClose(actual: number, expected: number, place: string): void {
  const error = Math.abs(actual - expected);
  expect(error, `${place}: ${actual} for ${expected}`).toBeLessThanOrEqual(1e-15 * 4 * Math.abs(expected));
}

/** Checks problems against "code@from-to words {fix; fix} && next": exact code, columns and fixes, words contained. */
export function expectProblems(problems: readonly Problem[], expectation: string, place: string): void {
  const wanted = expectation.split(' && ');
  expect(
    problems.map(({ code, from, to }) => `${code}@${from}-${to}`),
    place,
  ).toEqual(wanted.map((text) => text.split(' ')[0]));
  wanted.forEach((text, index) => {
    const found = problems[index];
    const [, words = '', fixes] = /^\S+ ?(.*?) ?(?:\{(.*)\})?$/.exec(text) ?? [];
    const said = [found?.message, ...(found?.hints ?? [])].join('; ');
    expect(said, place).toContain(words);
    if (fixes !== undefined)
      expect(
        found?.fixes.map((fix) => fix.insert),
        place,
      ).toEqual(fixes.split('; '));
  });
}
