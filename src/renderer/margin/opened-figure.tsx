import { useEffect, useRef } from 'react';
import { figure as digits, show as inUnits, type UnitSystem } from '#shared/units/quantity.ts';
import type { Parameter } from '#shared/parameters/parameter.ts';
import type { Source } from '#shared/sources/source.ts';
import type { Forecast, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { explanations } from '#shared/wording/explanations.ts';
import { momentWords } from '../desk/moments.ts';
import { causeWords } from '#shared/wording/words.ts';
import { percent, rankedCauses } from '../components/numbers.ts';
import { drawnForecast, show, useDesk } from '../desk/desk.ts';

/** Rows of the catalogue that are shown before the reader is sent to the venue page. */
const mostNumbers = 14;

/** Names of the catalogue that a figure rests on, for this venue and zone. */
const namesOf = (
  wanted: readonly string[],
  known: readonly string[],
  venue: Venue,
  zone: ZoneForecast | undefined,
): readonly string[] => {
  const grass = venue.field.sward[0]!.grass;
  const filled = wanted.map((name) =>
    name
      .replace('{season}', seasonOf(grass))
      .replace('{soil}', venue.field.rootZone.soil)
      .replace('{grass}', grass)
      .replace('{use}', zone?.use ?? 'other'),
  );
  return known.filter((name) => filled.some((one) => name === one || (one.endsWith('.') && name.startsWith(one))));
};

/** What of the zone went in. */
const inputsOf = (
  zone: ZoneForecast,
  forecast: Forecast,
  venue: Venue,
  units: UnitSystem,
): readonly (readonly [string, string])[] => [
  ['Turf', inUnits(zone.area, 'area', units)],
  ['Covered', zone.firstOn && zone.lastOff ? `${momentWords(zone.firstOn)} to ${momentWords(zone.lastOff)}` : 'never'],
  ['Hours covered, without light', `${zone.hoursCovered} h, ${zone.hoursDark} h`],
  ...(zone.crownTemperature
    ? ([
        [
          'Crowns, mean and hottest',
          `${inUnits(zone.crownTemperature.mean, 'temperature', units)}, ${inUnits(zone.crownTemperature.highest, 'temperature', units)}`,
        ],
      ] as const)
    : []),
  [
    'Light in the open, covered',
    `${digits(zone.light.open, 1)}, ${zone.light.covered === null ? '–' : digits(zone.light.covered, 1)} mol/m²/d`,
  ],
  ['Steps', inUnits(zone.footfalls, 'onGround', units)],
  ['Worst pressure', inUnits(zone.pressure, 'pressure', units)],
  [
    'Loss by cause',
    rankedCauses(zone.causes)
      .map(({ cause, share }) => `${causeWords[cause]} ${percent(share)}`)
      .join(', ') || 'none',
  ],
  [
    'The venue asks',
    `${percent(venue.rules.coverNeeded)} cover, ruts to ${inUnits(venue.rules.rutAllowed, 'smallLength', units)}`,
  ],
  ['Members, seed, engine', `${forecast.members}, ${forecast.seed}, ${forecast.engineVersion}`],
];

/** A figure laid open: how it is found, what went in, the numbers of the catalogue it rests on, and how far it can be leaned on. */
export const OpenedFigurePanel = () => {
  const desk = useDesk();
  const { figure, venue, catalogue, units } = desk;
  const forecast = drawnForecast(desk);
  const panel = useRef<HTMLElement>(null);
  const opener = useRef<HTMLElement | null>(null);
  useEffect(() => {
    if (figure) {
      const from = document.activeElement;
      if (from instanceof HTMLElement && !panel.current?.contains(from)) opener.current = from;
      panel.current?.focus();
      panel.current?.scrollIntoView({ block: 'nearest' });
    } else if (opener.current?.isConnected) opener.current.focus();
  }, [figure]);
  if (!figure || !venue) return null;
  const { title, how, numbers, standing } = explanations[figure.kind];
  const zone = forecast?.zones.find((one) => one.letter === figure.zone);
  const parameters = (catalogue?.parameters ?? {}) as Readonly<Record<string, Parameter>>;
  const sources = (catalogue?.sources ?? {}) as Readonly<Record<string, Source>>;
  const names = namesOf(numbers, Object.keys(parameters), venue, zone);
  return (
    <section
      className="opened"
      ref={panel}
      tabIndex={-1}
      aria-label={`How ${title} is found`}
      onKeyDown={(event) => event.key === 'Escape' && show({ figure: null })}
    >
      <h2>
        {title}: {figure.shown}
      </h2>
      {zone && (
        <p>
          Zone {zone.letter} {zone.name}
        </p>
      )}
      {how.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {zone && forecast && (
        <details open>
          <summary>What went in</summary>
          <table>
            <tbody>
              {inputsOf(zone, forecast, venue, units).map(([label, value]) => (
                <tr key={label}>
                  <th scope="row">{label}</th>
                  <td>{value}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
      {names.length > 0 && (
        <details open={names.length <= 6}>
          <summary>Numbers of the catalogue ({names.length})</summary>
          <ul className="parameters">
            {names.slice(0, mostNumbers).map((name) => {
              const parameter = parameters[name]!;
              const own = venue.settings[name];
              const source = parameter.source ? sources[parameter.source] : undefined;
              return (
                <li key={name}>
                  {parameter.meaning}:{' '}
                  <strong>
                    {own ? own.value : parameter.value}
                    {parameter.unit === '1' ? '' : ` ${parameter.unit}`}
                  </strong>{' '}
                  ({parameter.low} to {parameter.high}); {own ? `this venue’s own since ${own.since}` : parameter.standing}
                  {!own && source && `, ${source.authors}${source.year ? ` ${source.year}` : ''}`}.
                </li>
              );
            })}
          </ul>
          {names.length > mostNumbers && <p className="caution">The others stand on the venue page under numbers.</p>}
        </details>
      )}
      <p className="caution">Standing: {standing}</p>
      <button type="button" onClick={() => show({ figure: null })}>
        Close
      </button>
    </section>
  );
};
