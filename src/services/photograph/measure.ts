import type { Answer } from '#shared/contract/failure.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import type { Checked, Needs, Service } from '#services/needs.ts';
import { bytesOf } from '#services/photograph/bytes.ts';
import { originalOf } from '#services/photograph/original.ts';

/** Green cover of a kept photograph, or of one that is only handed in. Nothing is kept: the number goes into an inspection. */
export const measurePhotograph: Service<'photograph/measure'> = async (needs, request) => {
  const bytes = await bytesAsked(needs, request);
  if (!bytes.ok) return bytes;
  const head = needs.photographs.examine(bytes.value);
  if (!head.ok) return invalid([{ field: 'base64', reason: head.reason }]);
  const { thresholds, frame } = request;
  return done(await needs.compute('measure', { bytes: bytes.value, thresholds, frame }, { urgent: true }));
};

const bytesAsked = async (needs: Needs, { of }: Checked<'photograph/measure'>): Promise<Answer<Uint8Array>> => {
  if ('base64' in of) return bytesOf(of.base64);
  const photograph = await needs.store.read((contents) => contents.photographs.find(of.id));
  return photograph ? originalOf(needs, photograph) : notFound('photograph', of.id);
};
