import { useRef, useState, type PointerEvent } from 'react';
import { addHours, dateOf, daysBetween, midnight } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { PlannedJob } from '#shared/vocabulary/plan.ts';
import { momentWords } from '../../desk/moments.ts';
import { jobWords } from '#shared/wording/words.ts';
import { Part } from '../../components/fields.tsx';
import { useBoxSize } from '../../components/box-size.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { enterDone, pullJob } from '../../desk/recovering.ts';
import { stripScale } from '../../strip/strip-scale.ts';
import { StripDays } from '../../strip/strip-days.tsx';
import { heldHours, jobsOf, rowOf, rowsOf, type ChartBy } from './job-rows.ts';
import { JobTable } from './job-table.tsx';
import { PeopleChart } from './people-chart.tsx';

const rowHeight = 20;
const top = 16;
const namesFor: Readonly<Record<ChartBy, number>> = { zone: 40, crew: 84 };

/** Jobs by zone or by what they take, from the first to the home date. A job can be drawn to other hours and is held there. */
export const JobChart = ({ plan }: { plan: PlanRun }) => {
  const { venue, fixtures, booking, zone: chosen, done, broken } = useDesk();
  const box = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(box, { width: 560, height: 100 });
  const [by, setBy] = useState<ChartBy>('zone');
  const [drag, setDrag] = useState<{ job: PlannedJob; x: number; hours: number } | null>(null);
  if (!venue) return null;
  const zone = venue.place.timeZone;
  const jobs = jobsOf(plan, done);
  const rows = rowsOf(jobs, by);
  const home = fixtures.find((fixture) => fixture.id === plan.fixtureId);
  const { orders, decisions } = plan.plan;
  const starts = [...jobs.map((job) => job.start), ...orders.map((order) => order.releaseBy)].toSorted();
  const first = dateOf(starts[0] ?? plan.now);
  const last = dateOf(home?.start ?? jobs.at(-1)?.end ?? plan.now);
  const names = namesFor[by];
  const scale = stripScale({ first, count: Math.max(3, daysBetween(first, last) + 1) }, Math.max(200, width - names), zone);
  const height = top + rows.length * rowHeight + 4;
  const drawn = (job: PlannedJob): PlannedJob =>
    drag?.job === job ? { ...job, start: addHours(job.start, drag.hours, zone), end: addHours(job.end, drag.hours, zone) } : job;
  const brokenOf = (job: PlannedJob): readonly string[] =>
    broken.find((one) => one.zone === job.zone && one.window === job.window && one.job === job.job)?.broken ?? [];
  const grab = (job: PlannedJob) => (event: PointerEvent<SVGElement>) => {
    if (job.zone === null || job.done) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    show({ zone: job.zone });
    setDrag({ job, x: event.clientX, hours: 0 });
  };
  const pull = (event: PointerEvent): void => {
    if (!drag) return;
    const hours = Math.round(((event.clientX - drag.x) / scale.dayWidth) * 24);
    if (hours === drag.hours) return;
    setDrag({ ...drag, hours });
    const { zone: of, window, job, start, end } = drag.job;
    if (of !== null) pullJob({ zone: of, window, job, start: addHours(start, hours, zone), end: addHours(end, hours, zone) });
  };
  const letGo = (): void => {
    setDrag(null);
    pullJob(null);
  };
  const release = (): void => {
    if (drag && drag.hours !== 0 && drag.job.zone !== null) {
      const { start, end } = drawn(drag.job);
      enterDone({ zone: drag.job.zone, window: drag.job.window, job: drag.job.job }, { start, end });
      setDrag(null);
    } else if (drag) letGo();
  };
  const findings = broken.filter((one) => one.broken.length > 0);
  return (
    <Part title="Jobs">
      <div className="row">
        <div className="states" role="group" aria-label="Rows of the chart">
          {(['zone', 'crew'] as const).map((one) => (
            <button key={one} type="button" aria-pressed={by === one} onClick={() => setBy(one)}>
              by {one}
            </button>
          ))}
        </div>
        {drag && drag.hours !== 0 ? (
          <strong role="status">
            {drag.job.zone} {jobWords[drag.job.job]}: {momentWords(drawn(drag.job).start)} to {momentWords(drawn(drag.job).end)}
            {brokenOf(drag.job).length > 0 && `: ${brokenOf(drag.job).join('; ')}`}
          </strong>
        ) : (
          <span>Draw a job to other hours to hold it there; the table takes hours by keyboard.</span>
        )}
      </div>
      <figure className="chart">
        <div ref={box} className="job-chart">
          <svg
            viewBox={`0 0 ${width} ${height}`}
            height={height}
            role="img"
            aria-label={`${jobs.length} jobs in ${rows.length} rows from ${momentWords(`${first}T00:00`)}; the table of jobs holds the same.`}
            onPointerMove={pull}
            onPointerUp={release}
            onPointerCancel={letGo}
          >
            {rows.map((row, index) => (
              <text key={row} x={0} y={top + index * rowHeight + 13} className={row === chosen ? 'row-name chosen' : 'row-name'}>
                {row}
              </text>
            ))}
            <svg x={names} width={scale.width} height={height} overflow="hidden">
              <StripDays scale={scale} height={height} />
              {home && (
                <rect
                  x={scale.x(home.start)}
                  y={12}
                  width={Math.max(3, scale.x(home.end) - scale.x(home.start))}
                  height={height}
                  className="home-bar"
                />
              )}
              {by === 'zone' &&
                booking?.layers.map((layer, index) => {
                  const row = rows.indexOf(layer.zone);
                  return row < 0 || layer.off < midnight(first) ? null : (
                    <rect
                      key={index}
                      x={Math.max(0, scale.x(layer.on))}
                      y={top + row * rowHeight + 2}
                      width={scale.x(layer.off) - Math.max(0, scale.x(layer.on))}
                      height={rowHeight - 5}
                      className="layer"
                    >
                      <title>{`${layer.zone} covered until ${momentWords(layer.off)}`}</title>
                    </rect>
                  );
                })}
              {by === 'zone' &&
                plan.plan.zones.map((one) => {
                  const row = rows.indexOf(one.zone);
                  return row < 0 || one.finish === null ? null : (
                    <path
                      key={`${one.zone}-${one.window}`}
                      d={`M${scale.x(one.finish)} ${top + row * rowHeight + 9}H${scale.x(one.latestFinish)}`}
                      className="slack"
                    >
                      <title>{`${one.zone}: in hand until ${momentWords(one.latestFinish)}`}</title>
                    </path>
                  );
                })}
              {jobs.map((planned, index) => {
                const job = drawn(planned);
                const y = top + rows.indexOf(rowOf(job, by)) * rowHeight;
                const wide = scale.x(job.end) - scale.x(job.start);
                const held = heldHours(planned, done) !== undefined;
                const label = by === 'zone' ? jobWords[job.job] : `${job.zone ?? ''} ${jobWords[job.job]}`.trim();
                return (
                  <g key={index} onPointerDown={grab(planned)} className={job.zone === null || job.done ? '' : 'draggable'}>
                    <rect
                      x={scale.x(job.start)}
                      y={y + 2}
                      width={Math.max(2, wide)}
                      height={rowHeight - 5}
                      className={`job ${job.crew === 0 ? 'waiting' : ''}${job.done ? ' is-done' : ''}${held ? ' held' : ''}${brokenOf(planned).length > 0 ? ' breaks' : ''}`}
                    >
                      <title>
                        {[
                          `${job.zone ?? 'field'}: ${jobWords[job.job]}, ${momentWords(job.start)} to ${momentWords(job.end)}, ${job.crew} people`,
                          ...brokenOf(planned),
                        ].join('; ')}
                      </title>
                    </rect>
                    {wide > label.length * 4.6 && (
                      <text x={scale.x(job.start) + 3} y={y + 13} className={job.crew === 0 ? '' : 'bar-name'}>
                        {label}
                      </text>
                    )}
                  </g>
                );
              })}
              {decisions.map((decision) => (
                <path key={`${decision.name}-${decision.at}`} d={`M${scale.x(decision.at)} 12V${height}`} className="decision">
                  <title>{`${decision.name}: at the latest ${momentWords(decision.at)}`}</title>
                </path>
              ))}
            </svg>
          </svg>
        </div>
        <figcaption>
          Filled: the crew works; open: the turf waits (settling, knitting); pale: still covered; thin line: hours in hand;
          dashed: last hours to decide; framed: held at known hours. Look for bars with little line behind them.
        </figcaption>
      </figure>
      {findings.length > 0 && (
        <div className="trouble" role="alert">
          <strong>At these hours rules would be broken</strong>
          <ul>
            {findings.map((one) => (
              <li key={`${one.zone}-${one.job}`}>
                {one.zone} {jobWords[one.job]}: {one.broken.join('; ')}.
              </li>
            ))}
          </ul>
          <p>Plan again: the other jobs make way where they can; where they cannot, the smallest mends are offered.</p>
        </div>
      )}
      {by === 'crew' && <PeopleChart jobs={jobs} venue={venue} />}
      <JobTable plan={plan} jobs={jobs} />
    </Part>
  );
};
