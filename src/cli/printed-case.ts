import type { CaseReport, Judgement } from '../review/index.ts';

/** A case as `--json` lists it: its source, its inputs, and each value expected with what was obtained. */
export function printedCase({ id, title, kind, source, inputs, agrees, refused, judgements }: CaseReport) {
  const values = judgements.flatMap(printedValues);
  return { id, title, kind, source, inputs, agrees, ...(refused !== undefined && { refused }), values };
}

/** The comparisons of one expected result; one that could not be found says why. */
function printedValues({ name, row, reason, agrees, words, comparisons }: Judgement): readonly object[] {
  const place = { name, ...(row !== undefined && { row }) };
  if (comparisons.length === 0) return [{ ...place, agrees, because: words }];
  return comparisons.map((one) => ({
    ...place,
    expected: one.expected,
    obtained: one.obtained ?? null,
    ...differenceIn(one),
    ...(one.unit !== undefined && { unit: one.unit }),
    ...(one.tolerance !== undefined && { tolerance: one.tolerance }),
    ...(one.mustDiffer && { must_differ: true }),
    ...(reason !== undefined && { reason }),
    agrees: one.agrees,
  }));
}

/** How far the value obtained is above the one expected, where both are numbers, in their unit. */
function differenceIn({ expected, obtained }: Judgement['comparisons'][number]) {
  if (typeof expected !== 'number' || typeof obtained !== 'number') return {};
  return { difference: obtained - expected };
}
