import { expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import { asking, july } from '#tests/engine/forecast/sample-question.ts';

test('a run kept before a number was added is read with that number at its own value, and all others as frozen', () => {
  const question = asking(july, { parameters: { ...defaultValues, 'wear.wet.full': 0.35 } });
  const { 'wear.wet.curve': added, ...before } = question.parameters;
  const read = frozenQuestion(JSON.stringify({ ...question, parameters: before }));
  expect(read.parameters['wear.wet.curve']).toBe(added);
  expect(read.parameters['wear.wet.full']).toBe(0.35);
  expect(read).toEqual(question);
});
