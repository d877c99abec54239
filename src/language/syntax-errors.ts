import type { SyntaxNode } from '@lezer/common';
import { type Problem, problem, type Span } from '../diagnostics/index.ts';
import { findFunction } from './functions/table.ts';

/**
 * Says what is wrong with a formula whose tree has error nodes: known slips first, each in its own words, else the
 * place where reading stopped. At least one problem.
 */
export function diagnose(text: string, top: SyntaxNode): readonly Problem[] {
  const bare = blankTexts(text);
  const slips = [
    ...commasInNumbers(bare),
    ...feetMarks(bare),
    ...feetWords(bare),
    ...inchMark(bare),
    ...foreignOperators(bare),
    ...unclosedText(bare),
    ...parentheses(bare),
    ...sideBySide(bare),
    ...unwrittenProducts(text, top),
    ...strangeCharacters(bare.replaceAll('!=', '<>')),
  ];
  if (slips.length > 0) return slips;
  return [stoppedAt(text, firstError(top))];
}

/** The formula with what stands inside quotation marks blanked out, position for position. */
function blankTexts(text: string): string {
  return text.replace(/"(?:[^"]|"")*"/g, (found) => `"${' '.repeat(found.length - 2)}"`);
}

/** A comma between digits, which may group thousands or separate arguments. */
export function commasInNumbers(text: string): Problem[] {
  if (!text.includes(',')) return [];
  return [...blankTexts(text).matchAll(/(?<![\p{L}\d_'.])\d[\d.]*(?:,\d[\d.]*)+/gu)].map((match) => {
    const [written] = match;
    const from = match.index;
    const to = from + written.length;
    const first = asOneNumber(written);
    const second = written.replaceAll(',', '; ');
    return problem('comma-in-number', { from, to }, { written, first, second }, [
      { label: first, from, to, insert: first },
      { label: second, from, to, insert: second },
    ]);
  });
}

/** What digits with commas are as one number: `1,200` has thousands, `1,5` a decimal comma. */
function asOneNumber(written: string): string {
  const decimal = /^\d+,\d+$/.test(written) && !/^\d{1,3},\d{3}$/.test(written);
  return decimal ? written.replace(',', '.') : written.replaceAll(',', '');
}

function feetMarks(text: string): Problem[] {
  return [
    ...text.matchAll(
      /(?<![\w'.])(\d+(?:\.\d+)?)\s*'(?:\s*-?\s*(?:(\d+(?:\.\d+)?)\s+)?(\d+(?:[./]\d+)?)\s*")?/g,
    ),
  ].map((match) => {
    const [written, feet = '', wholeInches, inches] = match;
    const from = match.index;
    const to = from + written.length;
    const last = inches?.includes('/')
      ? `(${wholeInches ? `${wholeInches} + ` : ''}${inches}) * 1 in`
      : `${inches} in`;
    const insert = inches === undefined ? `${feet} ft` : `(${feet} ft + ${last})`;
    return problem('feet-marks', { from, to }, { written, instead: insert }, [
      { label: insert, from, to, insert },
    ]);
  });
}

/** `5 ft 6 in`, the same in words. */
function feetWords(text: string): Problem[] {
  const pattern = /(?<![\p{L}\d_'.])(\d[\d.]*) *ft\.? *(\d[\d.]*) *in(?![\p{L}\d_'])/gu;
  return [...text.matchAll(pattern)].map((match) => {
    const [written, feet, inches] = match;
    const insert = `(${feet} ft + ${inches} in)`;
    const span = { from: match.index, to: match.index + written.length };
    return problem('feet-marks', span, { written, instead: insert }, [{ label: insert, ...span, insert }]);
  });
}

/** `6"` without feet: a number before a quotation mark that pairs with no other. */
function inchMark(text: string): Problem[] {
  if ((text.match(/"/g)?.length ?? 0) % 2 === 0) return [];
  const match = /(?<![\p{L}\d_'.])(\d[\d.]*)\s*"(?=[^"]*$)/u.exec(text);
  if (!match || feetMarks(text).length > 0) return [];
  const [written, inches] = match;
  const from = match.index;
  const to = from + written.length;
  const insert = `${inches} in`;
  return [
    problem('feet-marks', { from, to }, { written, instead: insert }, [{ label: insert, from, to, insert }]),
  ];
}

/** Operators of other languages. */
const foreign: Readonly<Record<string, string>> = {
  '==': '=',
  '!=': '<>',
  '=<': '<=',
  '=>': '>=',
  '**': '^',
};

function foreignOperators(text: string): Problem[] {
  return [...text.matchAll(/==|!=|=<|(?<!<)=>|\*\*/g)].map((match) => {
    const [written] = match;
    const instead = foreign[written] ?? '';
    const span = { from: match.index, to: match.index + written.length };
    return problem('operator-unknown', span, { written, instead }, [
      { label: instead, ...span, insert: instead },
    ]);
  });
}

function unclosedText(text: string): Problem[] {
  const from = (text.match(/"/g)?.length ?? 0) % 2 === 1 ? text.lastIndexOf('"') : -1;
  if (from < 0 || /\d\s*$/.test(text.slice(0, from))) return [];
  const end = { label: 'close the text', from: text.length, to: text.length, insert: '"' };
  return [problem('text-not-closed', { from, to: text.length }, {}, [end])];
}

function parentheses(text: string): Problem[] {
  const open: number[] = [];
  const problems: Problem[] = [];
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === '(') open.push(at);
    if (text[at] === ')' && open.pop() === undefined)
      problems.push(
        problem('parenthesis-not-opened', { from: at, to: at + 1 }, {}, [
          { label: 'take it out', from: at, to: at + 1, insert: '' },
        ]),
      );
  }
  const [first] = open;
  if (first !== undefined)
    problems.push(
      problem('parenthesis-not-closed', { from: first, to: first + 1 }, { missing: open.length }, [
        { label: 'close it at the end', from: text.length, to: text.length, insert: ')'.repeat(open.length) },
      ]),
    );
  return problems;
}

/** A value, a space, and another value: `b ft`, `2 (a)` aside, which has a unit in the parentheses. */
function sideBySide(text: string): Problem[] {
  const word = "[\\p{L}][\\p{L}\\d_'.]*";
  const pattern = new RegExp(`((?<![\\p{L}\\d_'.])${word}|\\))(\\s+)(${word}|\\d[\\d.]*)`, 'gu');
  const problems: Problem[] = [];
  for (const match of text.matchAll(pattern)) {
    const [, left = '', gap = '', right = ''] = match;
    if (findFunction(left)) continue;
    const from = match.index + left.length + gap.length;
    const to = from + right.length;
    const number = numberBefore(text, match.index, left);
    if (number === undefined) problems.push(problem('side-by-side', { from, to }, { left, right }));
    else if (/\d/.test(right)) continue;
    else {
      const start = match.index - number.length;
      const instead = `${number.trim()} (${left}·${right})`;
      const fix = { label: instead, from: start, to, insert: instead };
      const facts = { written: text.slice(start, to), unit: left, right, instead };
      problems.push(problem('unit-of-two-words', { from, to }, facts, [fix]));
    }
  }
  return problems;
}

/** The number whose unit a word is, with the space between them. */
function numberBefore(text: string, at: number, word: string): string | undefined {
  if (word === ')') return undefined;
  return /(?<![\p{L}\d_'.])\d[\d.]*(?:[eE][+-]?\d+)?\s*$/u.exec(text.slice(0, at))?.[0];
}

/** `2 (a + 1)`, whose parentheses hold no unit. */
function unwrittenProducts(text: string, top: SyntaxNode): Problem[] {
  const problems: Problem[] = [];
  top.cursor().iterate(({ node }) => {
    const [number, group] = [node.firstChild, node.lastChild];
    if (node.name !== 'Quantity' || !number || group?.name !== 'UnitGroup') return;
    const closed = text.slice(group.from, group.to).endsWith(')');
    const odd = /[^\p{L}\p{Sc}\d\s.·*/^()²³°%‰-]/u.test(text.slice(group.from, group.to));
    if (closed && odd) problems.push(unwrittenProduct(text, number, group));
  });
  return problems;
}

/** The problem of a number before parentheses that hold no unit. */
export function unwrittenProduct(text: string, number: Span, group: Span): Problem {
  const instead = `${text.slice(number.from, number.to)} * ${text.slice(group.from, group.to)}`;
  const span = { from: number.from, to: group.to };
  const facts = {
    number: text.slice(number.from, number.to),
    written: text.slice(group.from, group.to),
    instead,
  };
  return problem('unwritten-product', span, facts, [{ label: instead, ...span, insert: instead }]);
}

function strangeCharacters(text: string): Problem[] {
  const known = /[\p{L}\p{Sc}\d\s_'"().,;+\-−*·×/÷^%&=<>≤≥≠√²³°℃℉]/u;
  const problems: Problem[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const written = String.fromCodePoint(text.codePointAt(at) ?? 0);
    if (!known.test(written))
      problems.push(problem('strange-character', { from: at, to: at + written.length }, { written }));
    at += written.length - 1;
  }
  return problems.slice(0, 1);
}

function firstError(top: SyntaxNode): { from: number; to: number } {
  let found: { from: number; to: number } | undefined;
  top.cursor().iterate((node) => {
    if (node.type.isError && !found) found = { from: node.from, to: node.to };
    return !found;
  });
  return found ?? { from: 0, to: top.to };
}

function stoppedAt(text: string, span: { from: number; to: number }): Problem {
  if (text.trim() === '' || text.trim() === '=')
    return problem('formula-empty', { from: 0, to: text.length }, {});
  const rest = text.slice(span.from).trim();
  if (rest === '') {
    const before = text.slice(0, span.from).trim();
    const sign = before.slice(-1);
    return problem('formula-ends-early', { from: span.from, to: text.length }, { after: sign });
  }
  const written = text.slice(span.from, Math.max(span.to, span.from + 1));
  return problem(
    'formula-unexpected',
    { from: span.from, to: Math.max(span.to, span.from + 1) },
    { written },
  );
}
