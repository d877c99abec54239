import { type Book, hashBook, recordBlock } from '../../document/index.ts';
import { figureCss } from '../../figures/index.ts';
import { element, type Markup, writePage } from '../../markup/index.ts';
import { openNotebook } from '../../notebook/index.ts';
import { checkingOf } from '../../review/index.ts';
import { groupedSheets } from '../findings/grouped-sheets.ts';
import { type SheetState, sheetStates, stateWords } from '../findings/sheet-states.ts';
import { pageRules } from '../paper/page-rules.ts';
import { stateSection, titleBlock, titleWords } from './head.ts';
import { originSection, otherwiseIn } from './origin.ts';
import {
  aboutSection,
  checksSection,
  problemsSection,
  recheckSection,
  sourcesSection,
  statedSection,
} from './overview.ts';
import { recordCss, runningHead } from './record-css.ts';
import { checkingSection, signingSection } from './review.ts';
import { sheetSection } from './sheets.ts';
import { idOfSheet, linkTo, type RecordSource } from './source.ts';

/** What a record is made of. */
export interface RecordInput {
  readonly book: Book;
  /** The name and version of the program that writes it. */
  readonly program: string;
  /** What computing the book a second time came to, a sentence each; none where that was not done. */
  readonly recheck: readonly string[];
}

/**
 * The record of a book: one page of HTML that needs no program to be read, is printed as it stands, and carries the book, so
 * that it can be opened again. Equal books give equal texts, whoever writes them, wherever and whenever.
 */
export function writeRecord({ book, program, recheck }: RecordInput): string {
  const notebook = openNotebook(book);
  notebook.judgeStated();
  const source: RecordSource = {
    notebook,
    book,
    hash: hashBook(book),
    program,
    recheck,
    units: 'written',
    checking: checkingOf(notebook),
    otherwise: otherwiseIn(book),
  };
  const sheets = [...groupedSheets(book).values()].flat();
  const pages = sheets.map(({ key, title }, at) => ({ name: `sheet-${at + 1}`, title: title || key }));
  const front = { name: 'front', title: 'Record' };
  const back = { name: 'sources', title: 'Sources' };
  const css = [
    recordCss(pages.map(({ name }) => name)),
    figureCss,
    runningHead(book),
    pageRules(book, [front, ...pages, back], source.hash),
  ].join('\n');
  const body = element(
    'main',
    {},
    element('header', {}, element('h1', {}, titleWords(source)), titleBlock(source)),
    contents(source),
    stateSection(source),
    aboutSection(source),
    checksSection(source),
    problemsSection(source),
    statedSection(source),
    recheckSection(source),
    originSection(source),
    checkingSection(source),
    signingSection(source),
    sheets.map((sheet, at) => sheetSection(source, sheet, `sheet-${at + 1}`)),
    sourcesSection(source),
  );
  return writePage({ title: `Record: ${titleWords(source)}`, css, body, data: recordBlock(book) });
}

/** What stands in the record, each part a link to it; sheets with their state. */
function contents({ book, notebook }: RecordSource): Markup {
  const states = sheetStates(notebook);
  const item = (id: string, words: string, state = ''): Markup =>
    element('li', {}, linkTo(id, words), state === '' ? '' : `: ${state}`);
  const stateOf = (state: SheetState | undefined): string =>
    state ? stateWords(state, undefined).words : '';
  const groups = [...groupedSheets(book)].map(([group, sheets]) => {
    const list = sheets.map(({ key, title }) => item(idOfSheet(key), title || key, stateOf(states.get(key))));
    return group === '' ? list : element('li', {}, group, element('ul', {}, list));
  });
  return element(
    'nav',
    { 'aria-label': 'Contents' },
    element('h2', {}, 'Contents'),
    element(
      'ul',
      {},
      item('state', 'State of this record'),
      item('about', 'What it is about'),
      item('checks', 'Check register'),
      item('problems', 'Problems and remarks'),
      item('stated', 'Stated values'),
      item('recheck', 'Second computation'),
      item('origin', 'Origin of the sheets'),
      item('checking', 'Checking by hand'),
      item('signing', 'Signatures and revisions'),
      groups,
      item('sources', 'Sources'),
    ),
  );
}
