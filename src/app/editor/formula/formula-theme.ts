import { EditorView } from '@codemirror/view';

/** The look of the formula editor and its lists, in the page's own tokens. */
export const formulaTheme = EditorView.theme({
  '&.cm-editor': {
    outline: 'none !important',
    background: 'var(--paper)',
    color: 'var(--ink)',
    fontSize: '14px',
  },
  '.cm-scroller': { fontFamily: 'var(--code)', lineHeight: '1.5' },
  '.cm-content': { minHeight: '0', padding: '3px 0', caretColor: 'var(--pen)' },
  '.cm-line': { padding: '0 6px' },
  '&.cm-focused .cm-matchingBracket': {
    background: 'var(--accent-tint)',
    outline: '1px solid var(--rule-strong)',
  },
  '&.cm-focused .cm-nonmatchingBracket': { background: 'none', color: 'var(--bad)' },
  '.cm-lintRange': {
    backgroundImage: 'none',
    textDecoration: 'underline wavy 1px',
    textUnderlineOffset: '4px',
  },
  '.cm-lintRange-error': { textDecorationColor: 'var(--bad)' },
  '.cm-lintRange-warning': { textDecorationColor: 'var(--warn)' },
  '.cm-lintRange-hint': { textDecorationColor: 'var(--rule-strong)', textDecorationStyle: 'dotted' },
  '.cm-lintPoint:after': { display: 'none' },
  '.cm-tooltip': {
    border: '1px solid var(--rule-strong)',
    borderRadius: 'var(--radius)',
    background: 'var(--paper)',
    boxShadow: 'var(--shadow-raised)',
    color: 'var(--ink)',
    font: '400 14px/1.35 var(--text)',
  },
  '.cm-tooltip.cm-tooltip-lint': { padding: '0' },
  '.cm-diagnostic': { padding: '4px 9px', border: '0', font: '400 13px/1.35 var(--text)' },
  // The line below the formula stays readable while a list is open.
  '.cm-tooltip-autocomplete.cm-tooltip-below': {
    marginTop: 'calc(var(--below-height, 0px) + 10px)',
  },
  '.cm-tooltip-autocomplete.cm-tooltip-above': {
    translate: '0 calc(-1 * var(--lines-above, 0px) - 4px)',
  },
  '.cm-tooltip-autocomplete > ul': {
    display: 'grid',
    gridTemplateColumns: 'minmax(5em, max-content) minmax(0, 1fr) max-content',
    gap: '0 14px',
    minWidth: '300px !important',
    maxWidth: 'min(620px, 94vw) !important',
    maxHeight: '252px !important',
    padding: '3px 0',
    fontFamily: 'var(--text) !important',
    scrollbarWidth: 'thin',
  },
  '.cm-tooltip-autocomplete > ul > li': {
    display: 'grid',
    gridColumn: '1 / -1',
    gridTemplateColumns: 'subgrid',
    alignItems: 'baseline',
    padding: '3px 9px !important',
    lineHeight: '1.35 !important',
  },
  '.cm-tooltip-autocomplete > ul > li[aria-selected]': {
    background: 'var(--selection) !important',
    boxShadow: 'inset 2px 0 var(--accent)',
    // Seen only where the system forces its colours.
    outline: '2px solid transparent',
    outlineOffset: '-2px',
    color: 'var(--ink) !important',
  },
  // Before anything is chosen, the Tab key takes the first.
  '.cm-tooltip-autocomplete > ul:not(:has([aria-selected])) > li:first-child': {
    boxShadow: 'inset 2px 0 var(--rule-strong)',
  },
  '.cm-completionLabel': { fontFamily: 'var(--code)', fontSize: '13.5px', whiteSpace: 'nowrap' },
  '.cm-completionMatchedText': { color: 'var(--accent)', fontWeight: '600', textDecoration: 'none' },
  '.cm-completionDetail': {
    overflow: 'hidden',
    marginLeft: '0',
    color: 'var(--ink-soft)',
    fontSize: '13px',
    fontStyle: 'normal',
    textOverflow: 'ellipsis',
    whiteSpace: 'nowrap',
  },
  '.completion-value': {
    maxWidth: '14em',
    overflow: 'hidden',
    textAlign: 'right',
    textOverflow: 'ellipsis',
    fontSize: '13px',
    fontVariantNumeric: 'tabular-nums',
    whiteSpace: 'nowrap',
  },
  '.cm-tooltip.cm-completionInfo': { maxWidth: '300px', padding: '6px 9px', fontSize: '13px' },
  '.completion-signature': { marginBottom: '3px', fontFamily: 'var(--code)', fontSize: '12.5px' },
});
