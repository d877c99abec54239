import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Small files that take long: their size says nothing of it, and a fresh clone knows no durations yet. */
const long = [
  'tests/browser/formulas-fit.test.ts',
  'tests/browser/kills.test.ts',
  'tests/browser/hostile.test.ts',
  'tests/browser/books-from-sheets.test.ts',
  'tests/templates/bollard-pull/',
  'tests/templates/pile-bearing/',
  'tests/templates/fender-energy/',
  'tests/templates/debris-haul/',
];

function isLong({ moduleId }: TestSpecification): boolean {
  return long.some((path) => moduleId.includes(`/${path}`));
}

/** Begins with the files that take longest, so that no worker has one to itself when the others are done. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
