import { notRecheckedWords, RECHECK_LIMITS, type RecheckReport, reportLines } from '../../recheck/index.ts';
import { countWords } from '../../record/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { RecheckState } from '../session/recheck-state.ts';

/** What is said of a state, and in the title why. */
export interface RecheckWords {
  readonly words: string;
  readonly title?: string;
  readonly isBad: boolean;
  /** Whether something else is to come without the person. */
  readonly isBusy: boolean;
}

/** A state of the second engine, as the bar says it. */
export function recheckWords(state: RecheckState): RecheckWords {
  switch (state.kind) {
    case 'waiting for a pause':
      return { words: 'recheck begins when you pause', isBad: false, isBusy: true };
    case 'waiting for values':
      return { words: 'recheck waits for values', isBad: false, isBusy: true };
    case 'stopped':
      return {
        words: 'recheck waits: computing is stopped',
        title: 'Values that are not computed cannot be compared. Press Compute, below, to go on.',
        isBad: false,
        isBusy: false,
      };
    case 'checking':
      return { words: 'recheck under way…', isBad: false, isBusy: true };
    case 'cancelled':
      return {
        words: 'recheck cancelled',
        title: 'It was ended before it was done, so that nothing is checked of the book as it is.',
        isBad: false,
        isBusy: false,
      };
    case 'left out':
      return {
        words: 'recheck left out: the book is too large',
        title: state.reason,
        isBad: false,
        isBusy: false,
      };
    case 'failed':
      return { words: 'recheck failed, nothing is checked', title: state.reason, isBad: true, isBusy: false };
    case 'done':
      return doneWords(state.report);
  }
}

function doneWords(report: RecheckReport): RecheckWords {
  const { findings, indeterminate } = report;
  // Of entries only the reading in a unit is computed a second time.
  const agree = report.agree - report.entries;
  const parts = [
    findings.length > 0
      ? `${findings.length} ${findings.length === 1 ? 'value differs' : 'values differ'}`
      : '',
    indeterminate.length > 0 ? `${countWords(indeterminate.length, 'value')} not decided` : '',
    notRecheckedWords(report),
    `${writeNumber(agree)} ${agree === 1 ? 'value agrees' : 'values agree'}`,
  ];
  return {
    words: `computed twice: ${parts.filter((part) => part !== '').join('; ')}`,
    title: [...reportLines(report), RECHECK_LIMITS].join('\n'),
    isBad: findings.length > 0,
    isBusy: false,
  };
}
