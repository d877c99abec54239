import type { Sheet } from '../../../document/index.ts';
import { nameWidth } from '../../../record/index.ts';
import type { LineSource, Room } from '../line/line-source.ts';

/** The type size of formulas in px, unless the page is narrow. */
export const MATHS_SIZE = 17;

/** About how wide a letter of a description is, in px. */
export const LETTER = 7.1;

/** The width in px that a page is set in for print; the styles then fit it to the paper: 15 px of it are 8.2 pt there. */
export const PRINT_WIDTH = 960;

/** The type size in px of formulas on paper. */
const PRINTED_MATHS = 15;

/** The type sizes in px on paper of the numbers put in and of notes, which are 7.5 pt there. */
export const [PRINTED_NUMBERS, PRINTED_NOTES] = [13.6, 13.6];

/** Lines stand in two columns on paper, so far apart in px. */
export const PRINTED_GAP = 28;

/** The width in px of a column of lines on paper. */
const PRINTED_COLUMN = (PRINT_WIDTH - PRINTED_GAP) / 2;

/** The symbols of a printed line have this at most; a longer one moves the description beside it. */
const PRINTED_SYMBOL = 62;

/** The widths of the page's columns in px, the same on every line of it. */
export interface Tracks {
  readonly reference: number;
  readonly symbol: number;
  readonly label: number;
  readonly calculation: number;
  readonly equals: number;
  readonly number: number;
  readonly unit: number;
  readonly mark: number;
  /** The type size of formulas: on a narrow page smaller, which leaves the lines fewer breaks and some air. */
  readonly maths: number;
  /** Whether the page is too narrow for a line's parts to stand side by side, so that they stand below one another. */
  readonly stacked: boolean;
}

/** The least a description and a calculation take, in px. */
const [LEAST_LABEL, LEAST_CALCULATION] = [140, 100];

/** The columns of a page of some width, for symbols and descriptions of some width. */
export function tracksFor(width: number, symbol: number, described: number): Tracks {
  const reference = width >= 1000 ? 158 : width >= 860 ? 132 : width >= 700 ? 108 : 88;
  const [equals, number, unit, mark] = [24, width >= 760 ? 100 : 88, 64, 34];
  const rest = width - reference - symbol - equals - number - unit - mark;
  if (rest < LEAST_LABEL + LEAST_CALCULATION) return stackedTracks(width, symbol);
  const label = Math.round(Math.max(Math.min(described, rest * 0.52, 280), LEAST_LABEL));
  const maths = width >= 760 ? MATHS_SIZE : 15;
  const calculation = rest - label;
  return { reference, symbol, label, calculation, equals, number, unit, mark, maths, stacked: false };
}

/** Of the margin a narrow page keeps this, for the marks of what flows where. */
const STACKED_MARGIN = 12;

/** Symbols of a narrow page have this at most; a longer one reaches over the margin. */
const STACKED_SYMBOL = 92;

/** The columns of a page on which description, value and reference stand below one another. */
function stackedTracks(width: number, symbolWanted: number): Tracks {
  const symbol = Math.min(symbolWanted, STACKED_SYMBOL);
  const [equals, number, unit, mark] = [20, 88, 58, 34];
  const rest = width - STACKED_MARGIN - symbol - equals - number - unit - mark;
  const label = Math.max(Math.round(rest / 2), 0);
  const calculation = Math.max(rest - label, 0);
  return {
    reference: STACKED_MARGIN,
    symbol,
    label,
    calculation,
    equals,
    number,
    unit,
    mark,
    maths: 15,
    stacked: true,
  };
}

/**
 * The columns, the width of the page in px without its unit, and the least it may have, as custom properties for the styles
 * of the page.
 */
export function pageStyle(tracks: Tracks, page: number): string {
  const { reference, symbol, label, equals, number, unit, mark, maths } = tracks;
  const template =
    `[reference] ${reference}px [symbol] ${symbol}px [label] ${label}px [calculation] minmax(0, 1fr) ` +
    `[equals] ${equals}px [number] ${number}px [unit] ${unit}px [mark] ${mark}px [end]`;
  const widths = { margin: reference, equals, number, unit, 'maths-size': maths };
  const properties = Object.entries(widths).map(([name, width]) => `--${name}: ${width}px`);
  const least = reference + symbol + equals + number + unit + mark;
  return [`--tracks: ${template}`, `--page: ${page}`, `--least: ${least}px`, ...properties].join('; ');
}

/** How much formula fits beside and below the descriptions on the screen. */
export function roomFor({ label, calculation, equals, number, unit, maths, stacked }: Tracks): Room {
  const [beside, below] = stacked
    ? [label + calculation, label + calculation + equals + number + unit]
    : [calculation, label + calculation];
  return {
    numbers: 1,
    beside: (0.92 * (beside - 14)) / maths,
    below: (0.94 * (below - 14)) / maths,
    // Stacked, the result is not in the way of a formula below, and the words of a choice have a line of their own.
    result: stacked ? 0 : (0.92 * (equals + number)) / maths,
    across: stacked ? 0 : label + calculation + equals + number,
  };
}

/** The width in px that the symbols of a sheet take on paper. */
export function printedSymbol(sheet: Sheet): number {
  return Math.min(symbolWidth(sheet), PRINTED_SYMBOL);
}

/** The room of a line on paper, whose formula stands below its description and its result, for symbols of some width. */
export function roomOnPaper(symbol: number): Room {
  const below = PRINTED_COLUMN - symbol;
  const set = (0.96 * (below - 18)) / PRINTED_MATHS;
  return { numbers: PRINTED_MATHS / PRINTED_NUMBERS, beside: set, below: set, result: 0, across: below };
}

/** The width of a printed page, of its symbols and of the type of its formulas, as custom properties of its styles. */
export function printedPageStyle(symbol: number): string {
  return `--page: ${PRINT_WIDTH}; --margin: 0px; --symbol: ${symbol}px; --maths-size: ${PRINTED_MATHS}px`;
}

/** The width of a sheet's symbols column in px: wide enough for all of its names up to a length no symbol has. */
export function symbolWidth(sheet: Sheet): number {
  const widths = linesOf(sheet).map(({ name }) => nameWidth(name) * MATHS_SIZE + 22);
  return Math.round(Math.min(Math.max(...widths, 52), 140));
}

/** The width in px that keeps four descriptions in five of a sheet's calculated lines on one line each. */
export function describedWidth(sheet: Sheet): number {
  const widths = linesOf(sheet)
    .flatMap(({ kind, label = '' }) => (kind === 'given' ? [] : [label.length * LETTER + 12]))
    .sort((a, b) => a - b);
  return widths[Math.floor(widths.length * 0.8)] ?? 0;
}

/** The lines of a sheet: rows of its blocks, and the columns of its tables that are explained by a formula. */
function linesOf(sheet: Sheet): readonly LineSource[] {
  return sheet.parts.flatMap((part): readonly LineSource[] => {
    if (part.kind === 'rows') return part.rows;
    return part.kind === 'table'
      ? part.columns.flatMap((column) => (column.kind === 'given' ? [] : [column]))
      : [];
  });
}
