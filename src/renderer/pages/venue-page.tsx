import { useState } from 'react';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { constructionWords, grassWords } from '#shared/wording/words.ts';
import { saveVenue, useDesk } from '../sheet/desk.ts';

/** What the venue asks of the surface, its crew, and what it is built of. */
export const VenuePage = () => {
  const { venue } = useDesk();
  const [draft, setDraft] = useState<Venue | null>(null);
  if (!venue) return null;
  const shown = draft ?? venue;
  const rule = (
    name: 'coverNeeded' | 'chanceNeeded' | 'certifyLead' | 'contingency' | 'rest' | 'sodWaste',
    label: string,
    unit: string,
    factor = 1,
  ) => (
    <label>
      {label}
      <input
        type="number"
        step="any"
        value={Math.round(shown.rules[name] * factor * 1000) / 1000}
        onChange={(event) => setDraft({ ...shown, rules: { ...shown.rules, [name]: Number(event.target.value) / factor } })}
      />
      {unit}
    </label>
  );
  const crew = (name: 'dayCrew' | 'nightCrew' | 'overtimeCrew', label: string) => (
    <label>
      {label}
      <input
        type="number"
        min={0}
        max={200}
        value={shown.workforce[name]}
        onChange={(event) =>
          setDraft({ ...shown, workforce: { ...shown.workforce, [name]: Math.round(Number(event.target.value)) } })
        }
      />
      people
    </label>
  );
  return (
    <section aria-labelledby="venue">
      <h2 id="venue">Venue</h2>
      <p>{shown.about}</p>
      <p>
        {constructionWords[shown.field.rootZone.construction]}, {Math.round(100 * shown.field.rootZone.sandShare)} % sand,{' '}
        {Math.round(1000 * shown.field.rootZone.depth)} mm deep;{' '}
        {shown.field.sward.map((part) => `${Math.round(100 * part.share)} % ${grassWords[part.grass]}`).join(', ')}.
      </p>
      <div className="fields">
        {rule('coverNeeded', 'Live cover needed', '%', 100)}
        {rule('chanceNeeded', 'Chance of being ready a plan must reach', '%', 100)}
        {rule('certifyLead', 'Surface tested before the home date', 'h')}
        {rule('contingency', 'Kept in hand', 'h')}
        {rule('rest', 'Closed after a covering comes off', 'h')}
        {rule('sodWaste', 'Sod ordered beyond the measure', '%', 100)}
        {crew('dayCrew', 'Crew by day')}
        {crew('nightCrew', 'Crew by night')}
        {crew('overtimeCrew', 'More on overtime')}
      </div>
      <h3>Farms</h3>
      <ul>
        {shown.farms.map((farm) => (
          <li key={farm.id}>
            {farm.name}: notice {farm.notice} h, haul {farm.haul} h, {farm.trucksPerDay} trucks a day
          </li>
        ))}
      </ul>
      <div className="row">
        <button type="button" disabled={draft === null} onClick={() => setDraft(null)}>
          Back to what is stored
        </button>
        <button
          type="button"
          className="main"
          disabled={draft === null}
          onClick={() => draft && void saveVenue(draft).then(() => setDraft(null))}
        >
          Store the venue
        </button>
      </div>
    </section>
  );
};
