import { nearest, type Problem, problem } from '../diagnostics/index.ts';
import { foldedOption } from '../document/index.ts';
import { type KnownTexts, knownTexts, type TextsOf } from './known-texts.ts';
import type { Item } from './model.ts';
import type { Stated } from './stated.ts';

/** A line or column with what its stated values are worth in the book: a text that chooses methods is one of those known. */
export function withStatedJudged(item: Item, items: ReadonlyMap<string, Item>, textsOf: TextsOf): Item {
  if (item.kind === 'formula' && item.stated)
    return { ...item, stated: judgeStated(item.stated, item, items, textsOf) };
  if (item.kind !== 'formula column' || !item.cells) return item;
  const judge = judgeOf(item, items, textsOf);
  return { ...item, cells: new Map([...item.cells].map(([row, stated]) => [row, judge(stated)])) };
}

/** One value stated for a line or for a cell of a column, with what is wrong with it in the book. */
export function judgeStated(
  stated: Stated,
  item: Item,
  items: ReadonlyMap<string, Item>,
  textsOf: TextsOf,
): Stated {
  return judgeOf(item, items, textsOf)(stated);
}

function judgeOf(item: Item, items: ReadonlyMap<string, Item>, textsOf: TextsOf): (stated: Stated) => Stated {
  const known = item.type.kind === 'text' ? knownTexts(item.id, items, textsOf) : undefined;
  return (stated) => {
    const found = known && unknownText(stated, known);
    return found ? { ...stated, problems: [found, ...stated.problems] } : stated;
  };
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
