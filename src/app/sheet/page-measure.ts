import type { Sheet } from '../../document/index.ts';
import type { Room } from './line-source.ts';

/** The type size of formulas, in px; the styles have the same. */
const MATHS_SIZE = 17;

/** The width in px that a page is set in for print; the styles then fit it to the paper. */
export const PRINT_WIDTH = 820;

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
}

/** The columns of a page of some width, for symbols of some width. */
export function tracksFor(width: number, symbol: number): Tracks {
  const reference = width >= 1000 ? 158 : width >= 860 ? 132 : width >= 700 ? 108 : 88;
  const [equals, number, unit, mark] = [24, width >= 760 ? 100 : 88, width >= 760 ? 64 : 54, 34];
  const rest = width - reference - symbol - equals - number - unit - mark;
  const label = Math.round(Math.min(Math.max(rest * 0.44, 140), 280));
  return { reference, symbol, label, calculation: Math.max(rest - label, 100), equals, number, unit, mark };
}

/** The columns, and the width of the page in px without its unit, as custom properties for the styles of the page. */
export function pageStyle(tracks: Tracks, page: number): string {
  const { reference, symbol, label, equals, number, unit, mark } = tracks;
  const template =
    `[reference] ${reference}px [symbol] ${symbol}px [label] ${label}px [calculation] minmax(0, 1fr) ` +
    `[equals] ${equals}px [number] ${number}px [unit] ${unit}px [mark] ${mark}px [end]`;
  const widths = { margin: reference, equals, number, unit };
  const properties = Object.entries(widths).map(([name, width]) => `--${name}: ${width}px`);
  return [`--tracks: ${template}`, `--page: ${page}`, ...properties].join('; ');
}

/** How much formula fits beside and below the descriptions. */
export function roomFor({ label, calculation }: Tracks): Room {
  return {
    beside: (0.86 * (calculation - 14)) / MATHS_SIZE,
    below: (0.9 * (label + calculation - 20)) / MATHS_SIZE,
  };
}

/** The width of a sheet's symbols column in px: wide enough for nearly all of its names. */
export function symbolWidth(sheet: Sheet): number {
  const widths = sheet.parts
    .flatMap((part) => (part.kind === 'rows' ? part.rows : []))
    .map(({ name }) => {
      const [head = '', ...below] = name.split('_');
      return head.length * 9.5 + below.join(',').length * 7 + 22;
    })
    .sort((a, b) => a - b);
  const most = widths[Math.floor(widths.length * 0.97)] ?? 0;
  return Math.round(Math.min(Math.max(most, 52), 118));
}
