import { describe, expect, it } from 'vitest';
import type { PlanWorks } from '#shared/vocabulary/plan.ts';
import { jobWords } from '#shared/wording/words.ts';
import { planLines } from '#cli/plan-text.ts';
import { recoveryReport } from '#reports/sheets/recovery-report.ts';
import { shiftSheet } from '#reports/sheets/shift-sheet.ts';
import { sodOrderSheet } from '#reports/sheets/sod-order.ts';
import { examplePapers } from '#tests/reports/example-papers.ts';

const works: PlanWorks = {
  quantities: [
    { zone: 'A', window: 'to-home-date', job: 'topdress', what: 'sand-in-holes', value: 0.5, unit: 't' },
    { zone: 'A', window: 'to-home-date', job: 'seed', what: 'seed-bought', value: 5.57, unit: 'kg' },
    { zone: 'A', window: 'to-home-date', job: 'spike', what: 'surface-pierced', value: 0.0491, unit: '1' },
  ],
  waterings: [
    { zone: 'A', window: 'to-home-date', at: '2027-07-21T13:00', depth: 6, volume: 0.6 },
    { zone: 'A', window: 'to-home-date', at: '2027-07-21T16:00', depth: 6, volume: 0.6 },
  ],
  rolls: [
    {
      window: 'to-home-date',
      farm: 'marsh-road',
      cut: 'thick',
      truck: 1,
      temperature: 31,
      hours: 8.25,
      allowed: 18,
      within: true,
    },
  ],
  cautions: ['Zone A, nitrogen: 9 days after the feed before; 14 days are usual.'],
};
const papers = examplePapers();
const run = { ...papers.plan, plan: { ...papers.plan.plan, works } };

describe('the text of a plan', () => {
  const lines = planLines(run, papers.venue, 'si');

  it('marks every job of the chart with letters of its own, and says which', () => {
    const legend = lines.find((line) => line.includes(' · '))!;
    const marks = new Map(legend.split(' · ').map((one) => [one.slice(0, one.indexOf(' ')), one.slice(one.indexOf(' ') + 1)]));
    const used = [...run.plan.zones.flatMap(({ jobs }) => jobs), ...run.plan.fieldJobs].map(({ job }) => jobWords[job]);
    expect(new Set(marks.values())).toEqual(new Set(used));
    const chart = lines.filter((line) => /^(A|B|field)\s.*[a-z]{2}/.test(line) && !line.includes('resod'));
    expect(chart.length).toBeGreaterThan(0);
    for (const mark of chart.flatMap((line) => line.replace(/^(A|B|field)/, '').split(/[\s+]+/)).filter(Boolean))
      expect(marks.has(mark), mark).toBe(true);
  });

  it('says what the work comes to, the water and the hours in the roll', () => {
    const text = lines.join('\n');
    expect(text).toContain('Work in A: sand into the holes 500 kg, seed to buy 5.6 kg, surface pierced 4.9 %');
    expect(text).toContain('Water on new sod in A: 2 waterings from 07-21 13:00 to 07-21 16:00, 1.2 m³');
    expect(text).toContain('Truck 1, thick cut: 8.3 h in the roll of 18 h allowed at 31 °C');
    expect(text).toContain('14 days are usual');
  });

  it('says nothing of it for a plan kept before it was reckoned', () => {
    expect(planLines(papers.plan, papers.venue, 'si').join('\n')).not.toContain('Work in');
  });
});

describe('papers', () => {
  const parts = (sheet: unknown): string => JSON.stringify(sheet);
  const withWorks = { ...papers, plan: run };

  it('carry the amounts, the waterings and the limit of the roll', () => {
    const report = parts(recoveryReport(withWorks, 'si'));
    expect(report).toContain('sand into the holes 500 kg');
    expect(report).toContain('2 waterings from');
    expect(report).toContain('8.3 h of 18 h');
    expect(parts(sodOrderSheet(withWorks, 'si'))).toContain('8.3 h of 18 h');
    expect(parts(shiftSheet(withWorks, 'si'))).toContain('13:00 water zone A, 6.0 mm, 0.6 m³');
    expect(parts(recoveryReport(papers, 'si'))).not.toContain('waterings from');
  });
});
