import { spawnSync } from 'node:child_process';
import {
  closeSync,
  ftruncateSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { bundle } from '../../scripts/run-typescript.js';
import { quaybook } from './run-quaybook.ts';

const folder = mkdtempSync(join(tmpdir(), 'quaybook-files-'));
const root = fileURLToPath(new URL('../..', import.meta.url));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A file of so many bytes that takes no room on the disk. */
function sparseFile(name: string, size: number): string {
  const path = join(folder, name);
  const file = openSync(path, 'w');
  ftruncateSync(file, size);
  closeSync(file);
  return path;
}

describe('a file that is too large', () => {
  test('is said to be so, not to be of another encoding', () => {
    const path = sparseFile('large.json', 600_000_000);
    expect(quaybook('calc', path)).toEqual({
      status: 2,
      out: '',
      err: `${path} has more than 300 MB, and at most 300 MB are read\n`,
    });
    const table = quaybook('calc', 'debris-haul', '--table', `takeoff=${path}`);
    expect(table).toMatchObject({ status: 2, out: '' });
    expect(table.err).toContain('at most 300 MB are read');
  });

  test('may be a device without an end', () => {
    expect(quaybook('calc', '/dev/zero')).toMatchObject({
      status: 2,
      err: '/dev/zero has more than 300 MB, and at most 300 MB are read\n',
    });
  });
});

test('bytes that are not UTF-8 are refused as such', () => {
  const path = join(folder, 'latin.json');
  writeFileSync(path, new Uint8Array([0x4b, 0xfc, 0x73]));
  expect(quaybook('calc', path)).toEqual({
    status: 2,
    out: '',
    err: `${path} is not UTF-8 text; save it as UTF-8\n`,
  });
});

test('output that cannot be written is told in one sentence', async () => {
  const program = await bundle('src/cli/quaybook.ts');
  const full = openSync('/dev/full', 'w');
  const { status, stderr } = spawnSync(process.execPath, [program, 'calc', 'fender-energy'], {
    encoding: 'utf8',
    stdio: ['ignore', full, 'pipe'],
  });
  const silent = spawnSync(process.execPath, [program, 'calc', 'no-such-book'], {
    stdio: ['ignore', 'ignore', full],
  });
  closeSync(full);
  expect({ status, stderr }).toEqual({
    status: 2,
    stderr: 'the output cannot be written (there is no space left)\n',
  });
  expect(silent.status).toBe(2);
});

test('the program prints and ends as it does in the thread of the other tests', async () => {
  const program = await bundle('src/cli/quaybook.ts');
  for (const args of [
    ['calc', 'fender-energy'],
    ['calc', 'no-such-book'],
    ['eval', '1 m + 2 ft'],
  ]) {
    const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], { encoding: 'utf8' });
    expect({ status, out: stdout, err: stderr }).toEqual(quaybook(...args));
  }
});

test('a bundle that is older than its sources and cannot be written anew is told in one sentence', () => {
  // A folder where the bundle would lie: nothing can be renamed to it, whoever runs this.
  const program = 'tests/cli/small-book.ts';
  const bundled = join(root, '.cache/cli/tests-small-book.js');
  rmSync(bundled, { recursive: true, force: true });
  mkdirSync(join(bundled, 'taken'), { recursive: true });
  utimesSync(bundled, 0, 0);
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(root, 'scripts/run-typescript.js'), program],
    { encoding: 'utf8' },
  );
  rmSync(bundled, { recursive: true });
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(
    /^\.cache\/cli\/tests-small-book\.js is older than its sources and cannot be written anew \(the system says \w+\); make it and its folder writable\n$/,
  );
});
