import { useState } from 'react';
import { show as inUnits } from '#shared/units/quantity.ts';
import { machineKinds } from '#shared/vocabulary/resources.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { constructionWords, grassWords, machineWords } from '#shared/wording/words.ts';
import { NumberField, Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { openVenue } from '../../desk/opening.ts';
import { saveVenue, takeInVenue, writeOutVenue } from '../../desk/venue-keeping.ts';
import { Farms } from './farms.tsx';
import { Floors } from './floors.tsx';
import { Numbers } from './numbers.tsx';

/** What the venue asks of the surface, who works there, what it is built of, and which numbers it has made its own. */
export const VenuePage = () => {
  const { venue, venues, units } = useDesk();
  const [draft, setDraft] = useState<Venue | null>(null);
  if (!venue) return <TakeIn />;
  const shown = draft ?? venue;
  const changed = draft !== null && JSON.stringify(draft) !== JSON.stringify(venue);
  const setting = (
    label: string,
    unit: string,
    now: number,
    stored: number,
    low: number,
    high: number,
    set: (value: number) => void,
  ) => (
    <li key={label}>
      <label>
        <span>{label}</span>
        <NumberField label={`${label}, ${unit}`} value={round(now)} low={low} high={high} change={set} />
        <span>{unit}</span>
      </label>
      {round(now) !== round(stored) && (
        <span className="was">
          was {round(stored)}{' '}
          <button type="button" aria-label={`${label} back to ${round(stored)}`} onClick={() => set(round(stored))}>
            back
          </button>
        </span>
      )}
    </li>
  );
  type RuleName =
    'coverNeeded' | 'chanceNeeded' | 'rutAllowed' | 'certifyLead' | 'paint' | 'settle' | 'contingency' | 'rest' | 'sodWaste';
  const rule = (name: RuleName, label: string, unit: string, factor: number, low: number, high: number) =>
    setting(label, unit, shown.rules[name] * factor, venue.rules[name] * factor, low, high, (value) =>
      setDraft({ ...shown, rules: { ...shown.rules, [name]: value / factor } }),
    );
  const crew = (name: 'dayCrew' | 'nightCrew' | 'overtimeCrew', label: string) =>
    setting(label, 'people', shown.workforce[name], venue.workforce[name], 0, 200, (value) =>
      setDraft({ ...shown, workforce: { ...shown.workforce, [name]: Math.round(value) } }),
    );
  return (
    <section aria-labelledby="venue">
      <h2 id="venue">Venue</h2>
      <div className="row">
        {venues.length > 1 && (
          <label>
            Venue{' '}
            <select value={venue.id} onChange={(event) => void openVenue(event.target.value)}>
              {venues.map((line) => (
                <option key={line.id} value={line.id}>
                  {line.name}
                </option>
              ))}
            </select>
          </label>
        )}
        <button type="button" onClick={() => void writeOutVenue()}>
          Write the venue to a file
        </button>
      </div>
      <p>{shown.about}</p>
      <p>
        {inUnits(size(venue).length, 'length', units)} by {inUnits(size(venue).width, 'length', units)} at{' '}
        {Math.abs(venue.place.latitude)}° {venue.place.latitude >= 0 ? 'N' : 'S'}, {Math.abs(venue.place.longitude)}°{' '}
        {venue.place.longitude >= 0 ? 'E' : 'W'}, {inUnits(venue.place.elevation, 'length', units)} above the sea, axis{' '}
        {venue.field.bearing}° from north. {constructionWords[venue.field.rootZone.construction]},{' '}
        {Math.round(100 * venue.field.rootZone.sandShare)} % sand, {inUnits(venue.field.rootZone.depth, 'smallLength', units)}{' '}
        deep; {venue.field.sward.map((part) => `${Math.round(100 * part.share)} % ${grassWords[part.grass]}`).join(', ')}, cut at{' '}
        {inUnits(venue.field.mowingHeight, 'smallLength', units)}. {venue.stands.length} stands.
      </p>
      <Part title="What the venue asks">
        <ul className="settings">
          {rule('coverNeeded', 'Live cover needed', '%', 100, 30, 100)}
          {rule('rutAllowed', 'Deepest rut allowed', 'mm', 1000, 0, 100)}
          {rule('chanceNeeded', 'Chance of being ready a plan must reach', '%', 100, 50, 99.9)}
          {rule('certifyLead', 'Surface tested before the home date', 'h', 1, 0, 240)}
          {rule('paint', 'Painting', 'h', 1, 0, 96)}
          {rule('settle', 'New sod settles', 'h', 1, 0, 96)}
          {rule('contingency', 'Kept in hand', 'h', 1, 0, 240)}
          {rule('rest', 'Closed after a covering comes off', 'h', 1, 0, 168)}
          {rule('sodWaste', 'Sod ordered beyond the measure', '%', 100, 0, 30)}
        </ul>
        <p className="caution">Standing: rules of this venue. The competition’s own rules go before them.</p>
      </Part>
      <Part title="Crew and machines">
        <ul className="settings">
          {crew('dayCrew', 'Crew by day')}
          {crew('nightCrew', 'Crew by night')}
          {crew('overtimeCrew', 'More on overtime')}
          {machineKinds.map((kind) =>
            setting(
              machineWords[kind].replace(/^./, (letter) => letter.toUpperCase()),
              'on call',
              shown.workforce.machines[kind] ?? 0,
              venue.workforce.machines[kind] ?? 0,
              0,
              50,
              (value) =>
                setDraft({
                  ...shown,
                  workforce: { ...shown.workforce, machines: { ...shown.workforce.machines, [kind]: Math.round(value) } },
                }),
            ),
          )}
        </ul>
        <p>
          {venue.workforce.curfew
            ? `Nothing noisy from ${venue.workforce.curfew.from} to ${venue.workforce.curfew.until}.`
            : 'No curfew.'}
        </p>
      </Part>
      <div className="row sticky">
        <button type="button" disabled={!changed} onClick={() => setDraft(null)}>
          Back to what is stored
        </button>
        <button
          type="button"
          className="main"
          disabled={!changed}
          onClick={() => draft && void saveVenue(draft).then((stored) => stored && setDraft(null))}
        >
          Store the venue
        </button>
        {changed && <span>Kept forecasts stay; the sheet is foreseen anew.</span>}
      </div>
      <Farms venue={venue} />
      <Floors />
      <Numbers venue={venue} />
      <details>
        <summary>Take in another venue</summary>
        <TakeIn />
      </details>
    </section>
  );
};

const round = (value: number): number => Math.round(value * 1000) / 1000;

const size = (venue: Venue): { length: number; width: number } => {
  const xs = venue.field.outline.map(([x]) => x);
  const ys = venue.field.outline.map(([, y]) => y);
  return { length: Math.max(...ys) - Math.min(...ys), width: Math.max(...xs) - Math.min(...xs) };
};

/** A venue out of a file that Fieldback wrote. */
export const TakeIn = () => (
  <label className="take-in">
    A venue file that Fieldback wrote{' '}
    <input
      type="file"
      accept=".fieldback-venue,application/json,.json"
      onChange={(event) => {
        const file = event.target.files?.[0];
        if (file) void file.text().then(takeInVenue);
      }}
    />
  </label>
);
