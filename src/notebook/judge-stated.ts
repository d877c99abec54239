import { nearest, type Problem, problem } from '../diagnostics/index.ts';
import { foldedOption } from '../document/index.ts';
import type { UnitRegistry } from '../units/index.ts';
import { signCheck } from './excluded-sign.ts';
import { type KnownTexts, knownTexts, type TextsOf } from './known-texts.ts';
import type { Item } from './model.ts';
import { asCapacity, type Stated, sidesOf } from './stated.ts';

/** A line or column with what its stated values are worth in the book: a text that chooses methods is one of those known. */
export function withStatedJudged(
  item: Item,
  items: ReadonlyMap<string, Item>,
  textsOf: TextsOf,
  registry: UnitRegistry,
): Item {
  if (item.kind === 'formula' && item.stated)
    return { ...item, stated: judgeStated(item.stated, item, items, textsOf, registry) };
  if (item.kind !== 'formula column' || !item.cells) return item;
  const judge = judgeOf(item, items, textsOf, registry);
  return { ...item, cells: new Map([...item.cells].map(([row, stated]) => [row, judge(stated)])) };
}

/** One value stated for a line or for a cell of a column, with what is wrong with it in the book. */
export function judgeStated(
  stated: Stated,
  item: Item,
  items: ReadonlyMap<string, Item>,
  textsOf: TextsOf,
  registry: UnitRegistry,
): Stated {
  return judgeOf(item, items, textsOf, registry)(stated);
}

function judgeOf(
  item: Item,
  items: ReadonlyMap<string, Item>,
  textsOf: TextsOf,
  registry: UnitRegistry,
): (stated: Stated) => Stated {
  const known = item.type.kind === 'text' ? knownTexts(item.id, items, textsOf) : undefined;
  const check = item.kind === 'formula' ? checkHeldAgainst(item.id, items) : undefined;
  return (stated) => {
    const found = known && unknownText(stated, known);
    if (found) return { ...stated, problems: [found, ...stated.problems] };
    const sign = statedSign(stated, item, registry);
    if (sign) return { statement: stated.statement, problems: [sign, ...stated.problems] };
    return check === undefined ? stated : asCapacity(stated, check);
  };
}

/** What is wrong with the sign of a stated value by the permitted range of its line or column. */
function statedSign({ entry }: Stated, item: Item, registry: UnitRegistry): Problem | undefined {
  if (entry?.kind !== 'number' || (item.kind !== 'formula' && item.kind !== 'formula column'))
    return undefined;
  const own = item.kind === 'formula' ? item.row : item.column;
  if (own.kind !== 'calc') return undefined;
  const link = 'link' in own && own.link?.kind === 'given' ? own.link.range : undefined;
  for (const range of [own.range, link]) {
    const found = signCheck(range, item.unit ?? entry.unit, registry, own.note)?.(entry.si);
    if (found) return found;
  }
  return undefined;
}

/** A check whose capacity is a line as it stands, or a line that takes its value from it; undefined where there is none. */
function checkHeldAgainst(id: string, items: ReadonlyMap<string, Item>): string | undefined {
  for (const item of items.values()) {
    if (item.kind !== 'formula' || item.row.kind !== 'check' || item.row.stated?.capacity) continue;
    const seen = new Set<string>();
    let capacity = sidesOf(item.checked.typed)[1];
    while (capacity?.kind === 'cell' && !seen.has(capacity.id)) {
      if (capacity.id === id) return item.row.name;
      seen.add(capacity.id);
      const source = items.get(capacity.id);
      // What is stated itself takes its value from nowhere.
      capacity = source?.kind === 'formula' && !source.stated ? source.checked.typed : undefined;
    }
  }
  return undefined;
}

/**
 * A text that no method is for and that the formula never comes to would be computed by the method for all others,
 * unseen. Where the formula could come to anything, that is only pointed out.
 */
function unknownText({ statement, entry }: Stated, known: KnownTexts): Problem | undefined {
  const { texts, steers, complete } = known;
  if (entry?.kind !== 'text') return undefined;
  const folded = foldedOption(entry.text);
  if (texts.some((text) => foldedOption(text) === folded)) return undefined;
  const span = { from: 0, to: statement.entry.length };
  const near = nearest(entry.text, texts);
  const facts = { written: entry.text, steers: [...steers], texts: [...texts], near };
  const fixes = near.map((insert) => ({ label: insert, ...span, insert }));
  const found = problem('stated-text-unknown', span, facts, fixes);
  return complete ? found : { ...found, severity: 'warning' };
}
