import { incidentKinds, type Booking, type Incident } from '#shared/vocabulary/booking.ts';
import { addHours } from '#shared/calendar/local-time.ts';
import { unitOf } from '#shared/units/quantity.ts';
import { cautions, incidentWords } from '#shared/wording/words.ts';
import { Choice, EntryTable, NumberField, Part, QuantityField, RemoveButton, TimeField } from '../../components/fields.tsx';
import { spanOf } from '../../desk/booking-shapes.ts';
import { useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';

/** What went wrong: spills and ice, where, when and how far; the forecast counts them. */
export const Incidents = ({ booking }: { booking: Booking }) => {
  const { units, zone: chosen, venue } = useDesk();
  const zones = booking.zones.map((zone) => [zone.letter, `${zone.letter} ${zone.name}`] as const);
  const set = (index: number, changed: Partial<Incident>): void =>
    edit({
      ...booking,
      incidents: booking.incidents.map((incident, at) => (at === index ? { ...incident, ...changed } : incident)),
    });
  const add = (): void => {
    const zone = booking.zones.find((one) => one.letter === chosen) ?? booking.zones[0];
    const span = spanOf(booking);
    if (!zone || !span) return;
    const incident: Incident = { zone: zone.letter, kind: 'drink', at: span.first, area: 2, treatedAfter: null, until: null };
    edit({ ...booking, incidents: [...booking.incidents, incident] });
  };
  const kind = (index: number, incident: Incident, next: Incident['kind']): void =>
    set(index, {
      kind: next,
      treatedAfter: next === 'ice' ? null : incident.treatedAfter,
      until: next === 'ice' ? (incident.until ?? addHours(incident.at, 48, venue?.place.timeZone ?? 'UTC')) : null,
    });
  return (
    <Part title="Incidents">
      {booking.incidents.length > 0 && (
        <EntryTable
          caption={`Spills and ice on the turf; area in ${unitOf('area', units)}`}
          heads={['Zone', 'What', 'At', 'Area', 'Treated after, min; ice gone at']}
          end="Remove"
        >
          {booking.incidents.map((incident, index) => (
            <tr key={index}>
              <td>
                <Choice
                  label={`Zone of incident ${index + 1}`}
                  value={incident.zone}
                  words={zones}
                  change={(zone) => set(index, { zone })}
                />
              </td>
              <td>
                <Choice
                  label={`Kind of incident ${index + 1}`}
                  value={incident.kind}
                  words={incidentKinds.map((one) => [one, incidentWords[one]] as const)}
                  change={(next) => kind(index, incident, next)}
                />
              </td>
              <td>
                <TimeField label={`Incident ${index + 1} at`} value={incident.at} change={(at) => set(index, { at })} />
              </td>
              <td>
                <QuantityField
                  label={`Area of incident ${index + 1}`}
                  quantity="area"
                  value={incident.area}
                  change={(area) => set(index, { area })}
                />
              </td>
              <td>
                {incident.kind === 'ice' ? (
                  <TimeField
                    label={`Ice of incident ${index + 1} gone at`}
                    value={incident.until ?? incident.at}
                    change={(until) => set(index, { until })}
                  />
                ) : (
                  <span className="row tight">
                    <label>
                      <input
                        type="checkbox"
                        aria-label={`Incident ${index + 1} was treated`}
                        checked={incident.treatedAfter !== null}
                        onChange={(event) => set(index, { treatedAfter: event.target.checked ? 10 : null })}
                      />{' '}
                      treated
                    </label>
                    {incident.treatedAfter !== null && (
                      <NumberField
                        label={`Incident ${index + 1} treated after, min`}
                        value={incident.treatedAfter}
                        low={0}
                        high={100000}
                        change={(treatedAfter) => set(index, { treatedAfter })}
                      />
                    )}
                  </span>
                )}
              </td>
              <td>
                <RemoveButton
                  label={`Remove incident ${index + 1}`}
                  remove={() => edit({ ...booking, incidents: booking.incidents.filter((_, at) => at !== index) })}
                />
              </td>
            </tr>
          ))}
        </EntryTable>
      )}
      <button type="button" disabled={booking.zones.length === 0} onClick={add}>
        Enter an incident
      </button>
      <p className="caution">
        {cautions.rink} {cautions.chemicals}
      </p>
    </Part>
  );
};
