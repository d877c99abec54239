import type { Book } from '../../document/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { type OriginDifference, type OtherField, originsOf, templatesOf } from '../../review/index.ts';
import { typesetText } from '../math/formula-set.ts';
import { fieldsTold, labelOfPart, otherwiseWords, startWords } from '../origin-words.ts';
import { shortHash } from '../paper/page-rules.ts';
import { formulaLines, writtenFormula } from './formulas.ts';
import { section } from './head.ts';
import { idOfLine, linkTo, type RecordSource } from './source.ts';
import { table } from './tables.ts';

/** How wide a formula stands beside another, in em of its type. */
const WIDTH = 14;

/** What each sheet was when it came from a template or another book, and each line that is not as it came. */
export function originSection({ book }: RecordSource): Markup {
  const origins = originsOf(book);
  const templates = templatesOf(book);
  const came = origins.map(({ sheet, start, differences }) => ({
    cells: [sheet.title || sheet.key, startWords(start), shortHash(start.content), `${differences.length}`],
  }));
  const rows = origins.flatMap(({ differences }) => differences.flatMap(differenceRows));
  return section(
    'origin',
    'Origin of the sheets',
    origins.length === 0
      ? element('p', { class: 'quiet' }, 'No sheet knows a template or a book that it came from.')
      : [
          table(
            'Where the sheets came from',
            [
              { head: 'Sheet' },
              { head: 'From' },
              { head: 'Content' },
              { head: 'Lines not as they came', class: 'number' },
            ],
            came,
          ),
          rows.length === 0
            ? element('p', {}, 'Every line is as it came, but for what is entered.')
            : table(
                'Lines that are not as they came',
                [{ head: 'Line' }, { head: 'What' }, { head: 'As it came' }, { head: 'Here' }],
                rows,
              ),
        ],
    templates.length === 0
      ? none
      : element(
          'p',
          { class: 'quiet' },
          `This record does not run the cases of ${templates.length === 1 ? 'the template' : 'the templates'} ${templates.join(', ')}, nor list sheets of theirs that the book has not; “quaybook verify” on it does.`,
        ),
  );
}

/** What of each line or column of the book is not as it came, by its id. */
export function otherwiseIn(book: Book): ReadonlyMap<string, string> {
  const all = originsOf(book).flatMap(({ differences }) => differences);
  return new Map(all.flatMap((one) => (one.is ? [[one.is.id, otherwiseWords(one)] as const] : [])));
}

function differenceRows(one: OriginDifference): readonly { readonly cells: readonly Content[] }[] {
  const part = one.is ?? one.was;
  if (!part) return [];
  const name = `${part.id}, ${labelOfPart(part)}`;
  const line = one.is && part.kind === 'row' ? linkTo(idOfLine(part.id), name) : name;
  const fields = fieldsTold(one);
  if (fields.length === 0) return [{ cells: [line, otherwiseWords(one), '', ''] }];
  return fields.map((field) => {
    const what = one.what === 'changed' ? field.field : `${otherwiseWords(one)}: ${field.field}`;
    return { cells: [line, what, said(field, field.was), said(field, field.is)] };
  });
}

function said({ says }: OtherField, text: string | undefined): Content {
  if (text === undefined) return '';
  if (says === 'words') return text;
  const set = says === 'formula' ? typesetText(text, WIDTH) : undefined;
  return set ? formulaLines(set, 'symbols', text) : writtenFormula(text);
}
