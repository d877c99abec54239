import { HighlightStyle, LanguageSupport, LRLanguage, syntaxHighlighting } from '@codemirror/language';
import { styleTags, tags } from '@lezer/highlight';
import { formulaParser } from '../../../language/index.ts';

/** The formula language as the editor knows it: the same grammar that the checker reads. */
const language = LRLanguage.define({
  name: 'formula',
  parser: formulaParser.configure({
    props: [
      styleTags({
        Name: tags.variableName,
        'Number Quantity/Number': tags.number,
        'Unit UnitGroup UnitGroup/...': tags.unit,
        Text: tags.string,
        Function: tags.function(tags.variableName),
        'PlusOp TimesOp PowerOp SignOp JoinOp CompareOp Equals Separator': tags.operator,
        'Superscript Root Percent': tags.operator,
      }),
    ],
  }),
  languageData: { closeBrackets: { brackets: ['(', '"'] }, wordChars: "_'." },
});

/** Names in ink, numbers in pen, units soft, functions in the accent: as the page sets them. */
const inks = HighlightStyle.define([
  { tag: tags.variableName, color: 'var(--ink)' },
  { tag: tags.number, color: 'var(--pen)' },
  { tag: tags.unit, color: 'var(--ink-soft)' },
  { tag: tags.string, color: 'var(--pen)', fontStyle: 'italic' },
  { tag: tags.function(tags.variableName), color: 'var(--accent)', fontWeight: '600' },
  { tag: tags.operator, color: 'var(--ink-soft)' },
]);

/** The grammar and its colours. */
export const formulaLanguage = [new LanguageSupport(language), syntaxHighlighting(inks)];
