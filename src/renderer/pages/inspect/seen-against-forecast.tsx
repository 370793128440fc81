import { CartesianGrid, ErrorBar, ResponsiveContainer, Scatter, ScatterChart, Tooltip, XAxis, YAxis } from 'recharts';
import { useState } from 'react';
import { figure, show as inUnits, type UnitSystem } from '#shared/units/quantity.ts';
import type { Range } from '#shared/vocabulary/forecast.ts';
import type { Assimilation, SeenAgainstForecast as SeenLine } from '#shared/vocabulary/learning.ts';
import { TimeField } from '../../components/fields.tsx';
import { percent } from '../../components/numbers.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { replay, useEvidence, weigh } from '../../desk/evidence.ts';
import { momentWords, nowAtVenue } from '../../desk/moments.ts';

const said = (line: SeenLine, value: number, units: UnitSystem): string =>
  line.quantity === 'cover' ? percent(value) : inUnits(value, 'smallLength', units);
const rangeOf = (line: SeenLine, range: Range, units: UnitSystem): string =>
  `${said(line, range.p50, units)} (${said(line, range.p10, units)} to ${said(line, range.p90, units)})`;

/** Where the readings fell against what was foreseen, what the forecast makes of them, and the past with what was known then. */
export const SeenAgainstForecast = () => {
  const { run, job, booking } = useDesk();
  const { weighed, lines } = useEvidence();
  const [knownAt, setKnownAt] = useState<string>(weighed?.seen[0]?.at ?? lines[0]?.inspection.at ?? nowAtVenue());
  return (
    <>
      <div className="row">
        <button type="button" className="main" disabled={job !== null || !run || lines.length === 0} onClick={() => void weigh()}>
          Weigh the forecast by what was seen
        </button>
        <label>
          or replay with what was known at <TimeField label="Known at" value={knownAt} change={setKnownAt} />
        </label>
        <button type="button" disabled={job !== null || !run} onClick={() => void replay(knownAt)}>
          Replay
        </button>
      </div>
      {!run && (
        <p className="empty">
          {booking ? 'A kept forecast of this event comes first: ' : 'Open a booking first. '}
          <button type="button" onClick={() => show({ verb: 'foresee' })}>
            draw members under foresee
          </button>
        </p>
      )}
      {weighed === null ? (
        <p className="empty">
          Nothing is weighed yet. Cover and ruts that were read are held against every member of the forecast; those that agree
          count more, and the forecast, the plan and the sod order go on with them.
        </p>
      ) : (
        <Weighed weighed={weighed} />
      )}
    </>
  );
};

const Weighed = ({ weighed }: { weighed: Assimilation }) => {
  const { units, bookings } = useDesk();
  const { before, after } = weighed.replaceArea;
  const { chanceAllReady } = weighed;
  const covers = weighed.seen.filter((line) => line.quantity === 'cover');
  const area = (range: Range): string =>
    `${inUnits(range.p50, 'area', units)} (${inUnits(range.p10, 'area', units)} to ${inUnits(range.p90, 'area', units)})`;
  return (
    <>
      <p>
        <strong>
          {figure(weighed.effectiveSize, 1)} of {weighed.members} members count
        </strong>
        {weighed.widened > 1 &&
          `; only ${figure(weighed.firstEffectiveSize, 1)} had come near, so every doubt was widened by ${figure(weighed.widened, 1)} and the run made again`}
        .{' '}
        {weighed.runId === null
          ? `A replay of ${bookings.find((one) => one.id === weighed.bookingId)?.name ?? 'the event'} with what was known at ${momentWords(weighed.knownAt!)}; nothing is kept.`
          : `Kept as ${weighed.runId.slice(0, 12)}.`}
      </p>
      <p>
        Not ready by itself: {area(before)} before, {area(after)} now. All ready with a chance of {percent(chanceAllReady.before)}{' '}
        before, {percent(chanceAllReady.after)} now.
      </p>
      {covers.length > 0 && <CoverSeen lines={covers} />}
      <div className="scroll">
        <table className="seen">
          <caption>Seen against forecast. A place near 0 or 100 % means that hardly a member said so.</caption>
          <thead>
            <tr>
              <th scope="col">Zone</th>
              <th scope="col">Read</th>
              <th scope="col">What</th>
              <th scope="col">Seen</th>
              <th scope="col">Forecast before</th>
              <th scope="col">Now</th>
              <th scope="col">Place</th>
            </tr>
          </thead>
          <tbody>
            {weighed.seen.map((line, index) => (
              <tr key={index}>
                <th scope="row">{line.zone}</th>
                <td>
                  {momentWords(line.at)}
                  {!line.used && ', later'}
                </td>
                <td>
                  {line.quantity}, {line.readings} {line.readings === 1 ? 'spot' : 'spots'}
                </td>
                <td>
                  {said(line, line.seen, units)} ± {said(line, line.error, units)}
                </td>
                <td>{rangeOf(line, line.before, units)}</td>
                <td>{rangeOf(line, line.after, units)}</td>
                <td>{percent(line.place)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {weighed.leftOut.length > 0 && (
        <details>
          <summary>Left out ({weighed.leftOut.length})</summary>
          <ul>
            {weighed.leftOut.map((one, index) => (
              <li key={index}>
                {one.inspectionId.slice(0, 19)}: {one.reason}.
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
};

/** Cover as it was read over cover as it was foreseen: on the rising line both agree. */
const CoverSeen = ({ lines }: { lines: readonly SeenLine[] }) => {
  const whole = (value: number): number => Math.round(100 * value);
  const points = lines.map((line) => ({
    name: `${line.zone}, ${momentWords(line.at)}`,
    forecast: whole(line.before.p50),
    seen: whole(line.seen),
    spread: [whole(line.before.p50 - line.before.p10), whole(line.before.p90 - line.before.p50)] as [number, number],
    error: whole(line.error),
  }));
  const axis = {
    type: 'number',
    domain: [0, 100],
    ticks: [0, 25, 50, 75, 100],
    stroke: 'currentColor',
    tick: { fontSize: 11, fill: 'currentColor' },
  } as const;
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={260}>
          <ScatterChart accessibilityLayer={false} margin={{ top: 8, right: 12, bottom: 18, left: 0 }}>
            <CartesianGrid stroke="var(--rule)" />
            <XAxis
              {...axis}
              dataKey="forecast"
              name="forecast"
              label={{ value: 'forecast, %', position: 'bottom', offset: 2, fontSize: 12, fill: 'currentColor' }}
            />
            <YAxis
              {...axis}
              dataKey="seen"
              name="seen"
              width={44}
              label={{ value: 'seen, %', angle: -90, position: 'insideLeft', offset: 8, fontSize: 12, fill: 'currentColor' }}
            />
            <Tooltip isAnimationActive={false} />
            <Scatter
              data={[
                { forecast: 0, seen: 0 },
                { forecast: 100, seen: 100 },
              ]}
              line={{ stroke: 'var(--faint)', strokeDasharray: '4 3' }}
              shape={() => <g />}
              legendType="none"
              isAnimationActive={false}
            />
            <Scatter data={points} fill="var(--press)" isAnimationActive={false}>
              <ErrorBar dataKey="spread" direction="x" width={4} stroke="var(--press)" />
              <ErrorBar dataKey="error" direction="y" width={4} stroke="var(--press)" />
            </Scatter>
          </ScatterChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        Live cover seen over forecast, a dot a zone and inspection. Bars: eight of ten members across, the doubt of the reading
        upright. Below the dashed line it was worse than foreseen.
      </figcaption>
    </figure>
  );
};
