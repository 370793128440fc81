import { useEffect } from 'react';
import { useDesk } from '../../desk/desk.ts';
import { readMoney, useSettling } from '../../desk/settling.ts';
import { Trouble } from '../../margin/trouble.tsx';
import { AccountPart } from './account-part.tsx';
import { CostEntry } from './cost-entry.tsx';
import { EstimatePart } from './estimate-part.tsx';
import { PriceBookPart } from './price-book-part.tsx';
import { TermsPart } from './terms-part.tsx';
import './settle.css';

/** Who pays what, and until when: what was agreed, what things cost, what was foreseen, and what it cost in fact. */
export const Settle = () => {
  const { venue, stored, plan } = useDesk();
  const { money } = useSettling();
  useEffect(() => void readMoney(), [venue?.id, stored?.id, plan?.id]);
  return (
    <section className="settle" aria-labelledby="settle">
      <h2 id="settle">Settle{stored ? `: ${stored.name}` : ''}</h2>
      <Trouble />
      {!venue || !stored ? (
        <p className="empty">Money belongs to a stored booking. Store the booking first, under “book”.</p>
      ) : (
        money && (
          <>
            <AccountPart money={money} />
            <CostEntry booking={stored} money={money} />
            <EstimatePart />
            <TermsPart booking={stored} />
            <PriceBookPart venue={venue} />
          </>
        )
      )}
    </section>
  );
};
