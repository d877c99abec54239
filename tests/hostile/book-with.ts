import type { Random } from '../recheck/random.ts';

/** A small book with a text in one of its places. */
export function bookWith(text: string, { pick }: Random): string {
  const place = pick([
    'entry',
    'formula',
    'unit',
    'label',
    'name',
    'column',
    'cell',
    'title',
    'key',
    'option',
  ]);
  const at = (wanted: string, usual: string): string => (place === wanted ? text : usual);
  return JSON.stringify({
    format: 'quaybook',
    version: 1,
    title: {
      project: at('title', 'P'),
      subject: '',
      job: '',
      client: '',
      prepared: '',
      checked: '',
      date: '',
      revision: '',
    },
    settings: { system: 'SI', currency: 'USD' },
    sheets: [
      {
        key: at('key', 's'),
        title: 'S',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [
              {
                id: 'a',
                kind: 'given',
                name: at('name', 'a'),
                label: at('label', 'l'),
                entry: at('entry', '3 m'),
                unit: at('unit', 'm'),
              },
              { id: 'b', kind: 'calc', name: 'b', formula: at('formula', 'a * 2') },
              {
                id: 'c',
                kind: 'choice',
                name: 'c',
                entry: at('option', 'x'),
                options: [{ value: at('option', 'x') }],
              },
            ],
          },
          {
            id: 't',
            kind: 'table',
            name: 't',
            length: 2,
            columns: [
              { id: 'n', kind: 'given', name: 'n', chunks: [[1, at('cell', '2')]] },
              { id: 'm', kind: 'calc', name: 'm', formula: at('column', 'n * 2') },
            ],
          },
        ],
      },
    ],
  });
}
