import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../../diagnostics/index.ts';
import type { Choice, Given } from '../../../document/index.ts';
import type { CheckedFormula } from '../../../language/index.ts';
import {
  type Item,
  linkSource,
  type Result,
  shareOf,
  type Value,
  type Verdict,
  writeUtilisation,
} from '../../../notebook/index.ts';
import {
  type AlignedQuantity,
  appliesInWords,
  choiceWords,
  comparedSides,
  displayUnit,
  entryView,
  formatQuantity,
  isSideWorked,
  localName,
  math,
  methodsShown,
  numberOfLine,
  problemInWords,
  symbolMath,
  typesetFormula,
} from '../../../record/index.ts';
import { unitInPrint } from '../../../units/index.ts';
import { drawMarkup } from '../../style/markup.ts';
import { drawSign, type Sign } from '../../style/signs.ts';
import { drawLineNumbers, drawRowNumbers } from '../numbers/numbers-view.ts';
import { LETTER } from '../paper/page-measure.ts';
import { drawFormula } from './formula-view.ts';
import type { LineContext, Room } from './line-source.ts';
import { statedNote } from './stated-note.ts';
import { totalNote } from './total-note.ts';
import { utilisationBar } from './utilisation-bar.ts';

/** The right half of a line. `plain`: nothing but an entry, so the description takes the room; `across`: description and words share it; `under`: the calculation stands under the description, which takes the whole width. */
export interface LineBody {
  readonly layout: 'beside' | 'under' | 'plain' | 'across';
  readonly value: TemplateResult;
  readonly unit: string;
  /** A sentence stands below the value. */
  readonly told?: boolean;
  readonly sign?: { readonly sign: Sign; readonly words: string };
}

/** Draws what a line comes to. */
export function lineBody(context: LineContext): LineBody {
  const { source } = context;
  switch (source.kind) {
    case 'given':
      return givenBody(context, source);
    case 'choice':
      return choiceBody(context, source);
    case 'calc':
    case 'series':
      return calcBody(context);
    case 'check':
      return checkBody(context);
  }
}

/** The unit that stands beside a line without a value, in the system that is switched on as every other. */
function lineUnit({ item, session, source }: LineContext): string {
  if (item?.unit)
    return unitInPrint(displayUnit(item.unit, session.units, session.notebook.model.registry).text);
  return 'unit' in source ? unitInPrint(source.unit ?? '') : '';
}

function resultOf({ session, item }: LineContext): Result | undefined {
  if (item?.kind !== 'input' && item?.kind !== 'formula') return undefined;
  return session.notebook.result(item.id);
}

function givenBody(context: LineContext, row: Given): LineBody {
  const result = resultOf(context);
  const unit = lineUnit(context);
  if (result?.status === 'problem')
    return stopped(context, html`<span class="entry">${row.entry}</span>`, result, unit, 'plain');
  if (result?.status !== 'ok') return { layout: 'plain', value: blankEntry(row.optional === true), unit };
  const warning = context.item?.problems.find(({ severity }) => severity === 'warning');
  const told = warning ? toldOf(context, warning) : nothing;
  const marked = warning ? ({ told: true, sign: { sign: 'warning', words: 'see the remark' } } as const) : {};
  if (result.value.kind !== 'number') {
    const value = html`<span class="entry words">${row.entry}</span>${told}`;
    const layout = row.entry.length <= 12 ? 'plain' : wordsFit(row.entry, context.room) ? 'beside' : 'under';
    return { layout, value, unit, ...marked };
  }
  const { session } = context;
  const view = entryView(row, result.value, session.units, session.notebook.model.registry);
  const among = context.item && numberOfLine(session.notebook, context.item, session.units);
  const behind = among?.behind || nothing;
  if (view.kind === 'plain') {
    const value = html`<span class="entry" data-behind=${behind}>${view.number}</span>${told}`;
    return { layout: 'plain', value, unit: view.unit, ...marked };
  }
  const value = html`<div class="calculation"><span class="entry">${view.entry}</span></div>
    ${equals}<span class="number" data-behind=${behind}>${among?.number ?? view.number}</span>${told}`;
  return { layout: 'beside', value, unit: view.unit, ...marked };
}

function blankEntry(optional: boolean): TemplateResult {
  return optional
    ? html`<span class="entry blank optional"><span aria-hidden="true">–</span><span class="unseen">blank</span></span>`
    : html`<span class="entry blank">to be entered</span>`;
}

function choiceBody(context: LineContext, row: Choice): LineBody {
  const result = resultOf(context);
  const label = choiceWords(row);
  const shown = html`<span class="entry words choice" data-open>${drawSign('choice')}<span>${label === '' ? 'to be chosen' : label}</span></span>`;
  // The sign in front of the words, and air between the two.
  const wanted = (label.length + (row.label ?? '').length) * LETTER * 1.06 + 60;
  const beside = wordsFit(label, context.room) ? 'beside' : 'under';
  const layout = wanted <= context.room.across ? 'across' : beside;
  if (result?.status === 'problem') return stopped(context, shown, result, '', beside);
  return { layout, value: shown, unit: '' };
}

const equals = html`<span class="equals" aria-hidden="true">=</span>`;

function calcBody(context: LineContext): LineBody {
  const { item, source } = context;
  const unit = lineUnit(context);
  if (!item || !('checked' in item)) return { layout: 'beside', value: html``, unit };
  if ('formula' in source && source.formula?.trim() === '')
    return { layout: 'beside', value: html`<span class="quiet calculation">no formula yet</span>`, unit };
  if (item.kind === 'formula column')
    return columnBody({ ...context, room: withoutResult(context.room) }, item, unit);
  const result = resultOf(context);
  const used = inForce(context, item);
  const unknown = item.methods !== undefined && used.words === undefined;
  const formula = unknown
    ? ({ layout: 'beside', drawn: html`<div class="calculation"></div>` } as const)
    : (linkedFrom(context, item) ?? calculation(context, used.item, result?.status === 'ok', used.words));
  if (result?.status === 'problem' || result?.status === 'waiting')
    return stopped(context, formula.drawn, result, unit, formula.layout);
  if (result?.status !== 'ok')
    return {
      layout: formula.layout,
      value: html`${formula.drawn}${equals}<span class="number quiet">–</span>`,
      unit,
    };
  const shown = shownValue(context, result.value);
  const isStated = item.kind === 'formula' && item.stated !== undefined;
  const note = isStated ? statedNote(context) : totalNote(context, result.value);
  const words = result.value.kind !== 'number';
  const layout = words && shown.number.length > 14 ? 'under' : formula.layout;
  return {
    layout,
    // What is stated is not what the formula equals.
    value: html`${formula.drawn}${isStated ? nothing : equals}<span class="number ${words ? 'words' : ''}" data-behind=${shown.behind || nothing}
        >${isStated ? html`<span class="stated-value"><span class="unseen">stated </span>${shown.number}</span>` : shown.number}</span
      >${note}`,
    unit: words ? '' : shown.unit,
    ...(note !== nothing && { told: true }),
  };
}

/** A formula, and where it stands. */
interface DrawnFormula {
  readonly drawn: TemplateResult;
  readonly layout: 'beside' | 'under';
}

/** In place of its formula, a linked line says in words where its value comes from. */
function linkedFrom({ session, sheet, room }: LineContext, item: Item): DrawnFormula | undefined {
  const from = linkSource(item, session.notebook.model.items);
  if (!from) return undefined;
  const title = session.notebook.book.sheets.find(({ key }) => key === from.sheet)?.title || from.sheet;
  const where = from.sheet === sheet ? 'from' : `from ${title}:`;
  const name = localName(from);
  const words = `${where} ${name}`;
  return {
    layout: wordsFit(words, room) ? 'beside' : 'under',
    drawn: html`<div class="calculation linked"><span>${where}</span> ${drawMarkup(math(symbolMath(name)))}</div>`,
  };
}

/** A line or column with a formula. */
type Computed = Extract<Item, { checked: unknown }>;

/** The formula in force of a line that has methods, with what it is for; of any other line its own. */
function inForce(
  { session }: LineContext,
  item: Computed,
): { readonly item: Computed; readonly words?: string } {
  const [shown] = methodsShown(session.notebook, item);
  return shown ? { item: { ...item, checked: shown.item.checked }, words: shown.words } : { item };
}

/** The room of a formula behind which no result stands; beside the description it could be too little for the numbers put in. */
function withoutResult(room: Room): Room {
  const { below, result } = room;
  return { ...room, below: below + result, result: 0 };
}

/** The formula of a column: its rows are in the table, so nothing follows it. */
function columnBody(context: LineContext, item: Computed, unit: string): LineBody {
  const { notebook } = context.session;
  if (item.methods) return methodsBody(context, item, unit);
  const { drawn, layout } = calculation(context, item, true);
  const column = notebook.column(item.id);
  if (column.status !== 'ok') return stopped(context, drawn, column, unit, layout);
  return { layout, value: drawn, unit };
}

/** The formulas of a column with methods, one below the other, each with what it is for and its reference. */
function methodsBody(context: LineContext, item: Computed, unit: string): LineBody {
  const { notebook } = context.session;
  const { paper, source } = context;
  const referenceOf = ({ reference }: { readonly reference?: string }): string =>
    paper ? paper.cite(reference ?? source.reference ?? '') : (reference ?? '');
  const shown = methodsShown(notebook, item).map(({ item: { checked, method }, words }) => {
    const reference = referenceOf(method);
    return html`<div>
        ${setSymbols(checked, context.room.below)}
        ${methodNote(context, [words, reference].filter(Boolean).join(paper ? ' ' : ': '))}
      </div>`;
  });
  const numbers = context.numbers ? numbersOf(context, item, 'below') : nothing;
  const drawn = html`<div class="calculation">${shown}</div>${numbers}`;
  const column = notebook.column(item.id);
  if (column.status !== 'ok') return stopped(context, drawn, column, unit, 'under');
  return { layout: 'under', value: drawn, unit };
}

function setSymbols(checked: CheckedFormula, most: number): TemplateResult {
  return checked.whole
    ? html`${drawFormula(typesetFormula(checked, most), 'symbols')}`
    : html`<code class="written">${checked.text}</code>`;
}

/** A formula as it is set, with the numbers put in below where the line is shown in full. */
function calculation(context: LineContext, item: Computed, numbered: boolean, method?: string): DrawnFormula {
  const { room } = context;
  const { checked } = item;
  // Set as mathematics it would lack what could not be read.
  if (!checked.whole)
    return {
      layout: 'under',
      drawn: html`<div class="calculation"><code class="written">${checked.text}</code>${methodNote(context, method)}</div>`,
    };
  const beside = typesetFormula(checked, room.beside);
  const under = beside.width > room.beside || beside.lines.length > 1;
  const symbols = under ? typesetFormula(checked, room.below) : beside;
  const numbers =
    context.numbers && numbered ? numbersOf(context, item, under ? 'below' : 'beside') : nothing;
  return {
    layout: under ? 'under' : 'beside',
    drawn: html`<div class="calculation">${drawFormula(symbols, 'symbols')}${methodNote(context, method)}</div>
      ${numbers}`,
  };
}

/** Which of a line's methods a formula is; paper, where all of a sheet's are read at once, leaves out what they all are. */
function methodNote({ paper }: LineContext, words: string | undefined): TemplateResult | typeof nothing {
  return words === undefined
    ? nothing
    : html`<span class="method">${paper ? words : `method ${words}`}</span>`;
}

/** So many em more have the numbers put in, which reach below the result where there is one. */
const NUMBERS_MORE = 5;

/** A formula with its numbers put in, if it has any: of a column those of the row that governs. */
function numbersOf({ room, session }: LineContext, item: Computed, where: 'beside' | 'below') {
  const more = where === 'below' && room.result === 0 ? 0 : NUMBERS_MORE;
  const most = (room[where] + more) * room.numbers;
  if (item.kind === 'formula') return drawLineNumbers(session, item, item.checked, most);
  return drawRowNumbers(session, item, undefined, most);
}

/** A value as it stands among those of its neighbours. */
function shownValue({ session, item }: LineContext, value: Value): AlignedQuantity {
  const alone = { unit: '', behind: '' };
  if (value.kind === 'text') return { ...alone, number: value.text };
  if (value.kind === 'truth') return { ...alone, number: value.truth ? 'true' : 'false' };
  const { notebook, units } = session;
  const among = item && numberOfLine(notebook, item, units);
  return among ?? { ...alone, ...formatQuantity(value.si, value.unit, units, notebook.model.registry) };
}

function checkBody(context: LineContext): LineBody {
  const { item, session, source } = context;
  if (item?.kind !== 'formula') return { layout: 'beside', value: html``, unit: '' };
  if ('formula' in source && source.formula.trim() === '')
    return {
      layout: 'beside',
      value: html`<span class="quiet calculation">demand &lt;= capacity</span>`,
      unit: '',
    };
  const result = session.notebook.result(item.id);
  const formula = calculation(context, item, false);
  if (result.status === 'problem' || result.status === 'waiting')
    return stopped(context, formula.drawn, result, '', formula.layout);
  if (result.status === 'inapplicable')
    return {
      layout: formula.layout,
      value: html`${formula.drawn}${inapplicable(context, appliesInWords(session.notebook, item), result.problem)}${statedNote(context)}`,
      unit: '',
      told: true,
    };
  const verdict = session.notebook.verdict(item.id);
  if (!verdict)
    return {
      layout: formula.layout,
      value: html`${formula.drawn}${equals}<span class="number quiet">–</span>`,
      unit: '',
    };
  const sides = comparedSides(session.notebook, item, session.units);
  const stated = statedNote(context);
  const { outOfRange } = verdict;
  const eased = session.notebook.easedBy(item.id);
  const note = html`${outOfRange ? toldOf(context, outOfRange) : nothing}${eased ? toldOf(context, eased) : nothing}${stated}`;
  const told = stated === nothing && !outOfRange && !eased ? {} : { told: true };
  if (!sides)
    return {
      layout: formula.layout,
      value: html`${formula.drawn}${verdictOf(verdict)}${note}`,
      unit: '',
      ...told,
    };
  const { left, sign, right } = sides;
  const { checked } = item;
  const { room } = context;
  // A formula that cannot be broken would be cut off beside, as soon as it is shown.
  const fits =
    wordsFit(`${left}   ${right}`, { ...room, beside: room.beside - 7 }) &&
    typesetFormula(checked, room.beside).width <= room.beside;
  const [layout, where] = fits ? (['beside', 'beside'] as const) : (['under', 'below'] as const);
  // The sides stand compared already; what they were calculated from does not.
  const numbers =
    context.numbers && checked.syntax.kind === 'comparison' && isSideWorked(item)
      ? numbersOf(context, item, where)
      : nothing;
  const value = html`<div class="calculation">
      <span class="compared"
        ><span>${left}</span><span class="than">${sign}</span><span>${right}</span></span
      >
      ${context.full ? drawFormula(typesetFormula(checked, room[where]), 'symbols') : nothing}
    </div>
    ${verdictOf(verdict)}${numbers}${note}`;
  return { layout, value, unit: '', ...told };
}

/** Whether words fit beside a description, in the room of calculation and result (in em of formulas). */
function wordsFit(text: string, room: Room): boolean {
  return text.length * 0.46 + 1 <= room.beside + 7;
}

function verdictOf(verdict: Verdict): TemplateResult {
  const { holds, outOfRange } = verdict;
  const share = shareOf(verdict);
  const word = holds ? 'holds' : 'fails';
  const isBeyond = holds && outOfRange !== undefined;
  return html`<span class="verdict ${isBeyond ? 'beyond' : word}">
    ${share === undefined ? drawSign(isBeyond ? 'warning' : word) : utilisationBar(share)}
    <span class="share">${share === undefined ? '' : writeUtilisation(share, holds)}</span>
    <span class="word">${word}</span>
  </span>`;
}

function stopped(
  { session, sheet }: LineContext,
  drawn: TemplateResult,
  result: { readonly status: 'problem' | 'waiting'; readonly problem: Problem },
  unit: string,
  layout: LineBody['layout'],
): LineBody {
  const sign = result.status === 'problem' ? 'problem' : 'waits';
  return {
    layout,
    value: html`${drawn}${sentence(problemInWords(result.problem, session.notebook, sheet), sign)}`,
    unit,
    told: true,
  };
}

/** What there is to see of a line that has its value. */
function toldOf({ session, sheet }: LineContext, warning: Problem): TemplateResult {
  return sentence(problemInWords(warning, session.notebook, sheet), 'warning');
}

/** That a check does not apply, with the condition that is not met set as mathematics, in lines that fit. */
function inapplicable(
  { room }: LineContext,
  applies: CheckedFormula | undefined,
  { message }: Problem,
): TemplateResult {
  if (!applies?.whole) return html`<p class="sentence idle">${drawSign('idle')}<span>${message}</span></p>`;
  return html`<div class="sentence idle condition">
    ${drawSign('idle')}<span>does not apply, for this is not so:</span>
    ${drawFormula(typesetFormula(applies, Math.min(room.beside, room.below)), 'symbols')}
  </div>`;
}

/** What is wrong, in place of a result, and what would mend it. */
export function sentence(
  { message, hints }: Problem,
  sign: 'problem' | 'waits' | 'warning' | 'idle',
): TemplateResult {
  return html`<p class="sentence ${sign}">
    ${drawSign(sign)}<span>${message}${hints.map((hint) => html`<span class="hint">; ${hint}</span>`)}</span>
  </p>`;
}
