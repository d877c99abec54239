import { projectFiles, readProjectFile } from '../architecture/project-files.ts';

/** Every formula of the shipped templates, as written. */
export const templateFormulas: readonly string[] = projectFiles('templates', /book\.quaybook\.json$/).flatMap(
  (file) => formulasIn(JSON.parse(readProjectFile(file))),
);

function formulasIn(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'formula' in value && typeof value.formula === 'string' ? [value.formula] : [];
  return [...own, ...Object.values(value).flatMap(formulasIn)];
}
