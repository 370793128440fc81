import { useRef, useState } from 'react';
import { addHours, dateOf, daysBetween, midnight } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { PlannedJob } from '#shared/vocabulary/plan.ts';
import { momentWords } from '#shared/wording/moments.ts';
import { jobWords } from '#shared/wording/words.ts';
import { Part, TimeField } from '../../components/fields.tsx';
import { useBoxSize } from '../../components/box-size.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { enterDone } from '../../desk/recovering.ts';
import { stripScale } from '../../strip/strip-scale.ts';
import { StripDays } from '../../strip/strip-days.tsx';

const rowHeight = 20;
const names = 40;

/** Jobs by zone over the days, from the first to the home date; the table below holds the same, and takes actual hours. */
export const JobChart = ({ plan }: { plan: PlanRun }) => {
  const { venue, fixtures, booking, zone: chosen, done } = useDesk();
  const box = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(box, { width: 560, height: 100 });
  const [editing, setEditing] = useState<string | null>(null);
  if (!venue) return null;
  const { zones, fieldJobs, orders } = plan.plan;
  const jobs = [...zones.flatMap((zone) => zone.jobs), ...fieldJobs].toSorted((a, b) => (a.start < b.start ? -1 : 1));
  const rows = [...zones.filter((zone) => zone.jobs.length > 0).map((zone) => zone.zone), 'field'];
  const home = fixtures.find((fixture) => fixture.id === plan.fixtureId);
  const starts = [...jobs.map((job) => job.start), ...orders.map((order) => order.releaseBy)].toSorted();
  const first = dateOf(starts[0] ?? plan.now);
  const last = dateOf(home?.start ?? jobs.at(-1)?.end ?? plan.now);
  const scale = stripScale(
    { first, count: Math.max(3, daysBetween(first, last) + 1) },
    Math.max(200, width - names),
    venue.place.timeZone,
  );
  const top = 16;
  const height = top + rows.length * rowHeight + 4;
  const rowOf = (job: PlannedJob): number => rows.indexOf(job.zone ?? 'field');
  return (
    <Part title="Jobs by zone">
      <figure className="chart">
        <div ref={box} className="job-chart">
          <svg
            viewBox={`0 0 ${width} ${height}`}
            height={height}
            role="img"
            aria-label={`${jobs.length} jobs in ${rows.length} rows from ${momentWords(`${first}T00:00`)}; the table of jobs holds the same.`}
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
              {booking?.layers.map((layer, index) => {
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
              {jobs.map((job, index) => (
                <g key={index} onClick={() => job.zone && show({ zone: job.zone })}>
                  <rect
                    x={scale.x(job.start)}
                    y={top + rowOf(job) * rowHeight + 2}
                    width={Math.max(2, scale.x(job.end) - scale.x(job.start))}
                    height={rowHeight - 5}
                    className={`job ${job.crew === 0 ? 'waiting' : ''}${job.done ? ' is-done' : ''}`}
                  >
                    <title>{`${job.zone ?? 'field'}: ${jobWords[job.job]}, ${momentWords(job.start)} to ${momentWords(job.end)}, ${job.crew} people`}</title>
                  </rect>
                  {scale.x(job.end) - scale.x(job.start) > jobWords[job.job].length * 4.6 && (
                    <text
                      x={scale.x(job.start) + 3}
                      y={top + rowOf(job) * rowHeight + 13}
                      className={job.crew === 0 ? '' : 'bar-name'}
                    >
                      {jobWords[job.job]}
                    </text>
                  )}
                </g>
              ))}
              {orders.map((order) => (
                <path
                  key={`${order.farm}-${order.cut}-${order.releaseBy}`}
                  d={`M${scale.x(order.releaseBy)} 12V${height}`}
                  className="decision"
                >
                  <title>{`Release by ${momentWords(order.releaseBy)}`}</title>
                </path>
              ))}
            </svg>
          </svg>
        </div>
        <figcaption>
          Filled: the crew works; open: the turf waits (settling, knitting); pale: still covered; dashed: sod released at the
          latest. Look for bars that reach close to the home date.
        </figcaption>
      </figure>
      <details>
        <summary>The same as a table, with actual hours ({jobs.length} jobs)</summary>
        <div className="scroll">
          <table className="jobs">
            <thead>
              <tr>
                <th scope="col">Zone</th>
                <th scope="col">Job</th>
                <th scope="col">From</th>
                <th scope="col">Until</th>
                <th scope="col">People</th>
                <th scope="col">Actual</th>
              </tr>
            </thead>
            <tbody>
              {jobs.map((job, index) => {
                const actual = done.find((one) => one.zone === job.zone && one.window === job.window && one.job === job.job);
                const key = `${job.zone}-${job.window}-${job.job}`;
                const own = job.zone && { zone: job.zone, window: job.window, job: job.job };
                return (
                  <tr key={index}>
                    <th scope="row">{job.zone ?? 'field'}</th>
                    <td>{jobWords[job.job]}</td>
                    <td>
                      {own && editing === key ? (
                        <TimeField
                          label={`${job.zone} ${jobWords[job.job]} really began`}
                          value={actual?.start ?? job.start}
                          change={(start) =>
                            enterDone(own, { start, end: later(start, actual?.end ?? job.end, venue.place.timeZone) })
                          }
                        />
                      ) : (
                        momentWords(actual?.start ?? job.start)
                      )}
                    </td>
                    <td>
                      {own && editing === key ? (
                        <TimeField
                          label={`${job.zone} ${jobWords[job.job]} really ended`}
                          value={actual?.end ?? job.end}
                          change={(end) => enterDone(own, { start: actual?.start ?? job.start, end })}
                        />
                      ) : (
                        momentWords(actual?.end ?? job.end)
                      )}
                    </td>
                    <td>{job.crew > 0 ? job.crew : '–'}</td>
                    <td>
                      {job.done ? (
                        'done'
                      ) : own && actual ? (
                        <button
                          type="button"
                          aria-label={`Take back the actual hours of ${job.zone} ${jobWords[job.job]}`}
                          onClick={() => {
                            enterDone(own, null);
                            setEditing(null);
                          }}
                        >
                          take back
                        </button>
                      ) : (
                        own && (
                          <button
                            type="button"
                            aria-label={`Enter actual hours of ${job.zone} ${jobWords[job.job]}`}
                            onClick={() => {
                              enterDone(own, { start: job.start, end: job.end });
                              setEditing(key);
                            }}
                          >
                            enter
                          </button>
                        )
                      )}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
        <p className="caution">Entered hours count when you plan again; jobs after them move as little as they can.</p>
      </details>
    </Part>
  );
};

/** An end that is not before its start. */
const later = (start: string, end: string, timeZone: string): string => (end > start ? end : addHours(start, 1, timeZone));
