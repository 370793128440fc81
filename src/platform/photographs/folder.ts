import { existsSync, mkdirSync } from 'node:fs';
import { open, readFile, rename } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import type { PhotographType } from '#shared/vocabulary/photograph.ts';
import { cameraNoteOf } from '#platform/photographs/camera-note.ts';
import { pictureHeader } from '#platform/photographs/header.ts';
import type { PhotographFolder } from '#services/needs.ts';

/** The folder beside a workspace file that holds the bytes of its photographs, untouched. */
export const photographsFolder = (file: string): string => join(dirname(file), `${basename(file, extname(file))}-photographs`);

const endings = { 'image/jpeg': '.jpg', 'image/png': '.png' } as const satisfies Record<PhotographType, string>;

/** Photographs by their hash. A file takes its name only when it is whole, and one that is there already is left alone. */
export const photographsBeside = (workspace: string): PhotographFolder => {
  const folder = photographsFolder(workspace);
  const pathOf = (sha256: string, mediaType: PhotographType): string => join(folder, `${sha256}${endings[mediaType]}`);
  let count = 0;
  return {
    examine: pictureHeader,
    cameraNote: cameraNoteOf,

    keep: async (sha256, mediaType, bytes) => {
      const path = pathOf(sha256, mediaType);
      if (existsSync(path)) return;
      mkdirSync(folder, { recursive: true });
      const unfinished = `${path}.${process.pid}-${++count}.part`;
      const handle = await open(unfinished, 'wx');
      try {
        await handle.writeFile(bytes);
        await handle.sync();
      } finally {
        await handle.close();
      }
      await rename(unfinished, path);
    },

    read: async (sha256, mediaType) => {
      try {
        return await readFile(pathOf(sha256, mediaType));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
        throw error;
      }
    },
  };
};
