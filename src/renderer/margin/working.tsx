import { stopWork, useDesk } from '../sheet/desk.ts';

/** How far long work has come, and the way to stop it. */
export const Working = () => {
  const { job } = useDesk();
  if (!job) return null;
  const share = Math.round(100 * job.progress.share);
  return (
    <div className="working" role="status">
      <progress max={100} value={share} aria-label="How far the work has come" />
      <span>
        {share} % {job.progress.note}
      </span>
      <button type="button" onClick={stopWork}>
        Stop
      </button>
    </div>
  );
};
