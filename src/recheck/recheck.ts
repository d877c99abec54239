import { balancesAmong } from './balances.ts';
import { type Compared, compare, keyOf, valuesOf } from './compared.ts';
import { doubtOf, settleDoubts } from './doubts.ts';
import { findingsOf, rowCountFindings } from './findings.ts';
import { lowerBook } from './lower/book.ts';
import type { EngineValues, RecheckProgram } from './program.ts';
import type { RecheckProgress } from './progress.ts';
import type { RecheckReport } from './report.ts';
import { restingOn } from './resting.ts';
import { computeGrid } from './second-engine.ts';

/**
 * Computes a whole book a second time, as plain spreadsheet formulas with HyperFormula, and compares every value with
 * the live engine's. Numbers agree within 1e-9 of themselves, or what is left of a balance within 1e-12 of the sum of
 * the magnitudes; a value the engine does not have must be an error on the grid. A formula that cannot be lowered is
 * named with the reason, and the engine's value stands in for it where others depend on it. `onProgress` hears of each stage,
 * and of each sheet whose values are compared.
 */
export async function recheck(
  program: RecheckProgram,
  values: EngineValues,
  onProgress: (progress: RecheckProgress) => void = () => {},
): Promise<RecheckReport> {
  onProgress({ stage: 'translating' });
  const book = lowerBook(program, values);
  onProgress({ stage: 'computing' });
  const computed = await computeGrid(book.grid);
  try {
    const doubts = settleDoubts(book, computed, values);
    const apart: Compared[] = [];
    const differing: Compared[] = [];
    let entries = 0;
    const counts = { agree: 0, 'without value': 0 };
    const sheets = [...new Set(Array.from(valuesOf(book), sheetOf))];
    let sheet: string | undefined;
    for (const value of valuesOf(book)) {
      if (sheetOf(value) !== sheet) {
        sheet = sheetOf(value);
        onProgress({ stage: 'comparing', sheet, done: sheets.indexOf(sheet), of: sheets.length });
      }
      if (doubts.has(keyOf(value))) continue;
      const verdict = compare(value, book, computed, values);
      if (verdict === 'agree' && book.places.get(value.id)?.cell.kind !== 'formula') entries += 1;
      if (verdict === 'apart') apart.push(value);
      else if (verdict === 'differ') differing.push(value);
      else counts[verdict] += 1;
    }
    const balanced = await balancesAmong(apart, program, book, computed, values);
    const wrong = [...differing, ...apart.filter((value) => !balanced.has(value))];
    return {
      agree: counts.agree + balanced.size,
      entries,
      withoutValue: counts['without value'],
      findings: [...findingsOf(wrong, book, computed, values), ...rowCountFindings(program, book, computed)],
      indeterminate: Array.from(doubts.values(), doubtOf),
      notRechecked: Array.from(book.borrowed, ([id, reason]) => ({
        id,
        reason,
        values: book.places.get(id)?.count ?? 1,
      })),
      resting: restingOn(book.borrowed.keys(), program),
    };
  } finally {
    computed.close();
  }
}

const sheetOf = ({ id }: Compared): string => id.slice(0, id.indexOf('.'));
