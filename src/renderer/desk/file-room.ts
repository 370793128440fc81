import { muchLiesFree, roomWords } from '#shared/wording/file-room.ts';
import { ask } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { change, deskNow, valueOf } from './desk.ts';

export const readAbout = async (): Promise<void> => {
  const about = await ask('workspace/about', {});
  if (about.ok) change({ about: about.value });
};

/** Says once, where nothing else is said, that much of the file lies free. */
export const offerRoom = (): void => {
  const { about, said } = deskNow();
  if (!about || !muchLiesFree(about.size) || said !== '') return;
  const { bytes, spare } = about.size;
  change({ said: `${roomWords(spare)} of the ${roomWords(bytes)} of the file lie free; under venue they can be given back.` });
};

/** Gives the free room inside the file back to the disk. */
export const giveBackRoom = oneAtATime(async (): Promise<void> => {
  const sizes = valueOf(await ask('workspace/compact', {}));
  if (!sizes) return;
  const { before, after } = sizes;
  change({ said: `The file had ${roomWords(before.bytes)}; it has ${roomWords(after.bytes)} now.` });
  await readAbout();
});
