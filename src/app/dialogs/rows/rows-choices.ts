import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Decimal, Delimiter } from '../../../tables/index.ts';

/** Answers to a question, each with the words that the person chooses it by. */
export type Answers<Answer extends string> = readonly (readonly [Answer, string])[];

/** What may part the cells of a line without tabs. */
export const delimiterWords: Answers<Delimiter> = [
  [',', 'commas'],
  [';', 'semicolons'],
  ['|', 'vertical bars'],
  ['  ', 'two or more spaces'],
  ['\t', 'nothing: a line is one cell'],
];

/** What may stand in front of decimals. */
export const decimalWords: Answers<Decimal> = [
  ['point', 'a point, as in 1,234.5'],
  ['comma', 'a comma, as in 1.234,5'],
];

/** What may become of rows that are no items of the table. */
export const rowsOutWords: Answers<'out' | 'in'> = [
  ['out', 'left out'],
  ['in', 'rows like the others'],
];

/** A question of which one answer is chosen; where there is but one, it can be given and taken back. */
export function choiceOf<Answer extends string>(
  question: string,
  answers: Answers<Answer>,
  chosen: Answer | undefined,
  choose: (answer: Answer) => void,
  takeBack?: () => void,
): TemplateResult {
  return html`<fieldset class="choices">
    <legend>${question}</legend>
    ${answers.map(
      ([answer, words]) => html`<label>
        <input
          type=${takeBack && answers.length === 1 ? 'checkbox' : 'radio'}
          name=${question}
          .checked=${live(chosen === answer)}
          @change=${({ target }: Event) => {
            if ((target as HTMLInputElement).checked) choose(answer);
            else takeBack?.();
          }}
        />${words}
      </label>`,
    )}
  </fieldset>`;
}
