import { existsSync, readFileSync } from 'node:fs';
import type { Project } from '#planner/shortest-schedule.ts';
import { readKolischSprecher, readPatterson, readSchwindt } from '#tests/planner/project-files.ts';

/** Scheduling instances with published optima stand beside the project, not in it; null where the folder is absent. */
export const projectLibrary = (): readonly { readonly name: string; readonly optimum: string; readonly path: URL }[] | null => {
  const folder = new URL('../../../shared/reference/psplib/', import.meta.url);
  const table = new URL('optimum.csv', folder);
  if (!existsSync(table)) return null;
  return readFileSync(table, 'utf8')
    .split(/\r?\n/)
    .slice(1)
    .filter((line) => line.includes(','))
    .map((line) => {
      const [name, optimum] = line.split(',') as [string, string];
      return { name, optimum, path: new URL(name, folder) };
    });
};

/** Reads an instance by the format its name tells. */
export const projectOf = (name: string, text: string): Project =>
  name.endsWith('.rcp')
    ? readPatterson(text)
    : name.toLowerCase().endsWith('.sch')
      ? readSchwindt(text)
      : readKolischSprecher(text);
