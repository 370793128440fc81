import { resolve } from 'node:path';

/** A path as the user meant it: npm runs every command in the project's folder and keeps the folder it was typed in. */
export const calledFrom = (path: string, folder: string = process.env['INIT_CWD'] ?? process.cwd()): string =>
  resolve(folder, path);
