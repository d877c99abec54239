import { mutateTemplate } from '../review/index.ts';
import { chosenTemplates, templateBook, templateCases, templateEquivalents } from './books.ts';

// npm run mutate [-- TEMPLATE...] [--json]: changes each formula in every way a slip would, and lists what no case notices.
const args = process.argv.slice(2);
const asJson = args.includes('--json');
const reports = chosenTemplates(args.filter((arg) => arg !== '--json')).map((id) => {
  const start = performance.now();
  const report = mutateTemplate(templateBook(id), templateCases(id), 'all', templateEquivalents(id));
  const { made, noticed, equivalent, survivors, stale } = report;
  if (!asJson) {
    for (const { of, change, is } of survivors) console.log(`${id}: ${of}, ${change} changed: ${is}`);
    const seconds = ((performance.now() - start) / 1000).toFixed(0);
    const survived = survivors.length;
    console.log(
      `${id}: ${made} made, ${noticed} noticed, ${equivalent} equivalent, ${survived} survived, ${seconds} s`,
    );
  }
  for (const { of, is } of stale)
    console.error(`${id}: equivalent.json lists ${of}: ${is}, which is not made, or which a case notices`);
  return { id, report };
});
if (asJson) {
  const templates = Object.fromEntries(
    reports.map(({ id, report: { made, noticed, equivalent, survivors } }) => [
      id,
      { made, noticed, equivalent, survived: survivors.length },
    ]),
  );
  console.log(JSON.stringify({ templates }, null, 2));
}
const whole = reports.every(({ report }) => report.survivors.length === 0 && report.stale.length === 0);
process.exitCode = whole ? 0 : 1;
