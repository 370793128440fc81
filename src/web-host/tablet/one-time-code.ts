import { randomInt, timingSafeEqual } from 'node:crypto';

/** Wrong codes in a row after which nobody is let in any more. */
export const mostWrongCodes = 5;

export type CodeAnswer = 'right' | 'wrong' | 'shut';

/** Eight digits that let one tablet in, once; then there is another code. Five wrong ones in a row and none is right any more. */
export interface OneTimeCode {
  /** "4821 9037" */
  shown(): string;
  try(given: string): CodeAnswer;
}

const draw = (): string => String(randomInt(0, 1e8)).padStart(8, '0');

export const oneTimeCode = (): OneTimeCode => {
  let code = draw();
  let wrong = 0;
  return {
    shown: () => `${code.slice(0, 4)} ${code.slice(4)}`,
    try: (given) => {
      if (wrong >= mostWrongCodes) return 'shut';
      const digits = Buffer.from(given.replace(/\D/g, '').slice(0, 8).padEnd(8, 'x'));
      if (timingSafeEqual(digits, Buffer.from(code))) {
        wrong = 0;
        code = draw();
        return 'right';
      }
      wrong += 1;
      return wrong >= mostWrongCodes ? 'shut' : 'wrong';
    },
  };
};
