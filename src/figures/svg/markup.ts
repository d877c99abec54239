/** Attributes of an element; what is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text made safe for markup; characters that XML forbids are dropped. */
export function escapeMarkup(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no way to write them
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  );
}

/** A coordinate with at most two decimals; what is no finite number is 0, so that markup is always sound. */
export function coordinate(x: number): string {
  if (!Number.isFinite(x)) return '0';
  const text = (Math.round(x * 100) / 100).toString();
  return text === '-0' ? '0' : text;
}

/** An element with its attributes escaped and its numbers rounded; children are markup already. */
export function tag(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) =>
        ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeMarkup(String(value))}"`,
    )
    .join('');
  const inside = children.join('');
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
}
