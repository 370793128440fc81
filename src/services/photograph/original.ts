import { createHash } from 'node:crypto';
import type { Answer } from '#shared/contract/failure.ts';
import type { Photograph } from '#shared/vocabulary/photograph.ts';
import { conflict, done, notFound } from '#services/answers.ts';
import type { Needs } from '#services/needs.ts';

/** The untouched bytes of a kept photograph. Bytes that no longer have their hash are refused: they prove nothing. */
export const originalOf = async ({ photographs }: Needs, { id, sha256, mediaType }: Photograph): Promise<Answer<Uint8Array>> => {
  const bytes = await photographs.read(sha256, mediaType);
  if (bytes === null) return notFound('original of the photograph', id);
  if (createHash('sha256').update(bytes).digest('hex') !== sha256)
    return conflict(
      'photograph',
      id,
      `The file of the photograph "${id}" was changed outside Fieldback: its bytes no longer have the hash they were kept under.`,
    );
  return done(bytes);
};
