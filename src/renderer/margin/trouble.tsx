import type { Failure } from '#shared/contract/failure.ts';
import { failureWords } from '#shared/wording/words.ts';
import { show, useDesk } from '../sheet/desk.ts';

const linesOf = (failure: Failure): readonly string[] => {
  if (failure.kind === 'invalid-request' || failure.kind === 'out-of-range')
    return failure.problems.map(({ field, reason }) => `${field}: ${reason}`);
  if (failure.kind === 'no-plan')
    return [
      ...failure.because.reasons,
      ...failure.because.mends.map(
        (mend) =>
          `Would help: ${mend.words}${mend.price === null ? '' : ` (${Math.round(mend.price / 100).toLocaleString('en')})`}`,
      ),
      ...(failure.because.firstDate ? [`First home date that could be met: ${failure.because.firstDate.replace('T', ' ')}`] : []),
    ];
  return [failure.message];
};

/** What went wrong, in sentences, and what to do. */
export const Trouble = () => {
  const { failure, said } = useDesk();
  if (!failure)
    return said ? (
      <p className="said" role="status">
        {said}
      </p>
    ) : null;
  return (
    <div className="trouble" role="alert">
      <strong>{failureWords[failure.kind]}</strong>
      <ul>
        {linesOf(failure).map((line, index) => (
          <li key={index}>{line}</li>
        ))}
      </ul>
      <button type="button" onClick={() => show({ failure: null })}>
        Understood
      </button>
    </div>
  );
};
