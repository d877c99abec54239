import type { UnitRegistry } from '../units/index.ts';
import type { TableColumn } from './column.ts';
import { ordinarySigns } from './full-width.ts';
import { headerColumn } from './headers.ts';
import { statedUnit } from './stated-unit.ts';

/**
 * What the commas of a text do: they stand within numbers, one in each line; they part cells; or either, as far as
 * anyone can tell.
 */
type Commas = 'within' | 'between' | 'either';

/** Signs and words in front of a number: a minus, money, about. */
const FRONT =
  /^[\s(]*(?:(?:ca|approx|appr|abt|about|circa|rund|etwa|env)\.?\s+|ca\.|[~≈<>≤≥±]\s*)?[+\-−–]?\s*(?:[$€£¥]|\p{Lu}{3}\s)?\s*[+\-−–]?\s*/iu;

/** Digits with commas in them that can be one number, whatever parts its thousands. */
const DIGITS: readonly RegExp[] = [
  /^\d{1,3}(?:[ '’´`\u00a0\u2007\u2009\u202f]\d{3})+(?:[.,]\d*)?(?![\d.,])/u,
  /^\d{1,3}(?:,\d{3})+(?:\.\d*)?(?![\d.,])/,
  /^\d{1,3}(?:,\d{2})*,\d{3}(?:\.\d*)?(?![\d.,])/,
  /^\d{1,3}(?:\.\d{3})+(?:,\d*)?(?![\d.,])/,
  /^\d*,\d+(?![\d.,])/,
  /^\d+,(?=-)/,
  /^\d+(?:\.\d*)?(?![\d.,])/,
];

/** What may stand behind a number beside its unit: a power of ten, a minus, no pennies, a bracket. */
const BEHIND = /^(?:[eE][+\-−]?\d+)?(?:\s*[-–—−]{1,2})?\s*\)?\s*/u;

/** A number whose signs tell by themselves that it is one: those between thousands and decimals differ. */
const TELLS = /\d,\d{3}\.\d|\d\.\d{3},\d|\d\.(?:\d{1,2}|\d{4,})(?!\d)/;

/** Numbers parted by commas that could each stand in a cell of their own. */
const BARE = /^[+\-−]?[\d.]+(?:,[\d.]+)+$/;

/**
 * What commas do in a text without other separators. Where each line with a comma can be read as one number with its
 * unit, a line is one cell: commas that part cells stand in the line that names these, too. Bare numbers under no name
 * can be read either way.
 */
export function commasIn(text: string, columns: readonly TableColumn[], registry: UnitRegistry): Commas {
  if (!text.includes(',') || /[\t;|]/.test(text)) return 'between';
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const first = lines.findIndex((line) => isOneNumber(line, registry));
  if (first < 0) return 'between';
  for (let at = first; at < lines.length; at += 1) {
    const line = lines[at] ?? '';
    if (line.includes(',') && !isOneNumber(line, registry)) return 'between';
  }
  const heads = lines.slice(0, first);
  const heading = heads.at(-1);
  if (heads.some((head) => namesSeveral(head, columns, registry))) return 'between';
  const isNamed = heads.some((head) => headerColumn(head, columns, registry) !== undefined);
  if (!lines.some((line, at) => at >= first && line.includes(','))) return isNamed ? 'within' : 'between';
  if (heading?.includes(',')) {
    if (isNamed) return 'within';
    if (!endsInUnit(heading, registry)) return 'between';
  }
  const parted = heading === undefined ? lines : lines.slice(first - 1);
  const width = parted[0]?.split(',').length ?? 1;
  const numbers = lines.slice(first).map((line) => line.trim());
  const isEven = parted.every((line) => line.split(',').length === width);
  const isEither =
    isEven && numbers.every((line) => BARE.test(line)) && !numbers.some((line) => TELLS.test(line));
  return isEither ? 'either' : 'within';
}

/** Whether a line is one number, with what people write around one: a sign, money, a unit. */
function isOneNumber(line: string, registry: UnitRegistry): boolean {
  const rest = ordinarySigns(line).trim().replace(FRONT, '');
  if (!/^[\d,]/.test(rest)) return false;
  return DIGITS.some((pattern) => {
    const [digits] = pattern.exec(rest) ?? [];
    if (digits === undefined) return false;
    const unit = rest.slice(digits.length).replace(BEHIND, '').trim();
    return isUnit(unit, registry);
  });
}

/** Whether what stands behind a number can be its unit; one word that is none may be one that is not known. */
function isUnit(text: string, registry: UnitRegistry): boolean {
  if (/^(?:[^\s,\d][^\s,]{0,11})?$/u.test(text)) return true;
  if (text.includes(',')) return false;
  const { unit, choices } = statedUnit(text, registry);
  return unit !== undefined || choices.length > 0;
}

function namesSeveral(head: string, columns: readonly TableColumn[], registry: UnitRegistry): boolean {
  return head.split(',').filter((cell) => headerColumn(cell, columns, registry) !== undefined).length > 1;
}

/** Whether a unit stands behind the last comma of a heading. */
function endsInUnit(heading: string, registry: UnitRegistry): boolean {
  const { unit, choices } = statedUnit(heading.slice(heading.lastIndexOf(',') + 1), registry);
  return unit !== undefined || choices.length > 0;
}
