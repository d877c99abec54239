import { nearest } from '../diagnostics/index.ts';
import { looksGreek, spelledOut } from './greek.ts';

/** A name that may be meant by one that is not there. */
export interface NameCandidate {
  readonly name: string;
  /** The sheet that stands in front of it, if it is another one than that of the formula. */
  readonly sheet?: string;
  /** Whether it is of the kind that is wanted. */
  readonly fits: boolean;
}

/**
 * The names that may be meant by one that is not there, best first: the very name on another sheet; its Greek letters
 * spelled out (`gamma_i` for γ_i) or written in Latin ones (`g_i`); begun with it (`f_m` for f_max), a letter alone with
 * the name of a Greek one; then what looks like a slip for it. Among those begun with it and the slips, what is of the
 * wanted kind comes first, then what is of the own sheet.
 */
export function nearNames(written: string, candidates: readonly NameCandidate[], most = 3): string[] {
  const slips = nearest(
    written,
    candidates.map(({ name }) => name),
    12,
  );
  const scored = candidates.flatMap((candidate) => {
    const grade = gradeOf(written, candidate);
    const slip = slips.indexOf(candidate.name);
    if (grade === undefined && slip === -1) return [];
    return [{ ...candidate, grade: grade ?? GRADES.length, slip: slip === -1 ? slips.length : slip }];
  });
  const order = scored.sort(
    (a, b) =>
      a.grade - b.grade ||
      Number(b.fits) - Number(a.fits) ||
      Number(a.sheet !== undefined) - Number(b.sheet !== undefined) ||
      a.slip - b.slip,
  );
  return [...new Set(order.map(({ name }) => name))].slice(0, most);
}

/** How a name that is not there may stand for one that is, best first; `bare` is without the sheet in front. */
const GRADES: readonly ((written: string, bare: string) => boolean)[] = [
  (written, bare) => written === bare,
  (written, bare) => spelledOut(written) === spelledOut(bare),
  (written, bare) =>
    spelledOut(written).toLowerCase() === spelledOut(bare).toLowerCase() && bare !== spelledOut(bare),
  looksGreek,
  isBegun,
];

function gradeOf(written: string, { name, sheet }: NameCandidate): number | undefined {
  const bares = sheet === undefined ? [name] : [name, name.slice(sheet.length + 1)];
  const grade = GRADES.findIndex((holds) => bares.some((bare) => holds(written, bare)));
  return grade === -1 ? undefined : grade;
}

/** Whether a name is written as far as this; a letter alone begins too many but for a Greek one by its name. */
function isBegun(written: string, bare: string): boolean {
  const spelled = spelledOut(bare);
  return spelled.startsWith(written) && (written.length > 1 || !bare.startsWith(written));
}
