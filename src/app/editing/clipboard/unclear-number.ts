import { type Problem, problem } from '../../../diagnostics/index.ts';

/** What is wrong with a number from elsewhere that stands alone and can be read two ways, as `1,250`; undefined if it cannot. */
export function unclearNumber(text: string): Problem | undefined {
  const [, whole = '', sign, decimals = ''] =
    /^([-+−]?[1-9]\d{0,2})([.,])(\d{3})(?=$|\s*[^\d.,\s])/.exec(text.trim()) ?? [];
  if (sign === undefined) return undefined;
  const facts = { text: text.trim(), point: `${whole}.${decimals}`, comma: `${whole}${decimals}` };
  return problem('paste-number-unclear', { from: 0, to: 0 }, facts);
}
