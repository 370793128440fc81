import type { Problem } from '#shared/contract/failure.ts';
import type { PriceLine } from '#shared/vocabulary/money.ts';
import { invalid, notFound, storedAnswer } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** Keeps the price book of a venue. No two lines for the same thing may hold on the same day. */
export const setPrices: Service<'money/set-prices'> = ({ store }, { book }) =>
  store.write(async (contents) => {
    if (!(await contents.venues.find(book.venueId))) return notFound('venue', book.venueId);
    const problems = overlapping(book.lines);
    if (problems.length > 0) return invalid(problems);
    return storedAnswer(await contents.money.savePriceBook(book), 'price book', book.venueId, book.revision);
  });

const thingOf = (line: PriceLine): string => `${line.kind} ${line.of ?? ''} ${line.cut ?? ''}`;

const overlapping = (lines: readonly PriceLine[]): readonly Problem[] =>
  lines.flatMap((line, index) => {
    const other = lines.findIndex(
      (before, at) =>
        at < index &&
        thingOf(before) === thingOf(line) &&
        (before.until === null || line.from <= before.until) &&
        (line.until === null || before.from <= line.until),
    );
    return other < 0 ? [] : [{ field: `book.lines.${index}.from`, reason: `holds on days on which line ${other + 1} holds` }];
  });
