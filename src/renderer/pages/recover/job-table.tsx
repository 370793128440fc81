import { useState } from 'react';
import { addHours } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { PlannedJob } from '#shared/vocabulary/plan.ts';
import { momentWords } from '../../desk/moments.ts';
import { jobWords, machineWords } from '#shared/wording/words.ts';
import { TimeField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { enterDone } from '../../desk/recovering.ts';
import { heldHours } from './job-rows.ts';

/** The chart as a table; takes the hours a job really took, or shall be held to. */
export const JobTable = ({ plan, jobs }: { plan: PlanRun; jobs: readonly PlannedJob[] }) => {
  const { venue, done } = useDesk();
  const [editing, setEditing] = useState<string | null>(null);
  if (!venue) return null;
  const zone = venue.place.timeZone;
  return (
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
              <th scope="col">Machine</th>
              <th scope="col">Hours</th>
            </tr>
          </thead>
          <tbody>
            {jobs.map((job, index) => {
              const held = heldHours(job, done);
              const key = `${job.zone}-${job.window}-${job.job}`;
              const own = job.zone && { zone: job.zone, window: job.window, job: job.job };
              const open = own && editing === key;
              return (
                <tr key={index} className={held ? 'chosen' : ''}>
                  <th scope="row">{job.zone ?? 'field'}</th>
                  <td>{jobWords[job.job]}</td>
                  <td>
                    {open ? (
                      <TimeField
                        label={`${job.zone} ${jobWords[job.job]} really began`}
                        value={job.start}
                        change={(start) => enterDone(own, { start, end: later(start, job.end, zone) })}
                      />
                    ) : (
                      momentWords(job.start)
                    )}
                  </td>
                  <td>
                    {open ? (
                      <TimeField
                        label={`${job.zone} ${jobWords[job.job]} really ended`}
                        value={job.end}
                        change={(end) => end > job.start && enterDone(own, { start: job.start, end })}
                      />
                    ) : (
                      momentWords(job.end)
                    )}
                  </td>
                  <td>{job.crew > 0 ? job.crew : '–'}</td>
                  <td>{job.machine ? machineWords[job.machine] : '–'}</td>
                  <td>
                    {job.done
                      ? 'done'
                      : own && (
                          <button
                            type="button"
                            aria-label={`${held ? 'Take back the' : 'Enter or hold the'} hours of ${job.zone} ${jobWords[job.job]}`}
                            onClick={() => {
                              enterDone(own, held ? null : { start: job.start, end: job.end });
                              setEditing(held ? null : key);
                            }}
                          >
                            {held ? (held.end <= plan.now ? 'actual: take back' : 'held: take back') : 'enter or hold'}
                          </button>
                        )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="caution">Entered and held hours count when you plan again; jobs after them move as little as they can.</p>
    </details>
  );
};

/** An end that is not before its start. */
const later = (start: string, end: string, timeZone: string): string => (end > start ? end : addHours(start, 1, timeZone));
