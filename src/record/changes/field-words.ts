/** What a reader calls the fields of a book, of its sheets, parts, lines and columns. */
const FIELDS: Readonly<Record<string, string>> = {
  label: 'description',
  entry: 'entry',
  applies: 'applies where',
  by: 'method chosen by',
  from: 'options from',
  kind: 'kind',
  title: 'title',
  toLink: 'to be linked to',
  group: 'group',
  text: 'words',
  'range.min': 'least permitted',
  'range.max': 'greatest permitted',
  'stated.entry': 'stated value',
  'stated.reason': 'reason for the stated value',
  'stated.reasonFor': 'to be confirmed, its reason was given for',
  'stated.demand.entry': 'stated demand',
  'stated.demand.reason': 'reason for the stated demand',
  'stated.capacity.entry': 'stated capacity',
  'stated.capacity.reason': 'reason for the stated capacity',
  'title.project': 'project',
  'title.subject': 'subject',
  'title.job': 'job',
  'title.client': 'client',
  'title.prepared': 'prepared',
  'title.checked': 'checked',
  'title.date': 'date',
  'title.revision': 'revision',
  'settings.system': 'preferred units',
  'settings.currency': 'currency',
  'settings.units': 'units of the book',
  'settings.datums': 'elevation datums',
  'settings.printedTables': 'tables on paper',
};

/** The words for a field; one without words of its own goes by its name in the file. */
export function fieldWords(field: string): string {
  return Object.hasOwn(FIELDS, field) ? (FIELDS[field] ?? field) : field;
}
