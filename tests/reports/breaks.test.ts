import { describe, expect, it } from 'vitest';
import { heldTogether } from '#reports/held-together.ts';
import { printSheet } from '#reports/print-sheet.ts';
import { everySheet } from '#reports/sheets/every-sheet.ts';
import { heading, list, sentence, small, table, type Part } from '#reports/sheet.ts';
import { examplePapers, wishes } from '#tests/reports/example-papers.ts';
import { has, textOf } from '#tests/reports/pdf-facts.ts';

/** Where lines and pages may end, and where not. */

const usual = examplePapers();
const pagesOf = async (parts: readonly Part[]): Promise<readonly string[]> =>
  textOf(await printSheet({ ...everySheet['hold-answer'](usual, 'si'), pages: null, parts }, wishes));
const lines = (count: number): Part[] => Array.from({ length: count }, (_, index) => sentence(`Line ${index + 1}.`));
const rowsOf = (count: number): string[][] => Array.from({ length: count }, (_, index) => [`row-${index + 1}`, 'told']);
const columns = [
  ['What', 1],
  ['How', 1],
] as const;

describe('a line', () => {
  it('holds a number to its unit, a currency to its sum, and a date together', () => {
    const plain = (text: string): string => heldTogether(text).replaceAll('\u00A0', '_');
    expect(plain('light 95 %, 3,248 m² in 10 trucks, 30 mm deep')).toBe('light 95_%, 3,248_m² in 10 trucks, 30_mm deep');
    expect(plain('100 / 200 / 400 m²; 7.9 h of 18 h; 210.0 kN, 29 °C')).toBe(
      '100 / 200 / 400_m²; 7.9_h of 18_h; 210.0_kN, 29_°C',
    );
    expect(plain('USD −500.00 of USD 1,234.56')).toBe('USD_−500.00 of USD_1,234.56');
    expect(plain('Fri 9 Jul 06:00 – Mon 19 Jul 23:00')).toBe('Fri_9_Jul 06:00 – Mon_19_Jul 23:00');
    // Words that only begin like a unit, and names in capitals, break as they always did.
    expect(plain('3 hands, 4 minutes, 12 manholes, 5 lots, zone AUSD 3')).toBe(
      '3 hands, 4 minutes, 12 manholes, 5 lots, zone AUSD 3',
    );
  });

  it.skipIf(!has('pdftotext'))(
    'never begins with a unit, however narrow the column, and is copied with plain spaces',
    async () => {
      const words = 'It is 95 % or 20 m² for USD 12 on Sat 31 Jul.';
      const narrow = [5, 6, 7, 8, 9, 10, 12, 14, 17, 20].map((width) =>
        table(
          [
            ['', width],
            ['', 60],
          ],
          [[words, '']],
          '',
        ),
      );
      const text = (await pagesOf(narrow)).join('\n');
      const begun = text.split('\n').map((line) => line.trim());
      expect(begun.length).toBeGreaterThan(30);
      for (const line of begun) expect(line).not.toMatch(/^(%|m²|12\b|31\b|Jul\b)/);
      expect(text).not.toContain('\u00A0');
    },
  );
});

describe.skipIf(!has('pdftotext'))('a page (skipped where pdftotext is not installed)', () => {
  const signed: readonly Part[] = [heading('Signed'), { part: 'blanks', labels: ['Signed here'] }, small('Below it.')];
  const endings: readonly (readonly [string, Part, RegExp])[] = [
    ['a table', table(columns, rowsOf(12), ''), /row-12/],
    ['a list', list(['one of the list', 'the last of the list']), /the last of the list/],
    ['a sentence', sentence('What is signed.'), /What is signed/],
  ];

  it.each(endings)(
    'of signatures also holds the end of %s',
    async (_, part, end) => {
      let moved = 0;
      for (let count = 12; count <= 44; count += 2) {
        const pages = await pagesOf([...lines(count), part, ...signed]);
        const last = pages.find((page) => page.includes('Signed here'))!;
        expect(last, `${count} lines`).toMatch(end);
        expect(last).toContain('Below it.');
        if (pages.length > 1) moved++;
      }
      expect(moved).toBeGreaterThan(3);
    },
    60_000,
  );

  it('holds a short table whole', async () => {
    let moved = 0;
    for (let count = 20; count <= 44; count += 2) {
      const pages = await pagesOf([...lines(count), heading('Short'), table(columns, rowsOf(6), '')]);
      const where = pages.map((page) => [page.includes('Short'), (page.match(/row-/g) ?? []).length] as const);
      expect(
        where.filter(([, rows]) => rows > 0),
        `${count} lines`,
      ).toEqual([[true, 6]]);
      if (where.length > 1) moved++;
    }
    expect(moved).toBeGreaterThan(3);
  }, 60_000);

  it('says the heading again where a long table goes on', async () => {
    const pages = await pagesOf([heading('Sun 18 Jul'), table(columns, rowsOf(120), '')]);
    expect(pages.length).toBeGreaterThan(2);
    pages.slice(1).forEach((page) => expect(page).toContain('Sun 18 Jul, continued'));
    expect(pages[0]).not.toContain('continued');
  });

  it('begins a row higher than a page in the room that is left, and loses no word of it', async () => {
    const words = Array.from({ length: 900 }, (_, index) => `w${1000 + index}x`);
    const pages = await pagesOf([...lines(8), table(columns, [...rowsOf(2), [words.join(' '), 'told']], '')]);
    expect(pages[0]).toContain('w1000x');
    const said = new Set(pages.join(' ').split(/\s+/));
    expect(words.filter((word) => !said.has(word))).toEqual([]);
  });
});
