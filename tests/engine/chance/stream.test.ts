import { describe, expect, test } from 'vitest';
import { normal, streamFor } from '#engine/chance/stream.ts';

const take = (stream: () => number, count: number): number[] => Array.from({ length: count }, stream);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const correlation = (a: readonly number[], b: readonly number[]): number => {
  const [ma, mb] = [mean(a), mean(b)];
  const product = mean(a.map((value, i) => (value - ma) * (b[i]! - mb)));
  return product / Math.sqrt(mean(a.map((value) => (value - ma) ** 2)) * mean(b.map((value) => (value - mb) ** 2)));
};

describe('streams of chance', () => {
  test('the same name gives the same numbers', () => {
    expect(take(streamFor(7, 'rain', 3), 50)).toEqual(take(streamFor(7, 'rain', 3), 50));
  });

  test('another seed, purpose or index gives others, unrelated', () => {
    const base = take(streamFor(7, 'rain', 3), 20_000);
    for (const other of [streamFor(8, 'rain', 3), streamFor(7, 'wind', 3), streamFor(7, 'rain', 4), streamFor(-7, 'rain', 3)])
      expect(Math.abs(correlation(base, take(other, 20_000)))).toBeLessThan(0.03);
  });

  test('no two of a thousand members share a stretch', () => {
    const starts = new Set<number>();
    for (let member = 0; member < 1000; member++)
      for (const value of take(streamFor(1, 'weather', member), 200)) starts.add(value);
    // 200,000 draws of 2³² values: about five meet by chance, a shared stretch would lose hundreds.
    expect(starts.size).toBeGreaterThan(200_000 - 40);
  });

  test('uniform on [0, 1) and normal with mean 0 and deviation 1', () => {
    const uniform = take(streamFor(1, 'even'), 100_000);
    expect(Math.min(...uniform.slice(0, 50_000))).toBeGreaterThanOrEqual(0);
    expect(Math.max(...uniform.slice(0, 50_000))).toBeLessThan(1);
    expect(mean(uniform)).toBeCloseTo(0.5, 2);
    const counts = new Int32Array(20);
    for (const value of uniform) counts[Math.floor(value * 20)]!++;
    // χ² with 19 degrees of freedom: 43.8 is passed once in a thousand.
    expect(counts.reduce((sum, count) => sum + (count - 5000) ** 2 / 5000, 0)).toBeLessThan(43.8);
    const stream = streamFor(2, 'bell');
    const bell = Array.from({ length: 100_000 }, () => normal(stream));
    expect(Math.abs(mean(bell))).toBeLessThan(0.01);
    expect(Math.sqrt(mean(bell.map((value) => value ** 2)))).toBeCloseTo(1, 2);
    expect(Math.abs(correlation(bell.slice(1), bell.slice(0, -1)))).toBeLessThan(0.01);
  });
});
