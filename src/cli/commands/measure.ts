import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { FrameCorners } from '#shared/vocabulary/photograph.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { misused, type Command } from '#cli/command.ts';

/** `0.1,0.1 0.9,0.1 0.9,0.9 0.1,0.9`: four corners in turn, as shares of width and height from the top left. */
const frameOf = (text: string): FrameCorners => {
  const corners = text
    .trim()
    .split(/\s+/)
    .map((corner) => corner.split(',').map(Number));
  const fits = corners.length === 4 && corners.every((corner) => corner.length === 2 && corner.every((x) => x >= 0 && x <= 1));
  if (!fits) throw misused('--frame', 'must be four corners such as "0.1,0.1 0.9,0.1 0.9,0.9 0.1,0.9", each 0 to 1');
  return corners.map(([x, y]) => [x!, y!] as const);
};

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** Green cover of a photograph file; nothing is kept. */
export const measure: Command = {
  summary: 'Measures the green cover of a photograph (JPEG or PNG), with what limits the number',
  usage: 'FILE [--frame "x,y x,y x,y x,y"] [--thresholds first|later] [--preview FILE.png]',
  options: { frame: { type: 'string' }, thresholds: { type: 'string' }, preview: { type: 'string' } },
  run: async (desk) => {
    const [file] = desk.words;
    if (file === undefined) throw misused('FILE', 'is missing');
    const thresholds = desk.options['thresholds'] ?? 'first';
    if (thresholds !== 'first' && thresholds !== 'later') throw misused('--thresholds', 'must be first or later');
    const named = desk.options['frame'];
    const frame = typeof named === 'string' ? frameOf(named) : null;
    let base64: string;
    try {
      base64 = readFileSync(calledFrom(file)).toString('base64');
    } catch (error) {
      throw misused(basename(file), `cannot be read (${(error as Error).message})`);
    }
    const measured = await desk.ask('photograph/measure', { of: { base64 }, thresholds, frame });
    const preview = desk.options['preview'];
    if (typeof preview === 'string') writeFileSync(calledFrom(preview), Buffer.from(measured.preview.base64, 'base64'));
    if (desk.json) return desk.printJson(measured);
    desk.print(`Green cover ${percent(measured.cover)} of ${measured.counted} pixels (${measured.width} × ${measured.height}).`);
    if (measured.greenIndex !== null) desk.print(`Dark green colour index ${measured.greenIndex.toFixed(3)}.`);
    for (const { words } of measured.limits) desk.print(`  ${words}`);
  },
};
