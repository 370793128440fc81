import { useDesk } from '../desk/desk.ts';
import { stopWork } from '../desk/foreseeing.ts';

/** How far long work has come, and the way to stop it. */
export const Working = () => {
  const { job } = useDesk();
  if (!job) return null;
  const share = Math.round(100 * job.progress.share);
  return (
    <div className="working">
      <progress max={100} value={share} aria-label="How far the work has come" />
      <span role="status">
        {share} % {job.progress.note}
      </span>
      <button type="button" onClick={stopWork}>
        Stop
      </button>
    </div>
  );
};
