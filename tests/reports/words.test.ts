import { describe, expect, it } from 'vitest';
import type { TablePart } from '#reports/sheet.ts';
import { chargeBack } from '#reports/sheets/charge-back.ts';
import { everySheet, type PrintedKind } from '#reports/sheets/every-sheet.ts';
import { recoveryReport } from '#reports/sheets/recovery-report.ts';
import { sodOrderSheet } from '#reports/sheets/sod-order.ts';
import { costAmount, unitAmount } from '#shared/wording/amounts.ts';
import { atLeast, counted, planName, zonesInWords } from '#reports/wording.ts';
import { basisWords } from '#shared/wording/estimates.ts';
import { exampleEntry, examplePapers, exampleTerms, moneyWith, planRun } from '#tests/reports/example-papers.ts';

const usual = examplePapers();
const paid = moneyWith(exampleTerms, [exampleEntry(1, { kind: 'freight', quantity: 14, unit: 'truck', zone: null })]);

describe('words a manager forwards', () => {
  it('one and many', () => {
    expect([counted(1, 'truckload'), counted(1200, 'truckload'), counted(0, 'day')]).toEqual([
      '1 truckload',
      '1,200 truckloads',
      '0 days',
    ]);
    expect([zonesInWords(['A']), zonesInWords(['A', 'B'])]).toEqual(['zone A', 'zones A, B']);
    expect([costAmount(11, 'trucks', 'us'), costAmount(1, 'trucks', 'us'), costAmount(103, 'm³', 'us')]).toEqual([
      '11 trucks',
      '1 truck',
      '134.7 yd³',
    ]);
    expect([unitAmount('1', 'truck'), unitAmount('14', 'truck'), unitAmount('3', 'm²')]).toEqual([
      '1 truck',
      '14 trucks',
      '3 m²',
    ]);
    const pack = JSON.stringify(chargeBack(examplePapers(3, 2, { money: paid }), 'si'));
    expect(pack).toContain('"14 trucks"');
    const single = examplePapers(3, 1);
    const order = { ...single.plan.plan.orders[0]!, zones: ['A'] };
    const one = { ...single, plan: planRun({ ...single.plan.plan, orders: [order] }) };
    for (const said of [JSON.stringify(recoveryReport(one, 'si')), JSON.stringify(sodOrderSheet(one, 'si'))]) {
      expect(said).toContain('1 truckload');
      expect(said).not.toMatch(/1 truckloads|zones A[:"]|"1 trucks/);
    }
  });

  it('a chance that rounds to a certainty is not said to be one', () => {
    expect([atLeast(0.95), atLeast(0.994), atLeast(0.996), atLeast(1)]).toEqual([
      'at least 95 %',
      'at least 99 %',
      'over 99 %',
      'over 99 %',
    ]);
  });

  it('another plan of the same event is called by its moment, one of another event by its event', () => {
    expect(planName(usual, usual)).toBe('Plan as of Mon 5 Jul 08:00');
    expect(planName(usual, { ...usual, booking: { ...usual.booking, id: 'other', name: 'Rink' } })).toBe('Rink');
    const said = JSON.stringify(everySheet['meeting-sheet'](examplePapers(6, 3, { alternatives: [usual] }), 'si'));
    expect(said).toContain('"This plan"');
    expect(said).toContain('"Plan as of Mon 5 Jul 08:00"');
  });

  it('what an estimate rests on is in the reader’s units', () => {
    // 200, 100 and 400 m² at 10.7639 ft² to the m².
    expect(basisWords(usual.estimate, 'us')).toContain('2,153 ft²');
    expect(basisWords(usual.estimate, 'us')).toContain('1,076 ft² and 4,306 ft²');
    expect(basisWords(usual.estimate, 'si')).toContain('(200 m²)');
  });

  it('a paper in US units has no SI quantity', () => {
    for (const kind of Object.keys(everySheet) as PrintedKind[])
      expect(JSON.stringify(everySheet[kind](usual, 'us').parts), kind).not.toMatch(/\d (m²|m³|mm|m|kg|kN|kPa|t|l|°C)[\s,;:."]/);
  });

  it('without terms the account is what the event cost, and there is nothing to sign', () => {
    const { parts } = chargeBack(examplePapers(3, 2, { money: moneyWith(null, [exampleEntry(1)]) }), 'si');
    const account = parts.find(
      (part): part is TablePart => part.part === 'table' && part.columns.some(({ head }) => head === 'USD'),
    )!;
    expect(account.rows).toEqual([
      ['Cost of the event to the field, all lines', '3,045.00'],
      ['Borne by the venue', '3,045.00'],
    ]);
    expect(parts.some((part) => part.part === 'blanks')).toBe(false);
  });

  it('trucks are summed up: rolls, area, weight', () => {
    const papers = examplePapers(6, 7);
    for (const sheet of [sodOrderSheet(papers, 'si'), recoveryReport(papers, 'si')]) {
      const trucks = sheet.parts.find((part): part is TablePart => part.part === 'table' && part.columns[0]!.head === 'Truck')!;
      for (const head of ['Rolls', 'Area', 'Weight']) {
        const at = trucks.columns.findIndex((one) => one.head === head);
        const values = trucks.rows.map((row) => Number(row[at]!.replace(/[^\d.]/g, '')));
        expect(values).toHaveLength(8);
        expect(
          values.slice(0, -1).reduce((sum, one) => sum + one, 0),
          head,
        ).toBe(values.at(-1));
      }
    }
  });
});
