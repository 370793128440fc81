import { costWords, priceKinds, priceUnits, type PriceLine } from '#shared/vocabulary/money.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { Choice, EntryTable, Part, RemoveButton } from '../../components/fields.tsx';
import { PriceField } from '../../components/setting.tsx';
import { useDesk } from '../../desk/desk.ts';
import { change, emptyEntry, keepPrices, priceBookOf, useSettling } from '../../desk/settling.ts';

const kinds = priceKinds.map((kind) => [kind, `${costWords[kind]}, a ${priceUnits[kind]}`] as const);
const cuts = [
  ['', 'any cut'],
  ['thin', 'thin'],
  ['thick', 'thick'],
] as const;

/** Prices with the days they hold. What has no line on a day is taken from the venue’s own prices. */
export const PriceBookPart = ({ venue }: { venue: Venue }) => {
  const settling = useSettling();
  const book = priceBookOf(settling, venue.id);
  const put = (lines: readonly PriceLine[]): void => change({ prices: { ...book, lines } });
  const begin = (): PriceLine => ({
    kind: 'labour',
    of: null,
    cut: null,
    price: venue.workforce.hourPrice ?? 0,
    from: `${emptyEntry('').date.slice(0, 4)}-01-01`,
    until: null,
    origin: '',
  });
  return (
    <Part title="Price book">
      {book.lines.length > 0 && (
        <EntryTable
          caption={`Prices of the venue in ${venue.rules.currency}, each from a day to a day; an open end holds until another takes over`}
          heads={['For', 'Price', 'From and until', 'Where it stands']}
          end="Remove"
        >
          {book.lines.map((line, index) => (
            <Line
              key={index}
              line={line}
              number={index + 1}
              set={(changed) => put(book.lines.map((one, at) => (at === index ? { ...one, ...changed } : one)))}
              remove={() => put(book.lines.filter((_, at) => at !== index))}
            />
          ))}
        </EntryTable>
      )}
      <div className="row">
        <button type="button" onClick={() => put([...book.lines, begin()])}>
          Add a price
        </button>
        <button type="button" className="main" disabled={settling.prices === null} onClick={() => void keepPrices()}>
          Keep the price book
        </button>
        {settling.prices !== null && (
          <button type="button" onClick={() => change({ prices: null })}>
            Leave the prices as kept
          </button>
        )}
      </div>
    </Part>
  );
};

const Line = ({
  line,
  number,
  set,
  remove,
}: {
  line: PriceLine;
  number: number;
  set: (changed: Partial<PriceLine>) => void;
  remove: () => void;
}) => {
  const { venue, coverings } = useDesk();
  const of = line.kind === 'floor-hire' ? coverings : line.kind === 'sod' || line.kind === 'freight' ? venue!.farms : null;
  return (
    <tr>
      <td>
        <div className="pair">
          <Choice
            label={`Price ${number} is for`}
            value={line.kind}
            words={kinds}
            change={(kind) => set({ kind, of: null, cut: null })}
          />
          {of !== null && (
            <Choice
              label={`Price ${number} of`}
              value={line.of ?? ''}
              words={[['', 'any'], ...of.map(({ id, name }) => [id, name] as const)]}
              change={(id) => set({ of: id === '' ? null : id })}
            />
          )}
          {line.kind === 'sod' && (
            <Choice
              label={`Cut of price ${number}`}
              value={line.cut ?? ''}
              words={cuts}
              change={(cut) => set({ cut: cut === '' ? null : cut })}
            />
          )}
        </div>
      </td>
      <td>
        <PriceField label={`Price ${number}`} value={line.price} change={(price) => price !== null && set({ price })} />
      </td>
      <td>
        <div className="pair">
          <input
            type="date"
            aria-label={`Price ${number} holds from`}
            value={line.from}
            onChange={(event) => event.target.value && set({ from: event.target.value })}
          />
          <input
            type="date"
            aria-label={`Price ${number} holds until`}
            value={line.until ?? ''}
            onChange={(event) => set({ until: event.target.value === '' ? null : event.target.value })}
          />
        </div>
      </td>
      <td>
        <input
          type="text"
          aria-label={`Where price ${number} stands`}
          maxLength={400}
          title={line.origin}
          value={line.origin}
          onChange={(event) => set({ origin: event.target.value })}
        />
      </td>
      <td>
        <RemoveButton label={`Remove price ${number}`} remove={remove} />
      </td>
    </tr>
  );
};
