import { describe, expect, test } from 'vitest';
import { catalogue } from '#shared/parameters/catalogue.ts';
import { normal, streamFor } from '#engine/chance/stream.ts';
import { doubtsOf } from '#engine/forecast/doubts.ts';
import { drawsOf } from '#engine/forecast/draw-parameters.ts';
import { learnFromEvents } from '#engine/learning/learn-from-events.ts';
import { learntValues, memberDraws } from '#engine/learning/learnt-values.ts';
import { logLikelihoods, memberCourses, saidOf } from '#engine/learning/member-courses.ts';
import { errorOfMean, type Seen } from '#engine/learning/seen.ts';
import { trustFor, weightsOf } from '#engine/learning/weights.ts';
import { smallQuestion } from '#tests/engine/learning/small-question.ts';

/** How many grounds with numbers of their own, and the members they are learnt with. */
const truths = 200;
const members = 1000;
/** Days of darkness that empty a full reserve: what the covered zones of the small field hang on. */
const known = 'reserve.darkDays.cool';
const spots = ['A', 'B'].flatMap((zone) =>
  ['2027-07-18', '2027-07-19', '2027-07-21', '2027-07-25'].map((evening) => ({ zone, evening, quantity: 'cover' as const })),
);

describe('calibration on synthetic inspections', () => {
  const question = smallQuestion({ members });
  const { parameters, seed } = question;
  const courses = memberCourses(question);
  const draws = memberDraws(parameters, doubtsOf(question), seed, members);
  const error = errorOfMean(parameters['learning.coverReading'], 5, parameters['learning.coverModel']);

  /** Fields whose numbers and weather are drawn like the members', but by another seed; each is read with chance. */
  const elsewhere = smallQuestion({ members: truths, seed: 4711 });
  const fields = memberCourses(elsewhere);
  const said = spots.map((spot) => saidOf(fields, spot));
  const noise = streamFor(99, 'tests: reading');
  const runs = Array.from({ length: truths }, (_, field) => {
    const seen: Seen[] = spots.map((spot, at) => ({ ...spot, value: said[at]![field]! + error * normal(noise), error }));
    const log = logLikelihoods(courses, seen);
    const weights = weightsOf(log, trustFor(log, parameters['learning.leastMembers']));
    const changes = learntValues(draws, weights, parameters['learning.surety']);
    return { truth: drawsOf(elsewhere.parameters, elsewhere.seed)(field), changes };
  });
  const change = (run: (typeof runs)[number], name: string) => run.changes.find((one) => one.name === name);

  test('the 80 % range that then stands holds the true number in 70 to 90 % of 200 runs', () => {
    const half = parameters[known] * doubtsOf(question)(known, catalogue[known].doubt);
    const before = { low: parameters[known] - half, high: parameters[known] + half };
    const held = runs.filter((run) => {
      const { low, high } = change(run, known)?.after ?? before;
      return run.truth[known] >= low && run.truth[known] <= high;
    }).length;
    expect(held / truths).toBeGreaterThanOrEqual(0.7);
    expect(held / truths).toBeLessThanOrEqual(0.9);
  });

  test('where it is proposed it comes nearer to the truth than it stood, and follows it', () => {
    const learnt = runs.flatMap((run) => {
      const one = change(run, known);
      return one ? [{ truth: run.truth[known], one }] : [];
    });
    const missBefore = learnt.reduce((sum, { truth, one }) => sum + (truth - one.before.value) ** 2, 0);
    const missAfter = learnt.reduce((sum, { truth, one }) => sum + (truth - one.after.value) ** 2, 0);
    expect(learnt.length).toBeGreaterThan(truths / 4);
    expect(missAfter).toBeLessThan(0.65 * missBefore);
    for (const { one } of learnt)
      expect(one.after.high - one.after.low).toBeLessThanOrEqual(one.before.high - one.before.low + 1e-9);
  });

  test('numbers of other grasses, other soils and frost, on which a July on this field cannot hang, are hardly ever proposed', () => {
    const other = /zoysia|paspalum|bermuda|fescue|silt-loam|clay|frost|ice[.]|thawing/i;
    const foreign = runs.filter((run) => run.changes.some((one) => other.test(one.name)));
    expect(foreign.length).toBeLessThan(truths * 0.1);
  });
});

describe('without data', () => {
  test('nothing moves and nothing narrows', () => {
    const question = smallQuestion({ members: 60 });
    const learnt = learnFromEvents({
      events: [
        { question, seen: [] },
        { question, seen: [] },
      ],
    });
    expect(learnt.changes).toEqual([]);
    expect(learnt.trust).toBe(1);
    expect(learnt.effectiveSize).toBeCloseTo(60, 6);
  });

  test('readings that every member agrees with equally teach nothing', () => {
    const question = smallQuestion({ members: 60 });
    // Untrodden, uncovered turf the evening before anything happens: all members stand at the usual state's cover, nearly.
    const seen: Seen[] = [{ zone: 'R', evening: '2027-07-01', quantity: 'cover', value: 0.95, error: 0.2 }];
    expect(learnFromEvents({ events: [{ question, seen }] }).changes).toEqual([]);
  });

  test('events that do not share their draws are refused', () => {
    const question = smallQuestion({ members: 60 });
    expect(() =>
      learnFromEvents({
        events: [
          { question, seen: [] },
          { question: { ...question, seed: 12 }, seen: [] },
        ],
      }),
    ).toThrow(expect.objectContaining({ field: 'events' }));
  });
});
