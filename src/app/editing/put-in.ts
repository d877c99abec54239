import type { Edit } from '../../document/index.ts';

const done = { paste: 'pasted', take: 'taken', add: 'added' } as const;

/**
 * The label of an edit that puts rows into a table: "paste 5 rows (2 of them new)". `kept`: how many columns of rows that
 * were there hold what they held, because the text has nothing for them.
 */
export function putInLabel(verb: keyof typeof done, rows: number, fresh = 0, kept = 0): string {
  const added = fresh > 0 && fresh < rows ? ` (${fresh} of them new)` : '';
  const other = kept === 1 ? '1 other column keeps' : `${kept} other columns keep`;
  return `${verb} ${rows} ${rows === 1 ? 'row' : 'rows'}${added}${kept > 0 ? `; ${other} what was there` : ''}`;
}

/** What an edit with such a label put in, in words: "5 rows (2 of them new) pasted"; undefined for any other. */
export function putIn({ label }: Edit): string | undefined {
  const [, verb = '', rows, kept = ''] = /^(paste|take|add) (\d+ rows?[^;]*)(;.*)?$/.exec(label) ?? [];
  return rows === undefined ? undefined : `${rows} ${done[verb as keyof typeof done]}${kept}`;
}
