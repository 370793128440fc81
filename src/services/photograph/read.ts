import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import { originalOf } from '#services/photograph/original.ts';

export const readPhotograph: Service<'photograph/read'> = async (needs, { id, size }) => {
  const { photograph, thumbnail } = await needs.store.read(async (contents) => ({
    photograph: await contents.photographs.find(id),
    thumbnail: await contents.photographs.thumbnail(id),
  }));
  if (!photograph || !thumbnail) return notFound('photograph', id);
  if (size === 'small') return done({ photograph, mediaType: 'image/jpeg' as const, base64: base64Of(thumbnail) });
  const original = await originalOf(needs, photograph);
  return original.ok ? done({ photograph, mediaType: photograph.mediaType, base64: base64Of(original.value) }) : original;
};

const base64Of = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
