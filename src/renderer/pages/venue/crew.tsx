import { machineKinds } from '#shared/vocabulary/resources.ts';
import { machineWords } from '#shared/wording/words.ts';
import { ClockField, Part } from '../../components/fields.tsx';
import { Setting } from '../../components/setting.tsx';
import { startingWorkforce } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

const crews = [
  ['dayCrew', 'Crew by day'],
  ['nightCrew', 'Crew by night'],
  ['overtimeCrew', 'More on overtime'],
] as const;

/** Who works there, with which machines, and when they must be quiet. */
export const Crew = ({ venue, stored, set }: VenuePart) => {
  const { workforce } = venue;
  const change = (changed: Partial<typeof workforce>): void => set({ ...venue, workforce: { ...workforce, ...changed } });
  const hour = (name: 'from' | 'until', label: string) => (
    <label>
      {label}{' '}
      <ClockField
        label={`Curfew ${label}`}
        value={workforce.curfew![name]}
        change={(value) => change({ curfew: { ...workforce.curfew!, [name]: value } })}
      />
    </label>
  );
  return (
    <Part title="Crew and machines">
      <ul className="settings">
        {crews.map(([name, label]) => (
          <Setting
            key={name}
            label={label}
            unit="people"
            now={workforce[name]}
            stored={stored.workforce[name]}
            origin={{ start: startingWorkforce[name], standing: 'our assumption' }}
            low={0}
            high={200}
            set={(value) => change({ [name]: Math.round(value) })}
          />
        ))}
        {machineKinds.map((kind) => (
          <Setting
            key={kind}
            label={machineWords[kind].replace(/^./, (letter) => letter.toUpperCase())}
            unit="on call"
            now={workforce.machines[kind] ?? 0}
            stored={stored.workforce.machines[kind] ?? 0}
            origin={{ start: startingWorkforce.machines[kind] ?? 0, standing: 'our assumption' }}
            low={0}
            high={50}
            set={(value) => change({ machines: { ...workforce.machines, [kind]: Math.round(value) } })}
          />
        ))}
      </ul>
      <div className="row">
        <label>
          <input
            type="checkbox"
            checked={workforce.curfew !== null}
            onChange={(event) => change({ curfew: event.target.checked ? { from: '23:00', until: '06:00' } : null })}
          />{' '}
          Curfew for noisy work and trucks
        </label>
        {workforce.curfew && (
          <>
            {hour('from', 'from')} {hour('until', 'until')}
          </>
        )}
      </div>
    </Part>
  );
};
