import type { Failure } from '#shared/contract/failure.ts';
import { momentWords } from '../desk/moments.ts';
import { failureWords } from '#shared/wording/words.ts';
import { showMoney } from '#shared/units/quantity.ts';
import { show, useDesk } from '../desk/desk.ts';
import { takeMend } from '../desk/recovering.ts';

const sentence = (text: string): string => {
  const trimmed = text.trim();
  return `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}${/[.!?…]$/.test(trimmed) ? '' : '.'}`;
};

/** Where a field stands in the request says little to a person; its last names say enough. */
const linesOf = (failure: Failure): readonly string[] => {
  if (failure.kind === 'invalid-request' || failure.kind === 'out-of-range')
    return failure.problems.map(({ field, reason }) => `${field}: ${reason}`);
  if (failure.kind === 'no-plan')
    return [
      ...failure.because.reasons.map(sentence),
      ...(failure.because.firstDate
        ? [`First home date that could be met as things stand: ${momentWords(failure.because.firstDate)}.`]
        : []),
    ];
  return [failure.message];
};

const Lines = ({ failure }: { failure: Failure }) => (
  <ul>
    {linesOf(failure).map((line, index) => (
      <li key={index}>{line}</li>
    ))}
  </ul>
);

/** The smallest changes that would make a plan possible; each can be agreed to. */
const Mends = ({ failure }: { failure: Failure & { kind: 'no-plan' } }) => {
  const { venue, job } = useDesk();
  const { mends, noHelp, undecided } = failure.because;
  return (
    <>
      {mends.length > 0 && <p>One of these would make it possible:</p>}
      {mends.map((offered, index) => (
        <div className="row" key={index}>
          <button type="button" disabled={job !== null} onClick={() => void takeMend(offered.mend)}>
            Take it
          </button>
          <span>
            {offered.words}
            {offered.price !== null && venue && ` (${showMoney(offered.price, venue.rules.currency)})`}
          </span>
        </div>
      ))}
      {noHelp.length > 0 && <p className="caution">Alone of no help: {noHelp.join(', ')}.</p>}
      {undecided.length > 0 && <p className="caution">Not decided in the time given: {undecided.join(', ')}.</p>}
    </>
  );
};

/** What went wrong, in sentences, and what to do. */
export const Trouble = () => {
  const { failure, refused, said } = useDesk();
  return (
    <>
      {failure && failure.kind !== 'conflict' && (
        <div className="trouble" role="alert">
          <strong>{failureWords[failure.kind]}</strong>
          <Lines failure={failure} />
          {failure.kind === 'no-plan' && <Mends failure={failure} />}
          <button type="button" onClick={() => show({ failure: null })}>
            Understood
          </button>
        </div>
      )}
      {refused && (
        <div className="trouble" role="alert">
          <strong>As it stands this cannot be reckoned</strong>
          <Lines failure={refused} />
          <p>Change it or undo; the figures below are from before.</p>
        </div>
      )}
      <p className="said" role="status">
        {said}
      </p>
    </>
  );
};
