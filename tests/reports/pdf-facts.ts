import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';

/** What the bytes of a PDF say of themselves, read without any PDF library: pages, embedded fonts, tags, language. */
export const pdfFacts = (bytes: Uint8Array) => {
  const raw = Buffer.from(bytes).toString('latin1');
  const pages = pageStreams(Buffer.from(bytes));
  return {
    begins: raw.slice(0, 8),
    ends: raw.trimEnd().endsWith('%%EOF'),
    pages: count(raw, /\/Type \/Page\b/g),
    embeddedFonts: count(raw, /\/FontFile[23]? \d+ 0 R/g),
    fonts: count(raw, /\/Type \/FontDescriptor/g),
    unicodeMaps: count(raw, /\/ToUnicode \d+ 0 R/g),
    compositeFonts: count(raw, /\/Subtype \/Type0/g),
    marked: /\/Marked true/.test(raw),
    language: /\/Lang \(en\)/.test(raw),
    elements: (type: string): number => count(raw, new RegExp(`/S /${type}\\b`, 'g')),
    /** Pages whose text could be read here. */
    read: pages.length,
    /** Marked content is ended as often as it is begun. */
    balanced: pages.every((page) => count(page, /\b(BDC|BMC)\b/g) === count(page, /\bEMC\b/g)),
    /** Text that belongs to no element and is no ornament either. */
    untagged: pages.flatMap(textOutsideMarks),
  };
};

const count = (text: string, pattern: RegExp): number => (text.match(pattern) ?? []).length;

const pageStreams = (bytes: Buffer): readonly string[] => {
  const texts: string[] = [];
  for (let at = bytes.indexOf('\nstream\n'); at >= 0; at = bytes.indexOf('\nstream\n', at + 8)) {
    const end = bytes.indexOf('\nendstream', at);
    if (end < 0) break;
    try {
      texts.push(inflateSync(bytes.subarray(at + 8, end)).toString('latin1'));
    } catch {
      // Packed in another way: a picture.
    }
  }
  return texts.filter((text) => /\bBT\n/.test(text) && / Tf\n/.test(text));
};

/** Lines that draw text while no marked content is open. */
const textOutsideMarks = (page: string): readonly string[] => {
  let depth = 0;
  const outside: string[] = [];
  for (const line of page.split('\n')) {
    if (/\b(BDC|BMC)$/.test(line)) depth++;
    else if (line === 'EMC') depth--;
    else if (/\bT[Jj]$/.test(line) && depth === 0) outside.push(line);
  }
  return outside;
};

/** Whether a program of this machine can be called. */
export const has = (program: string): boolean => {
  try {
    execFileSync(program, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

const withFile = <Result>(bytes: Uint8Array, use: (file: string) => Result): Result => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-paper-'));
  try {
    const file = join(folder, 'paper.pdf');
    writeFileSync(file, bytes);
    return use(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** What pdftotext reads, page by page: laid out as it is seen, or in the order it is written in. */
export const textOf = (bytes: Uint8Array, order: 'layout' | 'raw' = 'layout'): readonly string[] =>
  withFile(bytes, (file) =>
    execFileSync('pdftotext', [`-${order}`, '-enc', 'UTF-8', file, '-'], { encoding: 'utf8', maxBuffer: 2 ** 26 })
      .split('\f')
      .slice(0, -1),
  );

/** Lines of pdffonts below its head: name, type, encoding, whether embedded, a subset, and mapped to Unicode. */
export const fontsOf = (bytes: Uint8Array): readonly string[] =>
  withFile(bytes, (file) =>
    execFileSync('pdffonts', [file], { encoding: 'utf8' })
      .split('\n')
      .slice(2)
      .filter((line) => line !== ''),
  );

/**
 * Share of ink of every page as pdftoppm draws it, dark pixels in the outermost strip, where nothing may stand, and how far down the page
 * its contents reach above the foot, 0–1.
 */
export const drawn = (bytes: Uint8Array): readonly { readonly ink: number; readonly edge: number; readonly reach: number }[] =>
  withFile(bytes, (file) => greyPages(execFileSync('pdftoppm', ['-r', '36', '-gray', file], { maxBuffer: 2 ** 28 })));

const strip = 8;
/** Below it the footnote and the page number stand. */
const footFrom = 0.92;
const greyPages = (out: Buffer): { ink: number; edge: number; reach: number }[] => {
  const pages: { ink: number; edge: number; reach: number }[] = [];
  for (let at = 0; at < out.length;) {
    const head = /^P5\n(\d+) (\d+)\n255\n/.exec(out.subarray(at, at + 40).toString('latin1'))!;
    const [width, height] = [Number(head[1]), Number(head[2])];
    const pixels = out.subarray(at + head[0].length, at + head[0].length + width * height);
    let [dark, edge, lowest] = [0, 0, 0];
    pixels.forEach((grey, index) => {
      if (grey > 200) return;
      dark++;
      const [x, y] = [index % width, Math.floor(index / width)];
      if (y < footFrom * height) lowest = y;
      if (x < strip || y < strip || x >= width - strip || y >= height - strip) edge++;
    });
    pages.push({ ink: dark / pixels.length, edge, reach: lowest / height });
    at += head[0].length + width * height;
  }
  return pages;
};
