import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Typeface } from '#reports/paper.ts';

const bytesOf = (name: string): Uint8Array =>
  readFileSync(createRequire(import.meta.url).resolve(`@expo-google-fonts/source-sans-3/${name}`));

let kept: Typeface | null = null;

/** The typeface of every paper, read once. */
export const typeface = (): Typeface =>
  (kept ??= {
    regular: bytesOf('400Regular/SourceSans3_400Regular.ttf'),
    bold: bytesOf('600SemiBold/SourceSans3_600SemiBold.ttf'),
  });
