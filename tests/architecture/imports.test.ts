import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { nodesOf, parseSource } from './parse-source.ts';
import { projectFiles, readProjectFile } from './project-files.ts';

/** Folders of src/ by rank: each may import only folders of a lower rank. */
const rank: Readonly<Record<string, number>> = {
  diagnostics: 0,
  markup: 0,
  units: 1,
  language: 2,
  document: 2,
  tables: 2,
  engine: 3,
  recheck: 3,
  notebook: 4,
  review: 5,
  studies: 5,
  figures: 5,
  record: 6,
  workbook: 6,
  workers: 7,
  app: 8,
  cli: 8,
};

/** Rooms of src/app by rank: each may import its own files and rooms of a lower rank; files of no room stand above all. */
const rankInApp: Readonly<Record<string, number>> = {
  style: 0,
  'view-model': 1,
  storage: 2,
  editing: 3,
  session: 4,
  editor: 5,
  sheet: 6,
  findings: 7,
  checking: 7,
  overview: 8,
  panel: 8,
  start: 8,
  shipped: 3,
  dialogs: 9,
  print: 9,
  shell: 10,
};

/** Packages and the only folders that may import them; a package that is not named here may be imported nowhere. */
const packages: readonly (readonly [name: RegExp, folders: readonly string[]])[] = [
  [/^zod(\/mini)?$/, ['document']],
  [/^papaparse$/, ['tables']],
  [/^hyperformula$/, ['recheck']],
  [/^@lezer\//, ['language', 'app']],
  [/^lit($|\/)/, ['app']],
  [/^@codemirror\//, ['app']],
  [/^@tanstack\/virtual-core$/, ['app']],
  [/^idb$/, ['app']],
  [/^virtual:pwa-register$/, ['app']],
  [/^d3-(scale|shape|array)$/, ['figures']],
  [/^templates\/.*\.json(\?url)?$/, ['app']],
  [/^node:/, ['cli']],
];

const folderOf = (path: string): string => path.split('/')[1] ?? '';

/** Every import of a source file, types included: packages by name, files by their path from the project folder. */
function importsOf(file: string): readonly string[] {
  const found = [...nodesOf(parseSource(file, readProjectFile(file)).program)].flatMap((node) => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportNamedDeclaration':
      case 'ExportAllDeclaration':
      case 'ImportExpression':
      case 'TSImportType':
        return node.source?.type === 'Literal' && typeof node.source.value === 'string'
          ? [node.source.value]
          : [];
      default:
        return [];
    }
  });
  return found.map((name) => (name.startsWith('.') ? posix.join(posix.dirname(file), name) : name));
}

/** What is wrong with one import; undefined if nothing is. */
function objection(file: string, imported: string): string | undefined {
  const from = folderOf(file);
  const to = folderOf(imported);
  const known = packages.find(([name]) => name.test(imported));
  if (known) return known[1].includes(from) ? undefined : `only ${known[1].join(' and ')} may import it`;
  if (!/\.(ts|js|css)$/.test(imported)) return 'no folder may import this package';
  if (!imported.startsWith('src/')) return 'leaves src';
  if (from === to) return undefined;
  if (!((rank[to] ?? Number.NaN) < (rank[from] ?? Number.NaN)))
    return `${to} is not of a lower rank than ${from}`;
  return imported === `src/${to}/index.ts` ? undefined : 'another folder is imported through its index.ts';
}

/** The files of an import loop, first one repeated at the end; undefined if the graph has none. */
function importLoop(graph: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const done = new Set<string>();
  const visit = (file: string, path: readonly string[]): readonly string[] | undefined => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return undefined;
    for (const next of graph.get(file) ?? []) {
      const loop = visit(next, [...path, file]);
      if (loop) return loop;
    }
    done.add(file);
    return undefined;
  };
  return [...graph.keys()].map((file) => visit(file, [])).find((loop) => loop !== undefined);
}

const files = projectFiles('src', /\.ts$/);
const graph = new Map(files.map((file) => [file, importsOf(file)]));

test('every folder of src has a rank', () => {
  expect(files.filter((file) => rank[folderOf(file)] === undefined)).toEqual([]);
});

test('every import goes to a lower rank or the own folder, by the front door, and packages stay in their room', () => {
  const objections = [...graph].flatMap(([file, imports]) =>
    imports.flatMap((imported) => {
      const why = objection(file, imported);
      return why === undefined ? [] : [`${file} imports ${imported}: ${why}`];
    }),
  );
  expect(objections).toEqual([]);
  expect([...graph.values()].flat().length).toBeGreaterThan(files.length / 2);
});

/** The room of a file of the page; undefined for one above all rooms, or of no room. */
const roomOf = (path: string): string | undefined => /^src\/app\/([^/]+)\//.exec(path)?.[1];

test('within the page every import goes to a lower room or the own one', () => {
  const own = [...graph].filter(([file]) => file.startsWith('src/app/'));
  expect([...new Set(own.flatMap(([file]) => roomOf(file) ?? []))].sort()).toEqual(
    Object.keys(rankInApp).sort(),
  );
  const climbing = own.flatMap(([file, imports]) =>
    imports.flatMap((imported) => {
      const [from, to] = [roomOf(file), roomOf(imported)];
      if (from === undefined || !imported.startsWith('src/app/') || from === to) return [];
      const climbs = to === undefined || !((rankInApp[to] ?? Number.NaN) < (rankInApp[from] ?? Number.NaN));
      return climbs ? [`${file} imports ${imported}`] : [];
    }),
  );
  expect(climbing).toEqual([]);
});

test('no import loops', () => {
  expect(importLoop(graph)).toBeUndefined();
});

test.each([
  ['src/units/a.ts', 'src/units/b.ts', undefined],
  ['src/engine/a.ts', 'src/language/index.ts', undefined],
  ['src/engine/a.ts', 'src/language/type.ts', 'another folder is imported through its index.ts'],
  ['src/engine/a.ts', 'src/recheck/index.ts', 'recheck is not of a lower rank than engine'],
  ['src/units/a.ts', 'src/engine/index.ts', 'engine is not of a lower rank than units'],
  ['src/units/a.ts', 'templates/x.ts', 'leaves src'],
  ['src/engine/a.ts', 'zod', 'only document may import it'],
  ['src/engine/a.ts', 'left-pad', 'no folder may import this package'],
])('the rules see %s importing %s', (file, imported, why) => {
  expect(objection(file, imported)).toBe(why);
});

test('the search for loops finds one', () => {
  const looped = new Map([
    ['a', ['b']],
    ['b', ['c']],
    ['c', ['b']],
  ]);
  expect(importLoop(looped)).toEqual(['b', 'c', 'b']);
});
