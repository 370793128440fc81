import { useId, useState, type FormEvent } from 'react';
import { grasses, type Grass } from '#shared/vocabulary/turf.ts';
import { grassWords } from '#shared/wording/words.ts';
import { useDesk } from '../../desk/desk.ts';
import { beginVenue } from '../../desk/venue-keeping.ts';
import { fieldSizes, newVenue, type FieldCode } from '../../desk/venue-start.ts';

const zones = Intl.supportedValuesOf('timeZone');

/** A key made of a name: "Harbour Field" becomes "harbour-field". */
const keyOf = (name: string, taken: ReadonlySet<string>): string => {
  const stem =
    name
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'venue';
  let key = stem;
  for (let number = 2; taken.has(key); number++) key = `${stem}-${number}`;
  return key;
};

/** A venue from nothing: name, place, field, grass. Everything else begins as common practice has it and is put right on its page. */
export const NewVenue = () => {
  const { venues } = useDesk();
  const id = useId();
  const [name, setName] = useState('');
  const [latitude, setLatitude] = useState('');
  const [longitude, setLongitude] = useState('');
  const [timeZone, setTimeZone] = useState(Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [code, setCode] = useState<FieldCode>('soccer');
  const [grass, setGrass] = useState<Grass>('kentucky-bluegrass');
  const begin = (event: FormEvent): void => {
    event.preventDefault();
    const key = keyOf(name, new Set(venues.map((line) => line.id)));
    const beginning = { name: name.trim(), latitude: Number(latitude), longitude: Number(longitude), timeZone, code, grass };
    void beginVenue(newVenue(key, beginning));
  };
  const field = (label: string, key: string, input: React.ReactNode) => (
    <p key={key}>
      <label htmlFor={`${id}-${key}`}>{label}</label>
      {input}
    </p>
  );
  return (
    <form className="new-venue" onSubmit={begin}>
      {field(
        'Name of the venue',
        'name',
        <input id={`${id}-name`} required maxLength={120} value={name} onChange={(event) => setName(event.target.value)} />,
      )}
      {field(
        'Latitude, ° north',
        'latitude',
        <input
          id={`${id}-latitude`}
          type="number"
          required
          min={-66}
          max={66}
          step="any"
          value={latitude}
          onChange={(event) => setLatitude(event.target.value)}
        />,
      )}
      {field(
        'Longitude, ° east',
        'longitude',
        <input
          id={`${id}-longitude`}
          type="number"
          required
          min={-180}
          max={180}
          step="any"
          value={longitude}
          onChange={(event) => setLongitude(event.target.value)}
        />,
      )}
      {field(
        'Time zone',
        'zone',
        <>
          <input
            id={`${id}-zone`}
            required
            list={`${id}-zones`}
            value={timeZone}
            onChange={(event) => setTimeZone(event.target.value)}
          />
          <datalist id={`${id}-zones`}>
            {zones.map((zone) => (
              <option key={zone} value={zone} />
            ))}
          </datalist>
        </>,
      )}
      {field(
        'Field for',
        'code',
        <select id={`${id}-code`} value={code} onChange={(event) => setCode(event.target.value as FieldCode)}>
          {Object.entries(fieldSizes).map(([key, { name: words, width, length }]) => (
            <option key={key} value={key}>
              {words}, {length} × {width} m of turf
            </option>
          ))}
        </select>,
      )}
      {field(
        'Grass',
        'grass',
        <select id={`${id}-grass`} value={grass} onChange={(event) => setGrass(event.target.value as Grass)}>
          {grasses.map((one) => (
            <option key={one} value={one}>
              {grassWords[one]}
            </option>
          ))}
        </select>,
      )}
      <button type="submit" className="main">
        Begin this venue
      </button>
      <p className="caution">
        Root zone, crew and rules begin as is common practice, the weather as a guess from the latitude, and there are no stands,
        farms or prices. Each stands on the venue page with its standing until you put it right.
      </p>
    </form>
  );
};
