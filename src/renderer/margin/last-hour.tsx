import { useDesk } from '../sheet/desk.ts';

/** The last hour at which something can still be decided; always in view. */
export const LastHour = () => {
  const { plan } = useDesk();
  const next = plan?.plan.decisions.toSorted((a, b) => (a.at < b.at ? -1 : 1))[0];
  return (
    <p className="last-hour" role="status">
      {next ? (
        <>
          <span>Last hour to decide</span> <strong>{next.at.replace('T', ' ')}</strong> {next.name}
        </>
      ) : (
        <>
          <span>Last hour to decide</span> shown once the recovery is planned
        </>
      )}
    </p>
  );
};
