import { unnoticed } from '../review/index.ts';
import { chosenTemplates, templateBook, templateCases } from './books.ts';

/** `npm run mutate [-- TEMPLATE...]`: spoil each calculated line in turn; list what no case notices. */
const listed = chosenTemplates(process.argv.slice(2)).map((id) => {
  const found = unnoticed(templateBook(id), templateCases(id));
  console.log(
    found.length === 0 ? `${id}: every spoiled line is noticed` : `${id}: not noticed: ${found.join(', ')}`,
  );
  return found.length;
});
process.exitCode = listed.every((count) => count === 0) ? 0 : 1;
