/** Whether a pasted text is one line of one cell; line ends at its own ends, as programs put there, make no other. */
export function isOneLine(text: string): boolean {
  return !/[\t\r\n]/.test(withoutEnds(text));
}

/** Puts a pasted line into the field of one line it is pasted into, without line ends that the field would have as spaces. */
export function insertOneLine(event: ClipboardEvent, text: string): void {
  const [field] = event.composedPath();
  const line = withoutEnds(text);
  if (line === text || !(field instanceof HTMLInputElement)) return;
  event.preventDefault();
  const { value, selectionStart, selectionEnd } = field;
  field.setRangeText(line, selectionStart ?? value.length, selectionEnd ?? value.length, 'end');
  field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
}

function withoutEnds(text: string): string {
  return text.replace(/^[\r\n]+|[\r\n]+$/g, '');
}
