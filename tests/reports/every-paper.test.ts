import { describe, expect, it } from 'vitest';
import { paperKinds } from '#shared/contract/contract.ts';
import { printSheet } from '#reports/print-sheet.ts';
import { everySheet, type PrintedKind } from '#reports/sheets/every-sheet.ts';
import { sentence } from '#reports/sheet.ts';
import { crowdedPapers, longest } from '#tests/reports/crowded-papers.ts';
import { examplePapers, wishes } from '#tests/reports/example-papers.ts';
import { drawn, fontsOf, has, pdfFacts, textOf } from '#tests/reports/pdf-facts.ts';

const kinds = Object.keys(everySheet) as PrintedKind[];
const usual = examplePapers();
const crowded = await crowdedPapers();
const printAnew = (kind: PrintedKind, papers = usual, changes: Partial<typeof wishes> = {}): Promise<Uint8Array> =>
  printSheet(everySheet[kind](papers, changes.units ?? 'si'), { ...wishes, ...changes });
const printed = new Map<string, Promise<Uint8Array>>();
/** A paper that many tests look at is printed once. */
const print = (kind: PrintedKind, papers = usual, changes: Partial<typeof wishes> = {}): Promise<Uint8Array> => {
  const name = [kind, papers === usual, changes.paper ?? wishes.paper, changes.units ?? wishes.units].join();
  const known = printed.get(name) ?? printAnew(kind, papers, changes);
  printed.set(name, known);
  return known;
};

/** Papers that hold to a number of pages on an ordinary event. */
const mostPages: Partial<Record<PrintedKind, number>> = {
  'meeting-sheet': 1,
  'hold-answer': 1,
  'recovery-chart': 1,
  'promoter-map': 1,
  'field-use-conditions': 2,
  'night-before': 2,
  'recovery-report': 4,
};

/** The same for forty zones: what is looked at in a meeting stays short. */
const mostPagesCrowded: Partial<Record<PrintedKind, number>> = {
  'meeting-sheet': 1,
  'hold-answer': 1,
  'recovery-chart': 2,
  'promoter-map': 2,
  'field-use-conditions': 2,
  'night-before': 2,
};

describe('every paper', () => {
  it('has a sheet, and every sheet a kind', () => {
    expect(kinds.toSorted()).toEqual(paperKinds.filter((kind) => kind !== 'calendar' && !kind.endsWith('-table')).toSorted());
  });

  it.each(kinds)('%s is plain data before it is print', (kind) => {
    const sheet = everySheet[kind](usual, 'si');
    expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet);
    expect(JSON.stringify(everySheet[kind](usual, 'si'))).toBe(JSON.stringify(sheet));
    expect(JSON.stringify(sheet)).not.toMatch(/undefined|NaN|\[object/);
  });

  it.each(kinds)('%s is a tagged PDF with its fonts and its language, on both papers', async (kind) => {
    for (const paper of ['letter', 'a4'] as const) {
      const facts = pdfFacts(await print(kind, usual, { paper }));
      expect(facts).toMatchObject({ begins: '%PDF-1.7', ends: true, marked: true, language: true, balanced: true });
      expect(facts.fonts).toBeGreaterThan(0);
      expect(facts.embeddedFonts).toBe(facts.fonts);
      expect(facts.unicodeMaps).toBe(facts.compositeFonts);
      expect(facts.elements('H1')).toBe(1);
      expect(facts.read).toBe(facts.pages);
      expect(facts.untagged).toEqual([]);
      expect(facts.pages).toBeLessThanOrEqual(mostPages[kind] ?? 10);
    }
  });

  it.each(kinds)('%s: the same run, the same bytes; only the stated time may differ', async (kind) => {
    const one = Buffer.from(await print(kind));
    expect(Buffer.from(await printAnew(kind)).equals(one)).toBe(true);
    const sheet = everySheet[kind](usual, 'si');
    const at = { ...sheet.title, createdAt: sheet.title.createdAt + 86_400_000 };
    const later = Buffer.from(await printSheet({ ...sheet, title: at }, wishes));
    expect(later.equals(one)).toBe(false);
    const timeless = (bytes: Buffer): string =>
      bytes
        .toString('latin1')
        .replace(/\(D:\d+Z\)/g, '(D)')
        .replace(/\/ID \[[^\]]*\]/g, '/ID')
        .replace(/\d{4}-\d\d-\d\dT[\d:.]+Z?/g, 'T');
    expect(timeless(later)).toBe(timeless(one));
  });

  it.each(kinds)(
    '%s holds forty zones and two hundred jobs',
    async (kind) => {
      const facts = pdfFacts(await print(kind, crowded));
      expect(facts.balanced).toBe(true);
      expect(facts.read).toBe(facts.pages);
      expect(facts.untagged).toEqual([]);
      expect(facts.pages).toBeLessThanOrEqual(mostPagesCrowded[kind] ?? 15);
    },
    60_000,
  );

  it('is in the reader’s units', () => {
    const said = JSON.stringify(everySheet['sod-order'](usual, 'us').parts);
    // 200 m² at 10.7639 ft² to the m².
    expect(said).toContain('2,153 ft²');
    expect(said).not.toContain(' m²');
  });
});

describe.skipIf(!has('pdftotext'))('read by pdftotext (skipped where it is not installed)', () => {
  it.each(kinds)('%s: its name and the page number on every page, forty zones', async (kind) => {
    const { title } = everySheet[kind](crowded, 'si');
    const pages = textOf(await print(kind, crowded));
    pages.forEach((text, index) => {
      expect(text).toContain(title.paper);
      // Neither of two long names pushes the other off the page.
      expect(text).toContain(title.venue.slice(0, 20));
      expect(text).toContain(title.subject.slice(0, 14));
      expect(text).toContain(`page ${index + 1} of ${pages.length}`);
    });
  });

  it('no row is torn: the lines of each hour stand together on one page', async () => {
    const pages = textOf(await print('shift-sheet', crowded)).map((text) => text.split('\n').map((line) => line.trim()));
    const sheet = everySheet['shift-sheet'](crowded, 'si');
    const rows = sheet.parts.flatMap((part) => (part.part === 'table' ? part.rows : []));
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) {
      const lines = row[1]!.split('\n').filter((line) => line !== '–');
      const holds = pages.some((page) => lines.every((line) => page.some((text) => text.includes(line.slice(0, 20)))));
      expect(holds, row.join(' | ')).toBe(true);
    }
  });

  it.each(kinds)('%s: no word of a column head is torn', async (kind) => {
    const heads = everySheet[kind](usual, 'si').parts.flatMap((part) =>
      part.part === 'table' && part.rows.length > 0 ? part.columns.flatMap(({ head }) => head.split(/\s+/)) : [],
    );
    for (const paper of ['letter', 'a4'] as const) {
      const words = new Set(
        textOf(await print(kind, usual, { paper }))
          .join('\n')
          .split(/\s+/),
      );
      for (const word of heads) if (word !== '') expect(words, `${paper}: ${word}`).toContain(word);
    }
  });

  it('every zone and every truck of a crowded field is there', async () => {
    const report = textOf(await print('recovery-report', crowded))
      .join('\n')
      .replace(/ +/g, ' ');
    for (const zone of crowded.forecast.result.zones) expect(report).toContain(`${zone.letter} Part ${zone.name.split(' ')[1]!}`);
    const order = textOf(await print('sod-order', crowded)).join('\n');
    expect((order.match(/8\.3 h/g) ?? []).length).toBe(60);
  });

  it('a page is not begun for a few lines, nor all the print made small for a long paper', async () => {
    const printed = (count: number) => {
      const lines = Array.from({ length: count }, (_, index) => sentence(`Line ${index + 1} of the tests.`));
      return printSheet({ ...everySheet['hold-answer'](usual, 'si'), pages: null, parts: lines }, wishes);
    };
    let [one, two] = [0, 0];
    for (let count = 25; count <= 65; count += 2) {
      const pages = textOf(await printed(count));
      const onLast = (pages.at(-1)!.match(/of the tests/g) ?? []).length;
      if (pages.length === 1) one++;
      else {
        two++;
        expect(onLast, `${count} lines`).toBeGreaterThan(5);
      }
    }
    expect(one).toBeGreaterThan(5);
    expect(two).toBeGreaterThan(5);
  }, 60_000);

  it('every zone carries its letter on each of the three maps, however small', async () => {
    const [front] = textOf(await print('recovery-report', crowded));
    const words = front!.split(/\s+/);
    for (const { letter } of crowded.forecast.result.zones)
      expect(words.filter((word) => word === letter).length, letter).toBeGreaterThanOrEqual(3);
  });

  it('zones stand in the order of the field: A to Z, then AA', async () => {
    for (const kind of ['night-before', 'recovery-report'] as const) {
      const tables = everySheet[kind](crowded, 'si').parts.flatMap((part) => (part.part === 'table' ? [part] : []));
      const listed = tables
        .filter(({ columns }) => columns[0]!.head === 'Zone')
        .map(({ rows }) => [...new Set(rows.map((row) => row[0]!.split(' ')[0]!))])
        .filter((letters) => letters.length >= 40);
      expect(listed.length).toBeGreaterThan(0);
      for (const letters of listed) expect(letters.slice(24, 28)).toEqual(['Y', 'Z', 'AA', 'AB']);
    }
  });

  it.each(['recovery-report', 'charge-back'] as const)('%s: of words longer than a page not one is cut', async (kind) => {
    const words = new Set(
      textOf(await print(kind, crowded))
        .join(' ')
        .split(/\s+/),
    );
    expect(longest.filter((word) => !words.has(word))).toEqual([]);
  });

  it.each(kinds)('%s: headings are read in the order of the sheet', async (kind) => {
    const said = everySheet[kind](usual, 'si').parts.flatMap((part) => (part.part === 'heading' ? [part.text] : []));
    const text = textOf(await print(kind), 'raw')
      .join(' ')
      .replace(/\s+/g, ' ');
    let at = 0;
    for (const words of said) {
      const found = text.indexOf(words.replace(/\s+/g, ' '), at);
      expect(found, words).toBeGreaterThanOrEqual(at);
      at = found + 1;
    }
  });

  it.each(kinds)('%s: pdffonts finds every font embedded, a part of it only, and readable as Unicode', async (kind) => {
    const fonts = fontsOf(await print(kind, crowded));
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/ yes +yes +yes /);
  });

  it('a heading never stands alone at the foot of a page', async () => {
    for (const kind of kinds) {
      const headings = new Set(
        everySheet[kind](crowded, 'si').parts.flatMap((part) => (part.part === 'heading' ? [part.text] : [])),
      );
      for (const page of textOf(await print(kind, crowded))) {
        const lines = page
          .split('\n')
          .map((line) => line.trim())
          .filter((line) => line !== '');
        // The last line is the footnote.
        expect(headings.has(lines.at(-2)!), `${kind}: ${lines.at(-2)}`).toBe(false);
      }
    }
  }, 120_000);

  it('signatures have no page of their own, small or crowded', async () => {
    for (const papers of [usual, crowded])
      for (const kind of kinds)
        for (const paper of papers === usual ? (['letter', 'a4'] as const) : (['letter'] as const)) {
          const sheet = everySheet[kind](papers, 'si');
          const labels = sheet.parts.flatMap((part) => (part.part === 'blanks' ? part.labels : []));
          if (labels.length === 0) continue;
          const pages = textOf(await print(kind, papers, { paper }));
          const last = pages.at(-1)!.split('\n');
          if (pages.length === 1 || !last.some((line) => line.includes(labels.at(-1)!))) continue;
          const below = sheet.parts.flatMap((part) => (part.part === 'small' ? part.text.split(' ') : []));
          const others = last
            .map((line) => line.trim())
            .filter(
              (line) => line !== '' && line !== 'Signed' && !/ page \d+ of /.test(line) && !line.startsWith(sheet.title.paper),
            )
            .filter((line) => !line.split(/ {2,}/).every((words) => labels.includes(words)))
            .filter((line) => !line.split(' ').every((word) => below.includes(word)));
          expect(others.length, `${kind}, ${paper}`).toBeGreaterThan(0);
        }
  }, 120_000);
});

describe.skipIf(!has('pdftoppm'))('drawn by pdftoppm (skipped where it is not installed)', () => {
  it.each(kinds)(
    '%s: on both papers ink on every page, none at its edges, and no page left nearly empty before the last',
    async (kind) => {
      for (const paper of ['letter', 'a4'] as const) {
        const pages = drawn(await print(kind, crowded, { paper }));
        pages.forEach(({ ink, edge, reach }, index) => {
          expect(ink).toBeGreaterThan(0.002);
          expect(edge).toBe(0);
          // A row as high as a page may leave the rest of the one before it.
          if (index < pages.length - 1) expect(reach, `${paper}, page ${index + 1}`).toBeGreaterThan(0.3);
        });
        expect(pages.length, paper).toBeLessThanOrEqual(mostPagesCrowded[kind] ?? 15);
      }
    },
    60_000,
  );
});
