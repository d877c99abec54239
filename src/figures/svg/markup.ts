import { type Attributes, type Content, type ElementName, element, type Markup } from '../../markup/index.ts';

/** A coordinate with at most two decimals; what is no finite number is 0, so that a drawing is always sound. */
export function coordinate(x: number): string {
  if (!Number.isFinite(x)) return '0';
  const text = (Math.round(x * 100) / 100).toString();
  return text === '-0' ? '0' : text;
}

/** An element of a drawing, its numbers rounded as coordinates are. */
export function tag(name: ElementName, attributes: Attributes, ...content: readonly Content[]): Markup {
  const rounded = Object.entries(attributes).map(([key, value]) => [
    key,
    typeof value === 'number' ? coordinate(value) : value,
  ]);
  return element(name, Object.fromEntries(rounded) as Attributes, ...content);
}
