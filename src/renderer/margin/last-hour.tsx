import { show as inUnits } from '#shared/units/quantity.ts';
import { spanWords } from '#shared/wording/moments.ts';
import { momentWords } from '../desk/moments.ts';
import { show, useDesk } from '../desk/desk.ts';

/** The last hour at which something can still be decided; always in view. */
export const LastHour = () => {
  const { plan, units } = useDesk();
  const next = plan?.plan.decisions.toSorted((a, b) => (a.at < b.at ? -1 : 1))[0];
  const order = plan?.plan.orders[0];
  return (
    <p className="last-hour" role="status">
      Last hour to decide{' '}
      {next ? (
        <>
          <strong>{momentWords(next.at)}</strong> {next.name}
          {order && next.at === order.releaseBy && `, ${inUnits(order.ordered, 'area', units)}`},{' '}
          {next.slack >= 0 ? `${spanWords(next.slack)} from now` : `${spanWords(-next.slack)} ago`}
        </>
      ) : (
        <button type="button" className="figure" onClick={() => show({ verb: 'recover' })}>
          known once the recovery is planned
        </button>
      )}
    </p>
  );
};
