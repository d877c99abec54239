import type { Edit } from '../../document/index.ts';

const done = { paste: 'pasted', take: 'taken', add: 'added' } as const;

/** The label of an edit that puts rows into a table: "paste 5 rows (2 of them new)". */
export function putInLabel(verb: keyof typeof done, rows: number, fresh = 0): string {
  const added = fresh > 0 && fresh < rows ? ` (${fresh} of them new)` : '';
  return `${verb} ${rows} ${rows === 1 ? 'row' : 'rows'}${added}`;
}

/** What an edit with such a label put in, in words: "5 rows (2 of them new) pasted"; undefined for any other. */
export function putIn({ label }: Edit): string | undefined {
  const [, verb = '', rows] = /^(paste|take|add) (\d+ rows?.*)$/.exec(label) ?? [];
  return rows === undefined ? undefined : `${rows} ${done[verb as keyof typeof done]}`;
}
