import { figure } from '#shared/units/quantity.ts';
import { costWords, exactMoney, fateWords, type BookingMoney } from '#shared/vocabulary/money.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { Part } from '../../components/fields.tsx';
import { correct } from '../../desk/settling.ts';

/** The account as it stands: the claim and how it comes about, the days that count, and every line. */
export const AccountPart = ({ money: { account, currency, terms } }: { money: BookingMoney }) => {
  const money = (value: number): string => exactMoney(value, currency);
  const cap = terms === null ? null : terms.cap;
  const rows: readonly (readonly [string, number])[] = [
    ['Cost of all lines', account.total],
    ['Chargeable, proven, found by the claim day', account.chargeable],
    ['Late-damage supplement', account.supplement],
    ['Less what the venue bears first', -account.excess],
    [cap === null ? 'Above the cap (none agreed)' : `Above the cap of ${money(cap)}`, -account.aboveCap],
    ['Claim', account.claim],
    ['Kept from the deposit', account.depositKept],
    ['Deposit to give back', account.depositReturned],
    ['Balance due', account.balanceDue],
    ['Borne by the venue', account.venueBears],
  ];
  return (
    <Part title="Account">
      <p className="claim">
        <strong>
          {terms === null ? 'No terms are entered: nothing can be claimed' : `Claim on ${terms.payer}: ${money(account.claim)}`}
        </strong>
        {account.claimBy !== null && ` to be made by ${dayWords(account.claimBy)}`}
        {account.lateBy !== null && `; damage that shows late by ${dayWords(account.lateBy)}`}.
        {account.unproven > 0 && ` ${money(account.unproven)} is not claimed: no evidence is named.`}
        {account.tooLate > 0 && ` ${money(account.tooLate)} came after the last day.`}
        {account.otherCurrency > 0 && ` ${account.otherCurrency} lines in another currency are in no sum.`}
      </p>
      <table className="sums">
        <caption>How the claim comes about</caption>
        <tbody>
          {rows.map(([words, value]) => (
            <tr key={words} className={words === 'Claim' ? 'chosen' : ''}>
              <th scope="row">{words}</th>
              <td>{money(value)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {account.lines.length === 0 ? <p className="empty">No line of cost is entered yet.</p> : <Lines account={account} />}
    </Part>
  );
};

const Lines = ({ account }: { account: BookingMoney['account'] }) => (
  <div className="scroll">
    <table className="lines">
      <caption>Actual costs and hours, {account.currency}; a line is never changed, a correction names the old one</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Day</th>
          <th scope="col">What</th>
          <th scope="col">Quantity</th>
          <th scope="col">Sum</th>
          <th scope="col">Clause</th>
          <th scope="col">Charged</th>
          <th scope="col">Venue</th>
          <th scope="col">State, proof</th>
          <th scope="col">
            <span className="for-readers">Correct</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {account.lines.map(({ entry, fate, charged, own }) => (
          <tr key={entry.number} className={fate === 'corrected' ? 'past' : ''}>
            <th scope="row">
              {entry.number}
              {entry.corrects !== null && ` for ${entry.corrects}`}
            </th>
            <td className="short">{entry.date}</td>
            <td className="words">
              {costWords[entry.kind]}: {entry.words}
              {entry.zone !== null && `, ${entry.zone}`}
            </td>
            <td>
              {figure(entry.quantity, Number.isInteger(entry.quantity) ? 0 : 2)} {entry.unit}
            </td>
            <td className="sum">{exactMoney(entry.sum, entry.currency).slice(4)}</td>
            <td>{entry.clause ?? '–'}</td>
            <td className="sum">{exactMoney(charged, entry.currency).slice(4)}</td>
            <td className="sum">{exactMoney(own, entry.currency).slice(4)}</td>
            <td className="words">
              {fateWords[fate]}
              {entry.evidence !== '' && `, ${entry.evidence}`}
            </td>
            <td className="short">
              {fate !== 'corrected' && (
                <button type="button" aria-label={`put right: line ${entry.number}`} onClick={() => correct(entry)}>
                  put right
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
