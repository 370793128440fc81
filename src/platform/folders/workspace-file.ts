import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';

export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

const here = (): Surroundings => ({ platform: process.platform, env: process.env, home: homedir() });

/** An environment variable that names a folder; the XDG rules say that a relative path there is to be ignored. */
const folderFrom = (value: string | undefined): string | null => (value && isAbsolute(value) ? value : null);

/** Where this system keeps a program's own data. */
export const dataFolder = ({ platform, env, home }: Surroundings = here()): string => {
  if (platform === 'win32') return join(folderFrom(env['LOCALAPPDATA']) ?? join(home, 'AppData', 'Local'), 'Fieldback');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Fieldback');
  return join(folderFrom(env['XDG_DATA_HOME']) ?? join(home, '.local', 'share'), 'fieldback');
};

/** The workspace to open when nobody names one: `FIELDBACK_FILE`, or a file in the data folder. */
export const defaultWorkspaceFile = (surroundings: Surroundings = here()): string => {
  const named = surroundings.env['FIELDBACK_FILE'];
  return named ? resolve(named) : join(dataFolder(surroundings), 'workspace.fieldback');
};
