import type { Booking, EventZone } from '#shared/vocabulary/booking.ts';
import { zoneUseWords } from '#shared/wording/words.ts';
import { unitOf } from '#shared/units/quantity.ts';
import { Choice, EntryTable, Part, QuantityField, RemoveButton, TextField } from '../../components/fields.tsx';
import { freeLetter } from '../../desk/booking-shapes.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';
import { boundsOf } from '../../drawings/frame.ts';

/** The outline set into another frame: a rectangle stays one, any other shape is stretched with it. */
const reframed = (
  outline: EventZone['outline'],
  frame: { x: number; y: number; width: number; height: number },
): EventZone['outline'] => {
  const old = boundsOf([outline]);
  return outline.map(([x, y]) => [
    frame.x + ((x - old.x) / (old.width || 1)) * frame.width,
    frame.y + ((y - old.y) / (old.height || 1)) * frame.height,
  ]);
};

/** Footprints of the event: what each is for, and where it lies. Listed first owns the ground that two share. */
export const Zones = ({ booking }: { booking: Booking }) => {
  const { venue, units, zone: chosen } = useDesk();
  if (!venue) return null;
  const set = (index: number, changed: Partial<EventZone>): void =>
    edit({ ...booking, zones: booking.zones.map((zone, at) => (at === index ? { ...zone, ...changed } : zone)) });
  const remove = (letter: string): void =>
    edit({
      ...booking,
      zones: booking.zones.filter((zone) => zone.letter !== letter),
      layers: booking.layers.filter((layer) => layer.zone !== letter),
      crowds: booking.crowds.filter((crowd) => crowd.zone !== letter),
      traffic: booking.traffic.filter((pass) => pass.zone !== letter),
      incidents: booking.incidents.filter((incident) => incident.zone !== letter),
    });
  const add = (): void => {
    const letter = freeLetter([...booking.zones, ...venue.zones].map((zone) => zone.letter));
    const zone: EventZone = {
      letter,
      name: 'New zone',
      use: 'other',
      outline: [
        [-5, -5],
        [5, -5],
        [5, 5],
        [-5, 5],
      ],
    };
    edit({ ...booking, zones: [...booking.zones, zone] });
    show({ zone: letter });
  };
  return (
    <Part title="Footprints">
      <EntryTable
        caption={`Across and along from the middle of the field, ${unitOf('length', units)}; ground that two share belongs to the one listed first.`}
        heads={['Zone', 'Name', 'Use', 'Left', 'Bottom', 'Wide', 'Long']}
        end="Remove"
      >
        {booking.zones.map((zone, index) => {
          const frame = boundsOf([zone.outline]);
          const side = (label: string, name: keyof typeof frame) => (
            <td>
              <QuantityField
                label={`${zone.letter} ${label}`}
                value={frame[name]}
                quantity="length"
                change={(value) => set(index, { outline: reframed(zone.outline, { ...frame, [name]: value }) })}
              />
            </td>
          );
          return (
            <tr key={zone.letter} className={zone.letter === chosen ? 'chosen' : ''} onFocus={() => show({ zone: zone.letter })}>
              <th scope="row">{zone.letter}</th>
              <td>
                <TextField label={`Name of ${zone.letter}`} value={zone.name} change={(name) => set(index, { name })} />
              </td>
              <td>
                <Choice
                  label={`Use of ${zone.letter}`}
                  value={zone.use}
                  words={zoneUseWords}
                  change={(use) => set(index, { use })}
                />
              </td>
              {side('left', 'x')}
              {side('bottom', 'y')}
              {side('wide', 'width')}
              {side('long', 'height')}
              <td>
                <RemoveButton label={`Remove zone ${zone.letter}`} remove={() => remove(zone.letter)} />
              </td>
            </tr>
          );
        })}
      </EntryTable>
      <button type="button" onClick={add}>
        Add a footprint
      </button>
      <p className="caution">
        Stages, cranes, loads and anchors belong to the responsible engineer; locate buried services before anything is driven in.
      </p>
    </Part>
  );
};
