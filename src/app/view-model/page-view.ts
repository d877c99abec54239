import type { UnitsView } from '../../record/index.ts';
import type { CellPlace } from './place.ts';

/** The pages of a book that are no sheets, and the lists on the overview. */
export type OverviewPart =
  | 'checks'
  | 'problems'
  | 'remarks'
  | 'stated'
  | 'links'
  | 'about'
  | 'sources'
  | 'origin'
  | 'checking'
  | 'signing'
  | 'steps'
  | 'recheck';

/** What the pages that are no sheets are called, and the lists on one of them. */
export const overviewTitles: Readonly<Record<OverviewPart, string>> = {
  checks: 'All checks',
  problems: 'Problems',
  remarks: 'Remarks',
  stated: 'Stated values',
  links: 'Linked values',
  about: 'Purpose, limits and cautions',
  sources: 'Sources',
  origin: 'Origin',
  checking: 'Checked by hand',
  signing: 'Signatures and revisions',
  steps: 'Step by step',
  recheck: 'Computed twice',
};

/**
 * What is shown of a book: a sheet by its key, or the page in front of it, the place chosen there (of the page that goes
 * step by step, whose steps these are), and the units.
 */
export interface PageView {
  readonly sheet: string;
  readonly overview?: OverviewPart;
  readonly place?: CellPlace;
  readonly units?: UnitsView;
}

/** What is shown, from a text in which it was stored; undefined where it is none. */
export function readPageView(text: string): PageView | undefined {
  const read: unknown = JSON.parse(text);
  if (!isRecord(read) || typeof read.sheet !== 'string') return undefined;
  const { sheet, overview, place, units } = read;
  const isPart = typeof overview === 'string' && Object.hasOwn(overviewTitles, overview);
  const isPlace =
    isRecord(place) && ['sheet', 'part', 'item', 'field'].every((key) => typeof place[key] === 'string');
  return {
    sheet,
    ...(isPart && { overview: overview as OverviewPart }),
    ...(isPlace && { place: place as unknown as CellPlace }),
    ...((units === 'SI' || units === 'US') && { units }),
  };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
