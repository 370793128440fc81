import { unitOf } from '#shared/units/quantity.ts';
import { skillKinds, type SkillKind } from '#shared/vocabulary/resources.ts';
import { skillWords } from '#shared/wording/words.ts';
import { Choice, ClockField, NumberField, Part, QuantityField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import type { VenuePart } from './parts.ts';

type Rules = VenuePart['venue']['rules'];
type Workforce = VenuePart['venue']['workforce'];

/** A record without one of its optional entries. */
const without = <Record extends object, Name extends keyof Record>(record: Record, name: Name): Record => {
  const { [name]: _, ...rest } = record;
  return rest as Record;
};

/** A limit that a venue may leave open: a tick to set it, its field, and what holds while it is open. */
const Limit = ({
  label,
  open,
  set,
  begin,
  end,
  children,
}: {
  label: string;
  /** What is taken to hold while nothing is entered. */
  open: string;
  set: boolean;
  begin: () => void;
  end: () => void;
  children: React.ReactNode;
}) => (
  <li>
    <label>
      <input type="checkbox" checked={set} onChange={({ target }) => (target.checked ? begin() : end())} /> {label}
    </label>{' '}
    {set ? children : null} <span className="was">{set ? 'entered for this venue' : `${open} · our assumption`}</span>
  </li>
);

/** The gate, the ways over the turf, skills and power: limits that a plan keeps once they are entered. */
export const Limits = ({ venue, set }: VenuePart) => {
  const { units } = useDesk();
  const { rules, workforce } = venue;
  const rule = (changed: Partial<Rules>): void => set({ ...venue, rules: { ...rules, ...changed } });
  const open = (name: keyof Rules): void => set({ ...venue, rules: without(rules, name) });
  const crew = (changed: Partial<Workforce>): void => set({ ...venue, workforce: { ...workforce, ...changed } });
  const hours = (name: 'from' | 'until') => (
    <ClockField
      label={`Gate hours ${name}`}
      value={rules.gateHours![name]}
      change={(value) => rule({ gateHours: { ...rules.gateHours!, [name]: value } })}
    />
  );
  return (
    <Part title="Gate, ways and skills">
      <ul className="settings limits">
        <Limit
          label="The gate lets trucks in only at certain hours"
          open="at any hour outside the curfew"
          set={rules.gateHours !== undefined}
          begin={() => rule({ gateHours: { from: '06:00', until: '20:00' } })}
          end={() => open('gateHours')}
        >
          {rules.gateHours && (
            <>
              {hours('from')} to {hours('until')}
            </>
          )}
        </Limit>
        <Limit
          label="Trucks the gate lets in within one hour"
          open="as many as come"
          set={rules.gateTrucksPerHour !== undefined}
          begin={() => rule({ gateTrucksPerHour: 2 })}
          end={() => open('gateTrucksPerHour')}
        >
          <NumberField
            label="Trucks the gate lets in within one hour"
            value={rules.gateTrucksPerHour ?? 2}
            low={1}
            high={60}
            change={(value) => rule({ gateTrucksPerHour: Math.round(value) })}
          />
        </Limit>
        <Limit
          label="Trucks the gate takes in a day"
          open="as many as come"
          set={rules.gateTrucks !== undefined}
          begin={() => rule({ gateTrucks: 12 })}
          end={() => open('gateTrucks')}
        >
          <NumberField
            label="Trucks the gate takes in a day"
            value={rules.gateTrucks ?? 12}
            low={1}
            high={200}
            change={(value) => rule({ gateTrucks: Math.round(value) })}
          />
        </Limit>
        <Limit
          label="Machines come onto the turf at one place"
          open="every zone is reached from outside"
          set={rules.gateAt !== undefined}
          begin={() => rule({ gateAt: [0, Math.min(...venue.field.outline.map(([, y]) => y))] })}
          end={() => open('gateAt')}
        >
          {(['across', 'along'] as const).map((way, axis) => (
            <span key={way} className="of-gate">
              {way}{' '}
              <QuantityField
                label={`Gate, ${way} from the middle`}
                quantity="length"
                value={rules.gateAt?.[axis] ?? 0}
                change={(value) => rule({ gateAt: axis === 0 ? [value, rules.gateAt![1]] : [rules.gateAt![0], value] })}
              />{' '}
              {unitOf('length', units)}{' '}
            </span>
          ))}
        </Limit>
        <li>
          <label>
            <input
              type="checkbox"
              checked={rules.boards ?? true}
              onChange={({ target }) => (target.checked ? open('boards') : rule({ boards: false }))}
            />{' '}
            Boards are there for heavy machines over live turf
          </label>{' '}
          <span className="was">{rules.boards === undefined ? 'our assumption' : 'entered for this venue'}</span>
        </li>
        <li>
          <label>
            <span>Turf is replaced</span>{' '}
            <Choice
              label="Turf is replaced"
              value={rules.halves ?? 'whole'}
              words={{ whole: 'on the whole field at once', ends: 'one end after the other', sides: 'one side after the other' }}
              change={(value) => (value === 'whole' ? open('halves') : rule({ halves: value }))}
            />
          </label>
        </li>
        <Limit
          label="Sand of sod against the root zone"
          open="10 % apart at most, from the catalogue"
          set={rules.sandGap !== undefined}
          begin={() => rule({ sandGap: 0.1 })}
          end={() => open('sandGap')}
        >
          <NumberField
            label="Sand of sod and root zone apart at most, %"
            value={Math.round(1000 * (rules.sandGap ?? 0.1)) / 10}
            low={0}
            high={100}
            change={(value) => rule({ sandGap: value / 100 })}
          />{' '}
          %
        </Limit>
        <Limit
          label="Power for light rigs"
          open="as much as they draw"
          set={workforce.lightPower !== undefined}
          begin={() => crew({ lightPower: 60 })}
          end={() => set({ ...venue, workforce: without(workforce, 'lightPower') })}
        >
          <NumberField
            label="Power for light rigs, kW"
            value={workforce.lightPower ?? 60}
            low={0}
            high={20000}
            change={(value) => crew({ lightPower: value })}
          />{' '}
          kW
        </Limit>
        {skillKinds.map((kind) => (
          <Skill key={kind} kind={kind} workforce={workforce} change={(skills) => crew({ skills })} />
        ))}
      </ul>
      <p className="caution">
        Who may spray, drive or connect is for local law and the licences people hold; only the count is entered here.
      </p>
    </Part>
  );
};

const Skill = ({
  kind,
  workforce,
  change,
}: {
  kind: SkillKind;
  workforce: Workforce;
  change: (skills: NonNullable<Workforce['skills']>) => void;
}) => {
  const skills = workforce.skills ?? {};
  const label = `People of a shift who may ${skillWords[kind]}`;
  return (
    <Limit
      label={label}
      open="everybody on the crew"
      set={skills[kind] !== undefined}
      begin={() => change({ ...skills, [kind]: 2 })}
      end={() => change(without(skills, kind))}
    >
      <NumberField
        label={label}
        value={skills[kind] ?? 2}
        low={0}
        high={200}
        change={(value) => change({ ...skills, [kind]: Math.round(value) })}
      />
    </Limit>
  );
};
