import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import type { Option } from '../../../document/index.ts';

/** An option as a line of text: `value = words`. */
export function optionText({ value, label }: Option): string {
  return label === undefined || label === '' ? value : `${value} = ${label}`;
}

/**
 * The options of a choice from a text, one a line: a value, and after `=` between blanks or after a tab the words for
 * it. Every line that has anything in it is an option, or the whole is refused for it: words without a value, more than
 * two cells, a value that stands there already.
 */
export function optionsFrom(text: string): Outcome<readonly Option[]> {
  const options: Option[] = [];
  for (const [at, line] of text.split(/\r\n?|\n/).entries()) {
    if (line.trim() === '') continue;
    const [value = '', label = '', ...more] = cellsOf(line);
    const refuse = (because: string) =>
      fail(problem('option-unread', { from: 0, to: 0 }, { line: at + 1, written: line.trim(), because }));
    if (value === '') return refuse('has words and no value');
    if (more.length > 0) return refuse(`has ${more.length + 2} cells`);
    if (options.some((one) => one.value === value)) return refuse('has a value that stands there already');
    options.push(label === '' ? { value } : { value, label });
  }
  return succeed(options);
}

/** The cells of a line: between tabs, else on both sides of the first `=` that stands between blanks or at an end. */
function cellsOf(line: string): readonly string[] {
  if (line.includes('\t')) return line.split('\t').map((cell) => cell.trim());
  const sign = /(?:^|\s)=(?:\s|$)/.exec(line);
  if (!sign) return [line.trim()];
  return [line.slice(0, sign.index).trim(), line.slice(sign.index + sign[0].length).trim()];
}
