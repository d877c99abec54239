import { type AboutSheets, aboutsOf, type Prose } from '../../document/index.ts';
import { drawUtilisations } from '../../figures/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { byNearness, shareOf, statedValues, verdictWord, writeUtilisation } from '../../notebook/index.ts';
import { type FoundCheck, findingsOf, isByStated, sheetOf } from '../findings/findings.ts';
import { SOURCE_ADVICE, SOURCE_KINDS, sourcesOf } from '../sources.ts';
import { shownSides } from '../values/compared-sides.ts';
import { labelOf, localName } from '../values/names.ts';
import { problemInWords } from '../values/persons-words.ts';
import { statedWords, whyNotComputed } from '../values/stated-words.ts';
import { symbol } from './formulas.ts';
import { section } from './head.ts';
import { idOfLine, linkTo, type RecordSource, titleOfSheet } from './source.ts';
import { paragraphs, table, terms } from './tables.ts';

/** What the book is for and how far it may be trusted, by the books that its sheets come from. */
export function aboutSection(source: RecordSource): Markup {
  const abouts = aboutsOf(source.book);
  const said = abouts.map((one) => about(one, abouts.length > 1));
  return section(
    'about',
    'What it is about',
    said,
    listed(source, 'Assumptions on the sheets', 'assumption'),
    listed(source, 'Open items', 'open item'),
  );
}

function about({ title, about: words, sheets }: AboutSheets, several: boolean): Content {
  const heading = title === undefined ? 'Sheets of this book itself' : `Sheets from “${title}”`;
  const names = sheets.map(({ key, title: own }) => own || key).join(', ');
  const bullets = (items: readonly string[]): Content =>
    items.length === 0
      ? ''
      : element(
          'ul',
          {},
          items.map((item) => element('li', {}, item)),
        );
  return [
    several ? [element('h3', {}, heading), element('p', { class: 'quiet' }, names)] : none,
    words
      ? terms([
          ['Purpose', words.purpose.trim()],
          ['Standard', words.standard.trim()],
          ['Scope', words.scope.trim()],
          ['Limits', bullets(words.limits)],
          ['Assumptions', bullets(words.assumptions)],
          ['Cautions', bullets(words.cautions)],
        ])
      : element('p', { class: 'quiet' }, 'Nothing is said of these sheets.'),
  ];
}

/** All prose of a role that says something. */
function listed({ book }: RecordSource, title: string, role: Prose['role']): Content {
  const found = book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) =>
      part.kind === 'prose' && part.role === role && part.text.trim() !== ''
        ? [{ key, text: part.text }]
        : [],
    ),
  );
  if (found.length === 0) return none;
  const rows = found.map(({ key, text }) => ({ cells: [titleOfSheet(book, key), paragraphs(text)] }));
  return table(title, [{ head: 'Sheet' }, { head: 'Words' }], rows);
}

/** Every check, those nearest to their limits first. */
export function checksSection(source: RecordSource): Markup {
  const { notebook } = source;
  const checks = findingsOf(notebook).checks.toSorted((a, b) => byNearness(a.verdict, b.verdict));
  const applying = checks.filter(({ inapplicable }) => !inapplicable);
  const idle = checks.filter(({ inapplicable }) => inapplicable);
  const heads = [
    { head: 'Symbol', class: 'name' as const },
    { head: 'Check' },
    { head: 'Sheet' },
    { head: 'Demand', class: 'number' as const },
    { head: 'Capacity', class: 'number' as const },
    { head: 'Used', class: 'number' as const },
    { head: 'Verdict' },
  ];
  const bars = applying.length === 0 ? [] : drawUtilisations(notebook, 'wide', 'nearest');
  return section(
    'checks',
    'Check register',
    checks.length === 0 ? element('p', { class: 'quiet' }, 'The book has no check.') : none,
    applying.length === 0
      ? none
      : table(
          'Checks, what fails first, then those nearest to their limits',
          heads,
          applying.map((one) => checkRow(source, one)),
        ),
    bars.map(({ svg }) => element('div', { class: 'picture' }, svg)),
    idle.length === 0
      ? none
      : [
          element('p', {}, 'Do not apply: '),
          element(
            'ul',
            {},
            idle.map(({ item }) =>
              element(
                'li',
                {},
                symbol(localName(item)),
                ` ${labelOf(item)}, `,
                linkTo(idOfLine(item.id), titleOfSheet(source.book, item.sheet)),
              ),
            ),
          ),
        ],
  );
}

function checkRow(source: RecordSource, found: FoundCheck) {
  const { notebook, units, book } = source;
  const { item, verdict } = found;
  const result = notebook.result(item.id);
  const sides = verdict && shownSides(verdict, units, notebook.model.registry);
  const share = verdict && shareOf(verdict);
  const eased = verdict && notebook.easedBy(item.id);
  const why = 'problem' in result ? result.problem : undefined;
  const told = [verdict?.outOfRange, eased, verdict ? undefined : why].flatMap((one) =>
    one ? [problemInWords(one, notebook, item.sheet).message] : [],
  );
  const word = verdict ? verdictWord(verdict) : 'no value';
  const kind = verdict?.holds ? 'holds' : 'fails';
  return {
    cells: [
      symbol(localName(item)),
      [linkTo(idOfLine(item.id), labelOf(item)), told.map((one) => element('p', { class: 'remark' }, one))],
      titleOfSheet(book, item.sheet),
      sides?.demand ?? '',
      sides?.capacity ?? '',
      share === undefined ? '' : writeUtilisation(share, verdict?.holds === true),
      element('b', { class: kind }, isByStated(notebook, found) ? `${word} only by stated values` : word),
    ],
  };
}

/** What is to be mended in the book, and what is to be known of it. */
export function problemsSection(source: RecordSource): Markup {
  const { problems, remarks } = findingsOf(source.notebook);
  const list = (title: string, found: typeof problems): Content =>
    found.length === 0
      ? element('p', { class: 'quiet' }, `${title}: none.`)
      : table(
          title,
          [{ head: 'Symbol', class: 'name' as const }, { head: 'Sheet' }, { head: 'What there is to know' }],
          found.map((one) => {
            const sheet = sheetOf(one);
            const { message, hints } = problemInWords(one, source.notebook, sheet);
            const name = one.cell?.slice(sheet.length + 1) ?? '';
            return {
              cells: [
                name === '' ? '–' : symbol(name),
                sheet === '' ? 'the whole book' : titleOfSheet(source.book, sheet),
                [message, ...hints].join('; '),
              ],
            };
          }),
        );
  return section('problems', 'Problems and remarks', list('Problems', problems), list('Remarks', remarks));
}

/** Every value that stands in place of a computed one. */
export function statedSection(source: RecordSource): Markup {
  const { notebook, units, book } = source;
  const all = statedValues(notebook);
  const heads = ['Symbol', 'Line', 'Sheet', 'Stated', 'Computed', 'Difference', 'Reason'].map((head) => ({
    head,
  }));
  const rows = all.map((one) => {
    const { stated, typed, computed, difference, reason, reasonFor } = statedWords(notebook, one, units);
    const item = notebook.model.items.get(one.id);
    const sheet = one.id.split('.', 1)[0] ?? '';
    const why = whyNotComputed(notebook, one, sheet);
    const where = one.side ?? (one.row === undefined ? '' : `row ${one.row + 1}`);
    const confirm = reasonFor === undefined ? '' : `, given for ${reasonFor}, to be confirmed`;
    return {
      cells: [
        [symbol(item ? localName(item) : one.id), where === '' ? none : ` ${where}`],
        linkTo(idOfLine(one.id), item ? labelOf(item) : one.id),
        titleOfSheet(book, sheet),
        `${stated}${typed === undefined ? '' : ` (as typed: ${typed})`}`,
        `${computed}${why === undefined ? '' : `: ${why}`}`,
        difference ?? '',
        [`${reason || 'reason open'}${confirm}`, ...one.apart.map(({ message }) => message)].join('; '),
      ],
    };
  });
  return section(
    'stated',
    'Stated values',
    rows.length === 0
      ? element(
          'p',
          { class: 'quiet' },
          'No value is stated: every calculated line has the value of its formula.',
        )
      : table('Values in place of what formulas come to', heads, rows),
  );
}

/** Every reference by its kind, the weakest first, and how many results rest on each. */
export function sourcesSection({ notebook }: RecordSource): Markup {
  const sources = sourcesOf(notebook);
  return section(
    'sources',
    'Sources',
    element(
      'p',
      { class: 'quiet' },
      'A reference as it stands beside its lines, and how many results rest on it: those that have it, and all that is computed from them.',
    ),
    SOURCE_KINDS.map((kind) => {
      const of = sources.filter((one) => one.kind === kind);
      if (of.length === 0) return none;
      return [
        element('h3', {}, `${kind[0]?.toUpperCase()}${kind.slice(1)}`),
        element('p', { class: 'quiet' }, SOURCE_ADVICE[kind]),
        table(
          `References: ${kind}`,
          [{ head: 'Reference' }, { head: 'Results', class: 'number' as const }, { head: 'Beside' }],
          of.map(({ reference, results, lines }) => ({
            cells: [
              reference || (kind === 'stated' ? 'reason open' : 'none'),
              `${results}`,
              lines.join(', '),
            ],
          })),
          { level: 'h4' },
        ),
      ];
    }),
  );
}

/** What computing the book a second time with another engine came to. */
export function recheckSection({ recheck }: RecordSource): Markup {
  const words = recheck.length === 0 ? ['Not computed a second time for this record.'] : recheck;
  return section(
    'recheck',
    'Second computation',
    words.map((one) => element('p', {}, one)),
  );
}
