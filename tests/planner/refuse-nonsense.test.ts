import { describe, expect, it } from 'vitest';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { PlanRefusal } from '#planner/plan-refusal.ts';
import { refuseNonsense } from '#planner/refuse-nonsense.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const base = sampleProblem({ zones: 3, days: 10 });
const job = (kind: string, change: object): RecoveryProblem => ({
  ...base,
  jobs: base.jobs.map((one) => (one.kind === kind ? { ...one, ...change } : one)),
});
const placeOf = (kind: string): number => base.jobs.findIndex((one) => one.kind === kind);
const window = base.windows[0]!;

const nonsense: readonly (readonly [string, RecoveryProblem, string, RegExp])[] = [
  ['a job longer than its window', job('lights', { fixedHours: 900 }), 'windows.0', /takes 900 h, longer than the whole window/],
  ['a farm with no trucks', { ...base, farms: [{ ...nearFarm, trucksPerDay: 0 }] }, 'farms.0.trucksPerDay', /has no trucks/],
  ['a circle of jobs', job('litter-and-magnet', { needs: ['feed'] }), 'jobs', /circle: .*litter-and-magnet/],
  ['negative stock', { ...base, farms: [{ ...nearFarm, stock: -5 }] }, 'farms.0.stock', /must not be negative/],
  ['notice that is not a number', { ...base, farms: [{ ...nearFarm, notice: NaN }] }, 'farms.0.notice', /must not be negative/],
  ['two farms with one id', { ...base, farms: [nearFarm, nearFarm] }, 'farms.1.id', /twice/],
  [
    'a zone without area',
    { ...base, zones: base.zones.map((zone, index) => (index === 1 ? { ...zone, area: 0 } : zone)) },
    'zones.1.area',
    /positive/,
  ],
  ['a zone twice', { ...base, zones: [...base.zones, base.zones[0]!] }, 'zones.3.letter', /twice/],
  [
    'a way over an unknown zone',
    { ...base, zones: base.zones.map((zone) => ({ ...zone, route: ['Z'] })) },
    'zones.0',
    /Z is not a zone/,
  ],
  [
    'a zone on its own way',
    { ...base, zones: base.zones.map((zone) => ({ ...zone, route: ['A'] })) },
    'zones.0.route',
    /own way/,
  ],
  [
    'a window with an unknown zone',
    { ...base, windows: [{ ...window, zones: [{ letter: 'Q', from: '2027-07-18T12:00' }] }] },
    'windows.0.zones',
    /Q is not a zone/,
  ],
  [
    'a zone clear only after the game',
    { ...base, windows: [{ ...window, zones: [{ letter: 'A', from: '2027-09-18T12:00' }] }] },
    'windows.0.zones',
    /after the home date/,
  ],
  [
    'a home date beyond the calendar',
    { ...base, windows: [{ ...window, homeDate: '2027-12-24T12:00' }] },
    'windows.0.homeDate',
    /after the last shift/,
  ],
  ['shifts with a hole', { ...base, shifts: base.shifts.filter((_, index) => index !== 4) }, 'shifts.4', /does not begin where/],
  ['no shifts', { ...base, shifts: [] }, 'shifts', /no shift/],
  ['a lag shorter than itself', job('lay', { lagAtLeast: 80, lagAtMost: 10 }), `jobs.${placeOf('lay')}.lagAtMost`, /shorter/],
  ['a rate of nothing', job('strip', { rate: 0 }), `jobs.${placeOf('strip')}.rate`, /positive/],
  [
    'a programme with a job nobody knows',
    { ...base, jobs: base.jobs.filter(({ kind }) => kind !== 'grade') },
    'programmes.4',
    /grade is not in the job library/,
  ],
  [
    'a programme out of order',
    { ...base, programmes: [{ kind: 'recover', jobs: ['feed', 'seed'], daily: null, sod: null }] },
    'programmes.0',
    /seed must come before feed/,
  ],
  ['stripping a stitched hybrid', { ...base, construction: 'stitched-hybrid' }, 'programmes', /never stripped/],
];

describe('nonsense', () => {
  it.each(nonsense)('%s is refused by name', (_, problem, field, reason) => {
    try {
      refuseNonsense(problem);
      expect.unreachable('was accepted');
    } catch (error) {
      expect(error).toBeInstanceOf(PlanRefusal);
      expect((error as PlanRefusal).field).toBe(field);
      expect((error as PlanRefusal).reason).toMatch(reason);
    }
  });

  it('of one zone is what a plan fails for by name: work so slow that it would outlast the window', async () => {
    const slow = job('lay', { rate: 1 });
    const locks = [{ zone: 'A', window: window.id, programme: 'replace-thick' as const, farm: null }];
    const outcome = await schedulePlan({ ...slow, locks }, optimiserOnThisThread());
    if (outcome.kind !== 'none') throw new Error(outcome.kind);
    expect(outcome.closed.find(({ zone }) => zone === 'A')!.reason).toBe(
      'Receive and lay rolls takes 780 h, longer than the whole window of 212 h',
    );
    // It closes the ways back that lay sod, and no other.
    const outlasting = outcome.closed.filter(({ reason }) => reason.includes('longer than the whole window'));
    expect(new Set(outlasting.map(({ programme }) => programme))).toEqual(new Set(['replace-thick', 'replace-thin']));
  });

  it('is not found in the sample', () => {
    expect(() => refuseNonsense(base)).not.toThrow();
  });
});
