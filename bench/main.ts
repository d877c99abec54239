import { spawnSync } from 'node:child_process';
import { apply60 } from './apply-edit.ts';
import { check10k } from './check-formulas.ts';
import { edit60, edit6000 } from './edit-sheet.ts';
import type { Spread } from './measure.ts';
import type { Measured, Part } from './part.ts';
import { table } from './table.ts';

const parts: readonly Part[] = [edit60, edit6000, apply60, table, check10k];

const [flag, name] = process.argv.slice(2);
if (flag === '--part') console.log(JSON.stringify(parts.find((part) => part.name === name)?.measure()));
else report(parts.flatMap(inOwnProcess), flag === '--json');

/** Each part has a process of its own, so that none meets the other's heap or compiled code. */
function inOwnProcess(part: Part): readonly Measured[] {
  const program = process.argv[1] ?? '';
  const args = ['--expose-gc', '--max-old-space-size=4096', program, '--part', part.name];
  const run = spawnSync(process.execPath, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
  if (run.status !== 0) throw new Error(`the part ${part.name} of the bench has failed`);
  return JSON.parse(run.stdout) as readonly Measured[];
}

function report(measured: readonly Measured[], json: boolean): void {
  const ratios: Readonly<Record<string, Spread>> = Object.assign({}, ...measured.map((one) => one.ratios));
  if (json) {
    const medians = Object.entries(ratios).map(([key, { median }]) => [key, median]);
    console.log(JSON.stringify(Object.fromEntries(medians)));
    return;
  }
  for (const { title, timings } of measured) {
    console.log(title);
    for (const { name: who, ms, mb } of timings)
      console.log(
        `  ${who.padEnd(16)}${duration(ms.median).padStart(12)}${mb === undefined ? '' : `${mb.toFixed(1)} MB`.padStart(12)}`,
      );
  }
  console.log('quotients, each with the quartiles of its rounds');
  for (const [key, { lower, median, upper }] of Object.entries(ratios))
    console.log(
      `  ${key.padEnd(30)}${median.toFixed(1).padStart(8)}  ${lower.toFixed(1)} to ${upper.toFixed(1)}`,
    );
}

function duration(ms: number): string {
  return ms < 1 ? `${(ms * 1000).toFixed(2)} µs` : `${ms.toFixed(2)} ms`;
}
