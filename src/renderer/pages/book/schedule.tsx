import { useState, type ClipboardEvent } from 'react';
import { shiftDays } from '#shared/calendar/local-time.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import { loadingWords } from '#shared/wording/words.ts';
import { Choice, EntryTable, Part, RemoveButton, TimeField } from '../../components/fields.tsx';
import { spanOf, withLayer } from '../../desk/booking-shapes.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';
import { pastedSchedule, withSchedule, type PastedSchedule } from '../../desk/pasted-schedule.ts';

/** The production schedule as rows: where, floor, on, off, what stands on it. */
export const Schedule = ({ booking }: { booking: Booking }) => {
  const { coverings, venue, fixtures, homeId, zone: chosen } = useDesk();
  const floors = coverings.map((covering) => [covering.id, covering.name] as const);
  const zones = booking.zones.map((zone) => [zone.letter, `${zone.letter} ${zone.name}`] as const);
  const rows = booking.layers
    .map((layer, index) => ({ layer, index }))
    .toSorted((a, b) => a.layer.zone.localeCompare(b.layer.zone) || (a.layer.on < b.layer.on ? -1 : 1));
  const addRow = (): void => {
    const zone = booking.zones.find((one) => one.letter === chosen) ?? booking.zones[0];
    if (!zone) return;
    const before = booking.layers
      .filter((layer) => layer.zone === zone.letter)
      .toSorted((a, b) => (a.off < b.off ? -1 : 1))
      .at(-1);
    const span = spanOf(booking);
    const home = fixtures.find((fixture) => fixture.id === homeId);
    const on = before?.off ?? span?.first ?? (home ? shiftDays(home.start, -14) : null);
    if (on === null) return;
    const off = span && span.last > on ? span.last : `${on.slice(0, 11)}23:59`;
    const layer: Layer = {
      zone: zone.letter,
      covering: before?.covering ?? coverings[0]?.id ?? 'solid-panel',
      on,
      off,
      loading: 'open',
      cleanliness: before?.cleanliness ?? 0.85,
      legs: null,
      iceTemperature: null,
      care: [],
    };
    edit({ ...booking, layers: [...booking.layers, layer] });
  };
  return (
    <Part title="Production schedule">
      <EntryTable
        caption={`Hours on the wall clock at ${venue?.place.timeZone ?? ''}. One row is one covering on one zone.`}
        heads={['Zone and floor', 'On and off', 'Stands on it']}
        end="Remove"
      >
        {rows.map(({ layer, index }) => {
          const named = `${layer.zone} ${booking.zones.find((zone) => zone.letter === layer.zone)?.name ?? ''}`;
          const set = (changed: Partial<Layer>): void => edit(withLayer(booking, index, changed));
          return (
            <tr key={index} className={layer.zone === chosen ? 'chosen' : ''} onFocus={() => show({ zone: layer.zone })}>
              <td>
                <div className="pair">
                  <Choice label={`Zone of row ${index + 1}`} value={layer.zone} words={zones} change={(zone) => set({ zone })} />
                  <Choice
                    label={`Floor of ${named}`}
                    value={layer.covering}
                    words={floors}
                    change={(covering) => set({ covering })}
                  />
                </div>
              </td>
              <td>
                <div className="pair">
                  <TimeField label={`${named} on`} value={layer.on} change={(on) => set({ on })} />
                  <TimeField label={`${named} off`} value={layer.off} change={(off) => set({ off })} />
                </div>
              </td>
              <td>
                <Choice
                  label={`What stands on ${named}`}
                  value={layer.loading}
                  words={loadingWords}
                  change={(loading) => set({ loading, iceTemperature: loading === 'ice' ? (layer.iceTemperature ?? -5) : null })}
                />
              </td>
              <td>
                <RemoveButton
                  label={`Remove the row of ${named}`}
                  remove={() => edit({ ...booking, layers: booking.layers.filter((_, at) => at !== index) })}
                />
              </td>
            </tr>
          );
        })}
      </EntryTable>
      <div className="row">
        <button type="button" disabled={booking.zones.length === 0} onClick={addRow}>
          Add a row
        </button>
        <PasteRows booking={booking} />
      </div>
    </Part>
  );
};

/** Takes rows out of the clipboard, or typed; says which it could not read. */
const PasteRows = ({ booking }: { booking: Booking }) => {
  const { coverings, units } = useDesk();
  const [text, setText] = useState('');
  const [read, setRead] = useState<PastedSchedule | null>(null);
  const look = (typed: string): void => {
    setText(typed);
    setRead(typed.trim() === '' ? null : pastedSchedule(typed, booking, coverings, units === 'us'));
  };
  const onPaste = (event: ClipboardEvent<HTMLTextAreaElement>): void => {
    const pasted = event.clipboardData.getData('text/plain');
    if (!pasted.includes('\t')) return;
    event.preventDefault();
    look(pasted);
  };
  const take = (): void => {
    if (!read) return;
    edit(withSchedule(booking, read));
    look('');
  };
  return (
    <details className="paste">
      <summary>Paste from a spreadsheet</summary>
      <label>
        Rows of zone, floor, on, off, what stands on it
        <textarea
          rows={4}
          value={text}
          placeholder={'A\tAluminium roadway panel\t2027-07-12 10:00\t2027-07-19 20:00\tstage'}
          onPaste={onPaste}
          onChange={(event) => look(event.target.value)}
        />
      </label>
      {read && (
        <>
          <p role="status">
            {read.layers.length} {read.layers.length === 1 ? 'row is' : 'rows are'} understood
            {read.problems.length > 0 && `, ${read.problems.length} not`}. They take the place of all rows of the same zones.
          </p>
          {read.problems.length > 0 && (
            <ul>
              {read.problems.map(({ line, reason }) => (
                <li key={line}>
                  Line {line}: {reason}.
                </li>
              ))}
            </ul>
          )}
          <button type="button" className="main" disabled={read.layers.length === 0} onClick={take}>
            Take the rows
          </button>
        </>
      )}
    </details>
  );
};
