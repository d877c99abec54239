import { type Book, FORMAT, FORMAT_VERSION } from '../schema/book.ts';

/** A book with one empty sheet, in SI and dollars. */
export function blankBook(): Book {
  return {
    format: FORMAT,
    version: FORMAT_VERSION,
    title: {
      project: '',
      subject: '',
      job: '',
      client: '',
      prepared: '',
      checked: '',
      date: '',
      revision: '',
    },
    settings: { system: 'SI', currency: 'USD', units: [], datums: [] },
    sheets: [{ key: 'sheet', title: '', parts: [] }],
    review: { handValues: [], seen: [], comments: [], signOffs: [], revisions: [], bases: [] },
  };
}
