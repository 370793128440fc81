import { showMoney, minorDigits } from '#shared/units/quantity.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chargedPart, entryKinds, exactMoney, sumOf, type MoneyEntry, type MoneyTerms } from '#shared/vocabulary/money.ts';
import { accountOf } from '#services/money/account.ts';

const terms: MoneyTerms = {
  bookingId: 'concert',
  revision: 1,
  payer: 'Promoter of the tests',
  deposit: 40_000_00,
  cap: 80_000_00,
  excess: 0,
  claimDays: 30,
  lateDays: 45,
  handedBack: '2026-06-08T12:00',
  clauses: [{ number: '7.2', words: 'Turf to be replaced.', kinds: ['sod', 'freight', 'labour'], share: 100 }],
};

let counter = 0;
const line = (changes: Partial<MoneyEntry>): MoneyEntry => ({
  bookingId: 'concert',
  number: ++counter,
  enteredAt: '2026-06-09T12:00:00.000Z',
  currency: 'USD',
  date: '2026-06-09',
  kind: 'sod',
  zone: null,
  words: 'Sod',
  quantity: 1,
  unit: 'm²',
  price: changes.sum ?? 100,
  sum: 100,
  chargedShare: 100,
  clause: '7.2',
  evidence: 'invoice',
  corrects: null,
  ...changes,
});
const numbered = (entries: readonly MoneyEntry[]): MoneyEntry[] => entries.map((entry, at) => ({ ...entry, number: at + 1 }));

describe('one line', () => {
  it('is quantity times price, rounded once, half up', () => {
    expect(sumOf(3595.2, 1450)).toBe(5_213_040);
    expect(sumOf(0.5, 1)).toBe(1);
    expect(sumOf(0.499, 1)).toBe(0);
    // In floating numbers 1.005 × 100 is 100.49999999999999.
    expect(sumOf(1.005, 100)).toBe(101);
    expect(sumOf(1_000_000, 1_000_000)).toBe(1_000_000_000_000);
  });
  it('is exact wherever whole arithmetic can check it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 1e9 }), (thousandths, price) => {
        const exact = BigInt(thousandths) * BigInt(price);
        const got = BigInt(sumOf(thousandths / 1000, price)) * 1000n;
        const off = got - exact;
        expect(off > -500n && off <= 500n).toBe(true);
      }),
    );
  });
  it('is split without a rest', () => {
    expect(chargedPart(101, 50)).toBe(51);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e12 }), fc.integer({ min: 0, max: 100 }), (sum, share) => {
        const part = chargedPart(sum, share);
        expect(Number.isSafeInteger(part)).toBe(true);
        expect(part).toBeGreaterThanOrEqual(0);
        expect(part).toBeLessThanOrEqual(sum);
        expect(chargedPart(sum, 100)).toBe(sum);
        expect(chargedPart(sum, 0)).toBe(0);
      }),
    );
  });
});

describe('the account of a booking', () => {
  // A show on 6 June with a cap of 80,000, 40,000 deposited and 30 days to claim: the shape of a true-up in the trade.
  it('holds a claim to its cap, keeps the deposit first and asks for the rest', () => {
    const entries = numbered([
      line({ kind: 'sod', sum: 52_000_00 }),
      line({ kind: 'freight', sum: 11_000_00 }),
      line({ kind: 'labour', sum: 21_500_50 }),
      line({ kind: 'other', sum: 3_000_00, chargedShare: 0, clause: null }),
    ]);
    const account = accountOf('USD', terms, entries, '2026-06-08T12:00');
    expect(account).toMatchObject({
      total: 87_500_50,
      chargeable: 84_500_50,
      claim: 80_000_00,
      aboveCap: 4_500_50,
      depositKept: 40_000_00,
      depositReturned: 0,
      balanceDue: 40_000_00,
      venueBears: 7_500_50,
      claimBy: '2026-07-08',
      lateBy: '2026-07-23',
    });
  });

  it('gives the rest of a deposit back', () => {
    const account = accountOf('USD', { ...terms, excess: 1_000_00 }, numbered([line({ sum: 9_000_00 })]), null);
    expect(account).toMatchObject({
      excess: 1_000_00,
      claim: 8_000_00,
      depositKept: 8_000_00,
      depositReturned: 32_000_00,
      balanceDue: 0,
    });
  });

  it('tells what is late, too late and unproven, and claims neither of the last two', () => {
    const entries = numbered([
      line({ date: '2026-07-08', sum: 1 }),
      line({ date: '2026-07-09', sum: 10 }),
      line({ date: '2026-07-23', sum: 100 }),
      line({ date: '2026-07-24', sum: 1_000 }),
      line({ date: '2026-06-09', sum: 10_000, evidence: '' }),
    ]);
    const account = accountOf('USD', terms, entries, null);
    expect(account.lines.map(({ fate }) => fate)).toEqual(['claimed', 'late', 'late', 'too-late', 'unproven']);
    expect(account).toMatchObject({ chargeable: 1, supplement: 110, tooLate: 1_000, unproven: 10_000, claim: 111 });
  });

  it('counts a correction in the place of what it puts right', () => {
    const entries = numbered([line({ sum: 500 }), line({ sum: 300, corrects: 1 }), line({ sum: 7 })]);
    const account = accountOf('USD', terms, entries, null);
    expect(account.total).toBe(307);
    expect(account.lines[0]).toMatchObject({ fate: 'corrected', charged: 0, own: 0 });
  });

  it('charges nobody without terms, and leaves other currencies out of every sum', () => {
    expect(accountOf('USD', null, numbered([line({ sum: 500 })]), null)).toMatchObject({ claim: 0, venueBears: 500 });
    const mixed = accountOf('EUR', terms, numbered([line({ sum: 500 }), line({ sum: 40, currency: 'EUR' })]), null);
    expect(mixed).toMatchObject({ total: 40, otherCurrency: 1 });
  });

  it('adds up, whatever the lines and the terms', () => {
    const anyLine = fc.record({
      kind: fc.constantFrom(...entryKinds),
      sum: fc.integer({ min: 0, max: 1e10 }),
      chargedShare: fc.integer({ min: 0, max: 100 }),
      date: fc.constantFrom('2026-06-09', '2026-07-15', '2026-09-01'),
      evidence: fc.constantFrom('', 'invoice'),
      clause: fc.constantFrom('7.2', '7.3'),
    });
    const anyTerms = fc.record({
      deposit: fc.integer({ min: 0, max: 1e9 }),
      cap: fc.option(fc.integer({ min: 0, max: 1e10 })),
      excess: fc.integer({ min: 0, max: 1e9 }),
    });
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 30 }), anyTerms, fc.integer({ min: 0, max: 40 }), (lines, agreed, wrong) => {
        const entries = numbered(lines.map((one) => line(one))).map((entry) => ({
          ...entry,
          corrects: wrong > 0 && wrong < entry.number && entry.number === lines.length ? wrong : null,
        }));
        const account = accountOf('USD', { ...terms, ...agreed }, entries, null);
        const standing = account.lines.filter(({ fate }) => fate !== 'corrected');
        const add = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
        for (const one of standing) expect(one.charged + one.own).toBe(one.entry.sum);
        expect(add(standing.map(({ entry }) => entry.sum))).toBe(account.total);
        expect(add(account.byKind.map(({ total }) => total))).toBe(account.total);
        for (const kind of account.byKind) expect(kind.charged + kind.own).toBe(kind.total);
        expect(add(account.byClause.map(({ charged }) => charged))).toBe(account.chargeable + account.supplement);
        expect(account.claim + account.venueBears).toBe(account.total);
        expect(account.excess + account.aboveCap + account.claim).toBe(account.chargeable + account.supplement);
        expect(account.depositKept + account.depositReturned).toBe(agreed.deposit);
        expect(account.depositKept + account.balanceDue).toBe(account.claim);
        expect(account.claim).toBeLessThanOrEqual(agreed.cap ?? Infinity);
        for (const value of [account.claim, account.venueBears, account.balanceDue, account.depositReturned])
          expect(Number.isSafeInteger(value) && value >= 0).toBe(true);
      }),
    );
  });
});

describe('money in words', () => {
  // ISO 4217 (2015), list one: minor units of USD and EUR 2, JPY 0, KWD 3.
  it('has the decimals of its currency', () => {
    expect([minorDigits('USD'), minorDigits('EUR'), minorDigits('JPY'), minorDigits('KWD')]).toEqual([2, 2, 0, 3]);
    // In the same list, and not as number formats by usage have them: AFN, LBP and IDR 2, UGX 0, CLF 4.
    expect(['AFN', 'LBP', 'IDR', 'UGX', 'CLF'].map(minorDigits)).toEqual([2, 2, 2, 0, 4]);
    expect(showMoney(123_456, 'KWD')).toBe('KWD 123');
    expect(exactMoney(7_071_992, 'USD')).toBe('USD 70,719.92');
    expect(exactMoney(5, 'USD')).toBe('USD 0.05');
    expect(exactMoney(7_071_992, 'JPY')).toBe('JPY 7,071,992');
    expect(exactMoney(-1_234, 'KWD')).toBe('KWD −1.234');
    expect(showMoney(7_071_992, 'USD')).toBe('USD 70,720');
    expect(showMoney(7_071_992, 'JPY')).toBe('JPY 7,071,992');
  });
});
