import { describe, expect, it } from 'vitest';
import { textOf, textProblem } from '#platform/weather-files/weather-text.ts';

const bytes = (text: string, encoding: 'utf8' | 'utf16le' | 'latin1' = 'utf8') => new Uint8Array(Buffer.from(text, encoding));

describe('the text of a file', () => {
  it('UTF-8 with and without its mark, and the Western one-byte encoding', () => {
    expect(textOf(bytes('\uFEFFdate;tmax (°C)'))).toEqual({ text: 'date;tmax (°C)' });
    expect(textOf(bytes('date;tmax (°C)'))).toEqual({ text: 'date;tmax (°C)' });
    expect(textOf(bytes('date;tmax (°C)', 'latin1'))).toEqual({ text: 'date;tmax (°C)' });
  });

  it('UTF-16 with and without its mark is named as what it is', () => {
    for (const text of ['\uFEFFdate,tmax', 'date,tmax']) {
      expect(textOf(bytes(text, 'utf16le'))).toEqual({ problem: expect.stringMatching(/UTF-16/) });
    }
    const swapped = bytes('\uFEFFdate', 'utf16le');
    for (let i = 0; i < swapped.length; i += 2) [swapped[i], swapped[i + 1]] = [swapped[i + 1]!, swapped[i]!];
    expect(textOf(swapped)).toEqual({ problem: expect.stringMatching(/UTF-16/) });
  });

  it('size is judged before the content', () => {
    expect(textProblem('', 200e6)).toMatch(/200 MB/);
    expect(textOf(new Uint8Array(50_000_001))).toEqual({ problem: expect.stringMatching(/50 MB/) });
    expect(textProblem('date,tmax')).toBeNull();
  });

  it('other binary files are not text', () => {
    expect(textProblem('\u0000\u0000\u0000binary')).toMatch(/not text/);
  });
});
