import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entryKinds } from '#shared/vocabulary/money.ts';
import type { Sheet, TablePart } from '#reports/sheet.ts';
import { chargeBack } from '#reports/sheets/charge-back.ts';
import { recoveryReport } from '#reports/sheets/recovery-report.ts';
import { exampleEntry, examplePapers, exampleTerms, moneyWith } from '#tests/reports/example-papers.ts';

/** A printed sum in minor units of a currency with cents; a dash is nothing. */
const cents = (text: string): number =>
  text === '–' ? 0 : Math.round(Number(text.replace(/[^\d.−]/g, '').replace('−', '-')) * 100);
const tableWith = (sheet: Sheet, head: string): TablePart =>
  sheet.parts.flatMap((part) => (part.part === 'table' && part.columns.some((column) => column.head === head) ? [part] : []))[0]!;
const column = ({ columns, rows }: TablePart, head: string): number[] => {
  const at = columns.findIndex((one) => one.head === head);
  return rows.map((row) => cents(row[at]!));
};
const sentenceWith = (sheet: Sheet, words: string): string =>
  sheet.parts.flatMap((part) => (part.part === 'sentence' && part.text.includes(words) ? [part.text] : []))[0]!;
const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

const anyLine = fc.record({
  kind: fc.constantFrom(...entryKinds),
  sum: fc.integer({ min: 0, max: 1e9 }),
  chargedShare: fc.integer({ min: 0, max: 100 }),
  date: fc.constantFrom('2027-07-22', '2027-08-20', '2027-09-20'),
  evidence: fc.constantFrom('', 'invoice'),
});

test('on the printed papers, whatever was entered, the lines add up and every split adds up', () => {
  fc.assert(
    fc.property(
      fc.array(anyLine, { minLength: 1, maxLength: 25 }),
      fc.record({
        deposit: fc.integer({ min: 0, max: 1e8 }),
        cap: fc.option(fc.integer({ min: 0, max: 1e9 })),
        excess: fc.constantFrom(0, 50_000),
      }),
      (lines, agreed) => {
        const entries = lines.map((line, index) => exampleEntry(index + 1, line));
        const money = moneyWith({ ...exampleTerms, ...agreed }, entries);
        const papers = examplePapers(3, 2, { money });
        const cost = tableWith(recoveryReport(papers, 'si'), 'Entered');
        for (const head of ['Low', 'Likely', 'High', 'Entered', 'Chargeable', 'Venue']) {
          const values = column(cost, head);
          expect(sum(values.slice(0, -1)), head).toBe(values.at(-1));
        }
        const [entered, charged, own] = ['Entered', 'Chargeable', 'Venue'].map((head) => column(cost, head)) as [
          number[],
          number[],
          number[],
        ];
        entered.forEach((value, row) => expect(charged[row]! + own[row]!).toBe(value));
        expect(entered.at(-1)).toBe(sum(lines.map((line) => line.sum)));

        // The sentence below the table: from what is chargeable to what is claimed, step by step, and who pays it.
        const said = sentenceWith(recoveryReport(papers, 'si'), 'balance due');
        const [, steps] = /Of (.*?) is claimed/.exec(said) ?? ['', ''];
        const named = [...steps!.matchAll(/USD ([\d,.]+\.\d\d)/g)].map(([, value]) => cents(value!));
        const { account: reckoned } = papers.money;
        if (named.length > 0) {
          expect(named[0]).toBe(charged.at(-1));
          expect(named[0]! - sum(named.slice(1, -1))).toBe(named.at(-1));
          expect(named.at(-1)).toBe(reckoned.claim);
        } else expect(charged.at(-1)).toBe(reckoned.claim);

        const pack = chargeBack(papers, 'si');
        const account = new Map(tableWith(pack, 'USD').rows.map(([words, value]) => [words!, cents(value!)]));
        const of = (words: string): number => [...account].find(([said]) => said.startsWith(words))![1];
        expect(of('Claim') + of('Borne by the venue')).toBe(of('Cost of the event'));
        expect(of('Charged, proven') + of('Plus late') + of('Less what the venue') + of('Less what is above')).toBe(of('Claim'));
        expect(of('Kept from the deposit') + of('Balance due')).toBe(of('Claim'));
        expect(of('Kept from the deposit') + of('Deposit returned')).toBe(agreed.deposit);
        const listed = tableWith(pack, 'Proof');
        if (listed.rows.length === 0) return;
        const [sums, part, rest] = ['Sum', 'Charged', 'Venue'].map((head) => column(listed, head)) as [
          number[],
          number[],
          number[],
        ];
        for (const values of [sums, part, rest]) expect(sum(values.slice(0, -1))).toBe(values.at(-1));
        sums.forEach((value, row) => expect(part[row]! + rest[row]!).toBe(value));
      },
    ),
    { numRuns: 60 },
  );
});
