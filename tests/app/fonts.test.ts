import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { numberInPrint, unitInPrint } from '../../src/units/index.ts';

/** The signs each family of the page is shipped with, as ranges of code points. */
function shippedRanges(family: string): readonly (readonly [number, number])[] {
  const css = readFileSync('src/app/style/fonts.css', 'utf8');
  const faces = css.split('@font-face').filter((face) => face.includes(`font-family: '${family}'`));
  return faces.flatMap((face) =>
    [...face.matchAll(/U\+([0-9A-F]+)(?:-([0-9A-F]+))?/g)].map(
      ([, from = '', to = from]) => [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const,
    ),
  );
}

function sourcesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));
}

/** The letters of a program that a person may read: without comments and regular expressions. */
function written(file: string): string {
  return readFileSync(file, 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')
    .replace(/\/(?![/*])(?:[^/\n\\[]|\\.|\[(?:[^\]\n\\]|\\.)*\])+\/[a-z]*/g, '');
}

test('every arrow and sign of relation that the page or a figure writes is in a face that is shipped', () => {
  const ranges = shippedRanges('Source Sans 3 Variable');
  const files = [...sourcesBelow('src/app'), ...sourcesBelow('src/figures')];
  const missing = files.flatMap((file) =>
    [...new Set(written(file).match(/[\u2190-\u22ff]/g))]
      .filter((sign) => {
        const code = sign.codePointAt(0) ?? 0;
        return !ranges.some(([from, to]) => code >= from && code <= to);
      })
      .map((sign) => `${file}: ${sign}`),
  );
  expect(files.length).toBeGreaterThan(100);
  expect(missing).toEqual([]);
});

test.each(['Source Sans 3 Variable', 'STIX Two Text'])(
  'every raised sign of a unit or a power of ten is in %s as it is shipped',
  (family) => {
    const ranges = shippedRanges(family);
    const raised =
      `${unitInPrint('kN^(-1234567890)')}${numberInPrint('6.5e-6')}`.match(/[^\x20-\x7e\u202f]/g) ?? [];
    expect(new Set(raised)).toEqual(new Set('⁻¹²³⁴⁵⁶⁷⁸⁹⁰×'));
    const missing = raised.filter((sign) => {
      const code = sign.codePointAt(0) ?? 0;
      return !ranges.some(([from, to]) => code >= from && code <= to);
    });
    expect(missing).toEqual([]);
  },
);

test('a face that adds signs to a family has the weights of its letters, for a browser takes faces of one weight together', () => {
  const css = readFileSync('src/app/style/fonts.css', 'utf8');
  const faces = css
    .split('@font-face')
    .slice(1)
    .map((face) => {
      const of = (name: string) => new RegExp(`${name}:\\s*([^;]+);`).exec(face)?.[1] ?? '';
      return {
        family: of('font-family'),
        kind: `${of('font-style')} ${of('font-weight')}`,
        ranges: of('unicode-range'),
      };
    });
  const letters = faces.filter(({ ranges }) => ranges === '' || ranges.includes('U+0000-00FF'));
  const alone = faces.filter(
    (face) => !letters.some(({ family, kind }) => family === face.family && kind === face.kind),
  );
  expect(letters.length).toBeGreaterThan(5);
  expect(alone.map(({ family, kind }) => `${family} ${kind}`)).toEqual([]);
});
