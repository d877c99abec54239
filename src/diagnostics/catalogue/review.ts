import { entry } from './entry.ts';
import { quoted } from './wording.ts';

/** Problems of what the checker enters. */
export const review = {
  'hand-value-kind': entry<{ written: string; wanted: string }>({
    title: 'A hand value of another kind than the result',
    explain:
      'A hand value is compared with the result it is of, so it is of the same dimension, in any unit of it. A number alone is in the unit that the result is shown in.',
    words: ({ written, wanted }) => ({
      message: `${quoted(written)} cannot be compared with the result, which is ${wanted}`,
      hint: 'write the hand value with its unit',
    }),
  }),
  'hand-value-of-verdict': entry<{ written: string }>({
    title: 'A hand value of a check without a utilisation',
    explain:
      'The hand value of a check is its utilisation, demand over capacity. A check that only holds or fails, or whose capacity is not above zero, is compared in words.',
    words: ({ written }) => ({
      message: `${quoted(written)} cannot be compared: the check has no utilisation`,
      hint: 'write “holds” or “fails”',
    }),
  }),
  'hand-tolerance-unfit': entry<{ written: string; unit: string }>({
    title: 'A tolerance that is none of the result',
    explain:
      'A hand value may be apart from the result by a share of it, as 1 %, or by a quantity of the same kind as the result. It is not below zero.',
    words: ({ written, unit }) => ({
      message: `${quoted(written)} is no tolerance for this result`,
      hint: `write a share up to 25 %, as 1 %${unit === '' ? '' : `, or a quantity in ${unit} or another unit of its kind`}`,
    }),
  }),
  'signed-without-reason': entry<{ open: readonly string[] }>({
    title: 'A signature while something is open',
    explain:
      'A book with problems, checks that fail, differences, stale hand values, open comments or stated values without a reason is signed only with a reason in writing, which stays beside the signature.',
    words: ({ open }) => ({
      message: `before it is signed: ${open.join(', ')}`,
      hint: 'settle these, or write why it is signed all the same',
    }),
  }),
};
