import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { jobLibrary, jobsByKind } from '#shared/parameters/jobs.ts';
import { jobKinds } from '#shared/vocabulary/plan.ts';
import { stepsOf, timeStep } from '#planner/job-steps.ts';
import { programmesFor } from '#planner/programmes.ts';
import { hourClock, shiftsBetween } from '#planner/shift-calendar.ts';
import { lengthOf, workingHours } from '#planner/working-hours.ts';
import { sampleProblem, someAmounts } from '#tests/planner/sample-problem.ts';

const chicago = 'America/Chicago';
const anyone = { daylight: false, noisy: false, stoppedBy: [], crew: 0 };
const noisy = { ...anyone, noisy: true };

describe('the shift calendar', () => {
  it('has two shifts a day that meet, with 11 h in the spring night and 13 h in the autumn night', () => {
    for (const [first, last, night, hours] of [
      ['2027-03-12', '2027-03-16', '2027-03-13T18:00', 11],
      ['2027-11-05', '2027-11-09', '2027-11-06T18:00', 13],
    ] as const) {
      const shifts = shiftsBetween(first, last);
      const clock = hourClock(shifts[0]!.start, chicago);
      shifts.forEach((shift, index) => {
        if (index > 0) expect(shift.start).toBe(shifts[index - 1]!.end);
        expect(clock.hourOf(shift.end) - clock.hourOf(shift.start)).toBe(shift.start === night ? hours : 12);
        expect(shift.night).toBe(shift.start.endsWith('18:00'));
        for (const time of [shift.start, shift.end]) expect(clock.timeAt(clock.hourOf(time))).toBe(time);
      });
    }
  });

  it('takes the curfew across midnight out of noisy work only, also in the night the clocks change', () => {
    const base = sampleProblem({ zones: 1, days: 5, start: '2027-03-12' });
    const problem = { ...base, blocks: [], shifts: shiftsBetween('2027-03-10', '2027-03-18') };
    const hours = workingHours(problem, hourClock(problem.shifts[0]!.start, chicago));
    problem.shifts.forEach((shift, index) => {
      const all = shift.start === '2027-03-13T18:00' ? 11 : 12;
      expect(lengthOf(hours.free(index, anyone, null))).toBeCloseTo(all, 9);
      // Curfew 23:00 to 06:00: a night keeps 18:00 to 23:00, a day loses nothing.
      expect(lengthOf(hours.free(index, noisy, null))).toBeCloseTo(shift.night ? 5 : 12, 9);
    });
  });

  it('handles a curfew that starts after midnight', () => {
    const base = sampleProblem({ zones: 1, days: 5 });
    const problem = { ...base, blocks: [], workforce: { ...base.workforce, curfew: { from: '01:00', until: '07:00' } } };
    const hours = workingHours(problem, hourClock(problem.shifts[0]!.start, chicago));
    problem.shifts.forEach(({ night }, index) => expect(lengthOf(hours.free(index, noisy, null))).toBeCloseTo(night ? 7 : 11, 9));
  });

  it('closes shifts by daylight, weather, people and blocks of single zones', () => {
    const base = sampleProblem({ zones: 2, days: 5 });
    const [first] = base.shifts;
    const block = { kind: 're-entry' as const, name: 'Label', from: first!.start, until: first!.end, zones: ['A'] };
    const problem = {
      ...base,
      blocks: [block],
      shifts: base.shifts.map((shift, index) => ({ ...shift, windy: index === 2, rainChance: index === 4 ? 0.6 : 0 })),
    };
    const hours = workingHours(problem, hourClock(first!.start, chicago));
    expect(hours.blocker(0, anyone, 'A')).toBe('re-entry');
    expect(hours.blocker(0, anyone, 'B')).toBeNull();
    expect(hours.blocker(1, { ...anyone, daylight: true }, null)).toBe('night');
    expect(hours.blocker(2, { ...anyone, stoppedBy: ['wind'] }, null)).toBe('weather');
    expect(hours.blocker(4, { ...anyone, stoppedBy: ['rain'] }, null)).toBe('weather');
    expect(hours.blocker(2, { ...anyone, stoppedBy: ['rain'] }, null)).toBeNull();
    expect(hours.blocker(0, { ...anyone, crew: 11 }, 'B')).toBe('crew');
    expect(hours.blocker(1, { ...anyone, crew: 8 }, 'B')).toBe('crew');
  });
});

describe('the job library', () => {
  const jobs = jobLibrary(defaultValues, someAmounts);

  it('knows every kind of job once, and every need of it', () => {
    expect(jobs.map(({ kind }) => kind).sort()).toEqual([...jobKinds].sort());
    for (const { needs } of jobs) for (const need of needs) expect(jobKinds).toContain(need);
  });

  it('takes the values of a venue', () => {
    const own = jobsByKind(jobLibrary({ ...defaultValues, 'job.strip.rate': 1000 }, someAmounts));
    expect(own.get('strip')!.rate).toBe(1000);
  });

  it('gives durations by area and rate, and strings short jobs together', () => {
    const kinds = jobsByKind(jobs);
    const recover = programmesFor('sand-over-gravel').find(({ kind }) => kind === 'overseed')!;
    const steps = stepsOf(recover, 500, kinds, 10 / 12);
    expect(steps.map((step) => step.jobs.map(({ job }) => job.kind))).toEqual([
      ['litter-and-magnet', 'first-water'],
      ['spike', 'topdress'],
      ['seed', 'feed'],
    ]);
    expect(steps[0]!.hours).toBeCloseTo(500 / kinds.get('litter-and-magnet')!.rate! + 500 / kinds.get('first-water')!.rate!, 9);
    // Half the area takes half the time; a very large one is no longer strung together.
    expect(stepsOf(recover, 250, kinds, 10 / 12)[0]!.hours).toBeCloseTo(steps[0]!.hours / 2, 9);
    expect(stepsOf(recover, 20000, kinds, 10 / 12).length).toBeGreaterThan(steps.length);
  });

  it('lets a long job pause over blocked shifts, and no short one', () => {
    const base = sampleProblem({ zones: 1, days: 10 });
    const problem = { ...base, blocks: [], shifts: base.shifts.map((shift) => ({ ...shift, rainChance: 0, hot: false })) };
    const clock = hourClock(problem.shifts[0]!.start, chicago);
    const hours = workingHours(problem, clock);
    const thick = programmesFor('sand-over-gravel').find(({ kind }) => kind === 'replace-thick')!;
    const lay = (area: number) => stepsOf(thick, area, jobsByKind(jobs), 10 / 12).find(({ laysSod }) => laysSod)!;
    // 4,200 m² at 210 m²/h are 20 working hours, 24 h on the clock: a day, the evening before the curfew, and some of the next day.
    const long = timeStep(lay(4200), 2, 'A', -Infinity, hours, problem.settings)!;
    expect(long.jobs[0]!.work.map(({ shift }) => shift)).toEqual([2, 3, 4]);
    expect(long.jobs[0]!.work.reduce((sum, one) => sum + one.hours, 0)).toBeCloseTo(20, 6);
    expect(long.end - long.at).toBeCloseTo(24 + 7, 6);
    // 1,000 m² are 5.7 h on the clock: they fit into a day, not into an evening of 5 h.
    expect(timeStep(lay(1000), 2, 'A', -Infinity, hours, problem.settings)).not.toBeNull();
    expect(timeStep(lay(1000), 3, 'A', -Infinity, hours, problem.settings)).toBeNull();
  });
});
