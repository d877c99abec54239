/** The keys of the app, for the sheet of keys; each is handled where the sheet, the editor or the shell says. */
export const keyGroups: readonly {
  readonly title: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}[] = [
  {
    title: 'Move',
    keys: [
      ['← → ↑ ↓', 'to the next cell'],
      ['Home, End', 'to the first or last cell of the line'],
      ['Ctrl+Home, Ctrl+End', 'to the first or last line of the sheet'],
      ['Page Up, Page Down', 'a page of lines'],
      ['Shift with these', 'select a range'],
      ['Ctrl+G', 'go to any name, part, sheet or page'],
      ['Alt+←', 'back to where you were before a jump'],
      ['F6, Shift+F6', 'to the panel, the bars, the list of sheets, and back to the page'],
      ['F9, Shift+F9', 'show or fold the panel, the list of sheets'],
      ['F8, Shift+F8', 'to the next or previous problem or failing check'],
      ['Ctrl+Page Up, Ctrl+Page Down', 'the sheet before or after; all checks before the first'],
    ],
  },
  {
    title: 'Edit',
    keys: [
      ['F2, Enter or typing', 'edit the cell'],
      ['Enter, Tab', 'accept and move on'],
      ['Escape', 'leave it as it was'],
      ['Alt+Enter', 'take the remedy or the offer below the field'],
      ['gamma, Delta …', 'a Greek letter: write its name, take it from the list'],
      ['Delete', 'clear the entry'],
      ['Ctrl+C, Ctrl+X, Ctrl+V', 'copy, cut, paste, also to and from a spreadsheet'],
      ['Ctrl+D', 'fill down'],
      ['Ctrl+Z, Ctrl+Y', 'undo, redo'],
    ],
  },
  {
    title: 'Lines',
    keys: [
      ['Ctrl+Enter', 'a new line below: a value makes it a given, a formula a calculated line'],
      ['Ctrl+Shift+Enter', 'a new line of the same kind, or row of a table, above'],
      ['Ctrl+Shift+D', 'duplicate the line, the row or the part'],
      ['Alt+↑, Alt+↓', 'move the line'],
      ['Ctrl+Shift+Backspace', 'delete the line'],
      ['Shift+F10', 'the menu of the line, the column or the sheet'],
      ['Shift+F10, Methods', 'other formulas of a calculated line, of which a choice has one in force'],
      ['Alt+↑, Alt+↓ in the panel', 'move the method'],
    ],
  },
  {
    title: 'Book',
    keys: [
      ['Ctrl+S', 'save as a file'],
      ['Ctrl+P', 'print the sheet'],
      ['F1 or ?', 'this sheet of keys'],
    ],
  },
];
