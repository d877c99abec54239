import type { FoundCheck } from '../../record/index.ts';
import { countedDo, countWords } from '../../record/index.ts';
import type { Computing } from '../session/session.ts';

/**
 * How the checks of a book stand, in words; while work is left over, what has no value may still come to one. `byStated` of
 * them hold only by stated values.
 */
export function checkWords(
  checks: readonly FoundCheck[],
  work: 'done' | 'left over' = 'done',
  byStated = 0,
): string {
  if (checks.length === 0) return 'no checks';
  const applying = checks.filter(({ inapplicable }) => !inapplicable);
  const idle = checks.length - applying.length;
  const notApply = `${idle === 1 ? 'does' : 'do'} not apply`;
  if (applying.length === 0) return `${countWords(idle, 'check')} ${notApply}`;
  const apart = idle === 0 ? '' : `, ${idle} ${notApply}`;
  const all = applying.length;
  const failing = applying.filter(({ verdict }) => verdict?.holds === false).length;
  const open = applying.filter(({ verdict }) => !verdict).length;
  const beyond = applying.filter(({ verdict }) => verdict?.holds && verdict.outOfRange).length;
  const apartFrom = (count: number, how: string): string => {
    const hold = failing === 0 ? '' : count === 1 ? 'holds ' : 'hold ';
    return count === 0 ? '' : `, ${count} ${hold}${how}`;
  };
  const ranged = `${apartFrom(beyond, 'beyond a permitted range')}${apartFrom(byStated, 'only by stated values')}`;
  const lack = work === 'done' ? 'without a value' : 'not computed yet';
  if (open === all && work === 'left over') return `${countWords(all, 'check')} ${lack}${apart}`;
  const without = `${ranged}${open === 0 ? '' : `, ${open} ${lack}`}${apart}`;
  if (failing > 0) return `${failing} of ${countedDo(all, 'check', 'fail')}${without}`;
  const less = open + beyond + byStated;
  if (less > 0) return `${all - less} of ${countedDo(all, 'check', 'hold')}${without}`;
  return `${countedDo(all, 'check', 'hold')}${without}`;
}

/** How far the work is that is left over, and how much waits for it. */
export function computingWords({ cells, column, isStopped }: Computing): string {
  const waits = cells === 1 ? '1 line waits' : `${cells} lines wait`;
  if (isStopped) return `stopped: ${waits}`;
  return column
    ? `computing ${column.id}: row ${column.done} of ${column.rows}; ${waits}`
    : `computing: ${waits}`;
}

/** How many links are broken and how many are to be made, each where there are any; else how many there are. */
export function linkCounts({
  broken,
  open,
  linked,
}: {
  readonly broken: number;
  readonly open: number;
  readonly linked: number;
}): readonly { readonly words: string; readonly isBad: boolean }[] {
  if (broken === 0 && open === 0) return linked === 0 ? [] : [{ words: `${linked} linked`, isBad: false }];
  return [
    ...(broken === 0 ? [] : [{ words: countWords(broken, 'broken link'), isBad: true }]),
    ...(open === 0 ? [] : [{ words: `${open} to be linked`, isBad: false }]),
  ];
}
