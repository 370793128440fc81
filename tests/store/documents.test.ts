import { expect, test } from 'vitest';
import { z } from 'zod';
import { documentReader } from '#store/documents.ts';

const Plate = z.strictObject({ name: z.string() });

test('a document is checked when it is read first, and the same text gives the same value from then on', () => {
  const plateOf = documentReader(Plate);
  const one = plateOf('{"name":"North"}');
  expect(one).toEqual({ name: 'North' });
  expect(plateOf('{"name":"North"}')).toBe(one);
  expect(plateOf('{"name":"South"}')).toEqual({ name: 'South' });
});

test('what is no such document is refused every time', () => {
  const plateOf = documentReader(Plate);
  for (let time = 0; time < 2; time++) expect(() => plateOf('{"name":4}')).toThrow(/name/);
});

test('only so many stay read, and each is right whether it stayed or not', () => {
  let checked = 0;
  const plateOf = documentReader(Plate.refine(() => ++checked > 0));
  const name = (at: number): string => `{"name":"${at}"}`;
  for (let at = 0; at < 500; at++) expect(plateOf(name(at))).toEqual({ name: `${at}` });
  expect(checked).toBe(500);
  expect(plateOf(name(499))).toEqual({ name: '499' });
  expect(checked).toBe(500);
  expect(plateOf(name(0))).toEqual({ name: '0' });
  expect(checked).toBe(501);
});
