import { describe, expect, test } from 'vitest';
import type { RecheckState } from '../../../src/app/session/recheck-state.ts';
import { recheckWords } from '../../../src/app/shell/second-engine-words.ts';
import type { RecheckReport } from '../../../src/recheck/index.ts';

const report = (more: Partial<RecheckReport>): RecheckState => ({
  kind: 'done',
  report: {
    agree: 12,
    entries: 4,
    withoutValue: 0,
    findings: [],
    indeterminate: [],
    notRechecked: [],
    resting: [],
    ...more,
  },
});
const differing = (id: string) => ({ id, engine: 1, recheck: 2, message: `${id}: 1 and 2` });
const undecided = (id: string) => ({ id, message: `${id}: not decided` });
const leftOut = (id: string, values: number) => ({ id, values, reason: `${id} is too large` });

// What the bar says; whether more is to come by itself, or it is bad; and a part of the title that says why.
const states: readonly (readonly [RecheckState, words: string, how: '' | 'busy' | 'bad', why?: string])[] = [
  [{ kind: 'waiting for a pause' }, 'recheck begins when you pause', 'busy'],
  [{ kind: 'waiting for values' }, 'recheck waits for values', 'busy'],
  [{ kind: 'stopped' }, 'recheck waits: computing is stopped', '', 'cannot be compared. Press Compute'],
  [{ kind: 'checking' }, 'recheck under way…', 'busy'],
  [{ kind: 'checking', progress: { stage: 'computing' } }, 'recheck under way…', 'busy'],
  [{ kind: 'cancelled' }, 'recheck cancelled', '', 'nothing is checked'],
  [
    { kind: 'left out', reason: 'too large: 7 values' },
    'recheck left out: the book is too large',
    '',
    'too large: 7 values',
  ],
  [{ kind: 'failed', reason: 'out of memory' }, 'recheck failed, nothing is checked', 'bad', 'out of memory'],
  [report({}), 'computed twice: 8 values agree', '', '12 values agree (8 computed twice, 4 entries)'],
  [report({ agree: 10_004 }), 'computed twice: 10\u202f000 values agree', ''],
  [
    report({ findings: [differing('s.a')] }),
    'computed twice: 1 value differs; 8 values agree',
    'bad',
    's.a: 1 and 2',
  ],
  [
    report({ findings: [differing('s.a'), differing('s.b')] }),
    'computed twice: 2 values differ; 8 values agree',
    'bad',
  ],
  [
    report({ indeterminate: [undecided('s.a')] }),
    'computed twice: 1 value not decided; 8 values agree',
    '',
    's.a: not decided',
  ],
  [
    report({ notRechecked: [leftOut('s.a', 3), leftOut('s.b', 1)], resting: ['s.c'] }),
    'computed twice: 4 values of 2 lines not rechecked; 8 values agree',
    '',
    's.b: not rechecked: s.b is too large',
  ],
  [
    report({ findings: [differing('s.a')], notRechecked: [leftOut('s.b', 1)] }),
    'computed twice: 1 value differs; 1 value of 1 line not rechecked; 8 values agree',
    'bad',
  ],
];

describe('of the recheck the page says', () => {
  test.each(states.map((state) => [state[1], state] as const))('%s', (_, [state, words, how, why = '']) => {
    const said = recheckWords(state);
    expect(said).toMatchObject({ words, isBusy: how === 'busy', isBad: how === 'bad' });
    expect(said.title ?? '').toContain(why);
  });
});
