import { html, nothing, type TemplateResult } from 'lit';
import { lineNumbers } from '../../../tables/index.ts';
import { writeNumber } from '../../../units/index.ts';
import { isLongText } from '../../editing/clipboard/long-text.ts';

/** So much of a long text is shown. */
const BEGINNING = 2000;

/**
 * The field for a text of rows. Of a long one it shows the beginning, which cannot be changed in it: a text that is
 * pasted there takes its place, and so does none.
 */
export function rowsTextField(
  text: string,
  rows: number,
  change: (text: string, isPasted: boolean) => void,
): TemplateResult {
  const isLong = isLongText(text);
  return html`<label class="field"
      >${isLong ? `Rows: the beginning of a text of ${writeNumber(text.length)} characters; paste another in its place` : 'Rows'}
      <textarea
        rows=${rows}
        autofocus
        ?readonly=${isLong}
        .value=${isLong ? beginningOf(text) : text}
        @input=${(event: Event) => change((event.target as HTMLTextAreaElement).value, isPaste(event))}
        @paste=${(event: ClipboardEvent) => {
          const whole = withPasted(event);
          if (whole === undefined) return;
          event.preventDefault();
          change(whole, true);
        }}
      ></textarea>
    </label>
    ${
      isLong
        ? html`<button type="button" class="add" @click=${() => change('', false)}>Let go of this text</button>`
        : nothing
    }`;
}

/** The field for the lines of a text that are left out one by one. */
export function skippedField(skipped: string, change: (lines: string) => void): TemplateResult {
  const isRead = skipped.trim() === '' || lineNumbers(skipped) !== undefined;
  return html`<label class="field">
    Lines of the text to leave out
    <input
      class="short"
      autocomplete="off"
      placeholder="1-3, 14"
      aria-invalid=${isRead ? nothing : 'true'}
      .value=${skipped}
      @input=${({ target }: Event) => change((target as HTMLInputElement).value)}
    />
  </label>`;
}

/** Whether an event put in something that was copied or dragged there. */
function isPaste(event: Event): boolean {
  return event instanceof InputEvent && /^insertFrom(?:Paste|Drop)/.test(event.inputType);
}

/** The first lines, or of a very long first line its beginning. */
function beginningOf(text: string): string {
  const cut = text.slice(0, BEGINNING);
  const end = cut.lastIndexOf('\n');
  return `${end < 0 ? cut : cut.slice(0, end)}\n…`;
}

/** The text that there is with what is pasted; undefined where the field itself can take that in. */
function withPasted({ target, clipboardData }: ClipboardEvent): string | undefined {
  const { readOnly, value, selectionStart, selectionEnd } = target as HTMLTextAreaElement;
  const pasted = clipboardData?.getData('text/plain') ?? '';
  if (readOnly) return pasted === '' ? undefined : pasted;
  const whole = value.slice(0, selectionStart) + pasted + value.slice(selectionEnd);
  return isLongText(whole) ? whole : undefined;
}
