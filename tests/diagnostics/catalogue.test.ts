import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue, catalogueAreas } from '../../src/diagnostics/index.ts';

test('no code stands in two areas', () => {
  const codes = Object.values(catalogueAreas).flatMap((area) => Object.keys(area));
  expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
  expect(codes.sort()).toEqual(Object.keys(catalogue).sort());
});

describe.each(Object.entries(catalogue))('%s', (code, item) => {
  test('is kebab-case', () => {
    expect(code).toMatch(/^[a-z]+(?:-[a-z0-9]+)*$/);
  });

  test('has a title and an explanation in good prose', () => {
    expect(item.title).toMatch(/^[\p{Lu}"].*[^.]$/u);
    expect(item.explain).toMatch(/^[\p{Lu}"].*\.$/su);
    expect(`${item.title} ${item.explain}`).not.toMatch(/ {2}|TODO|undefined/);
  });
});

test('every code is in a fixture or a test', () => {
  const root = new URL('../', import.meta.url);
  const texts = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:txt|ts|json)$/.test(path))
    .map((path) => readFileSync(new URL(path, root), 'utf8'));
  const words = new Set(texts.join('\n').match(/[a-z]+(?:-[a-z0-9]+)*/g));
  expect(Object.keys(catalogue).filter((code) => !words.has(code))).toEqual([]);
});
