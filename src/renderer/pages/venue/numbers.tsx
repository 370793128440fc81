import { useState } from 'react';
import type { Parameter } from '#shared/parameters/parameter.ts';
import type { Source } from '#shared/sources/source.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { NumberField, Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { saveVenue } from '../../desk/venue-keeping.ts';

/** Rows shown at once; a search narrows them. */
const mostRows = 25;

/** Every number the engine uses, to be searched, read with its standing, made the venue's own with a reason, and taken back. */
export const Numbers = ({ venue }: { venue: Venue }) => {
  const { catalogue } = useDesk();
  const [wanted, setWanted] = useState('');
  const [own, setOwn] = useState<{ name: string; value: number; reason: string } | null>(null);
  const parameters = Object.entries((catalogue?.parameters ?? {}) as Readonly<Record<string, Parameter>>);
  const sources = (catalogue?.sources ?? {}) as Readonly<Record<string, Source>>;
  const words = wanted.toLowerCase().split(/\s+/).filter(Boolean);
  const matching =
    words.length === 0
      ? parameters.filter(([name]) => venue.settings[name])
      : parameters.filter(([name, parameter]) =>
          words.every((word) => `${name} ${parameter.meaning} ${parameter.standing}`.toLowerCase().includes(word)),
        );
  const store = (settings: Venue['settings']): void =>
    void saveVenue({ ...venue, settings }).then((stored) => stored && setOwn(null));
  const back = (name: string): void =>
    store(Object.fromEntries(Object.entries(venue.settings).filter(([other]) => other !== name)));
  return (
    <Part title="Numbers">
      <p>
        {parameters.length} numbers stand behind the forecast; {Object.keys(venue.settings).length} of them are this venue’s own.
        Look one up by its words: light, heat, feet, rut, sod, drain …
      </p>
      <label>
        Look for <input type="search" value={wanted} onChange={(event) => setWanted(event.target.value)} />
      </label>
      {matching.length > 0 && (
        <div className="scroll">
          <table className="numbers">
            <caption>
              {words.length === 0 ? 'Numbers this venue has made its own' : `${matching.length} found`}
              {matching.length > mostRows && `, the first ${mostRows} are shown`}
            </caption>
            <thead>
              <tr>
                <th scope="col">Number</th>
                <th scope="col">Value</th>
                <th scope="col">Range</th>
                <th scope="col">Standing</th>
                <th scope="col">
                  <span className="for-readers">Change</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {matching.slice(0, mostRows).map(([name, parameter]) => {
                const kept = venue.settings[name];
                const source = parameter.source ? sources[parameter.source] : undefined;
                const unit = parameter.unit === '1' ? '' : ` ${parameter.unit}`;
                return (
                  <tr key={name}>
                    <th scope="row">
                      {parameter.meaning}
                      <br />
                      <code>{name}</code>
                    </th>
                    <td>
                      {own?.name === name ? (
                        <NumberField
                          label={`Own value of ${name}`}
                          value={own.value}
                          low={parameter.low}
                          high={parameter.high}
                          change={(value) => setOwn({ ...own, value })}
                        />
                      ) : (
                        <>
                          {kept ? kept.value : parameter.value}
                          {unit}
                        </>
                      )}
                    </td>
                    <td>
                      {parameter.low}–{parameter.high}
                    </td>
                    <td>
                      {kept
                        ? `own since ${kept.since}: ${kept.reason}; the catalogue says ${parameter.value}${unit}, ${parameter.standing}`
                        : `${parameter.standing}${source ? `: ${source.authors}${source.year ? ` ${source.year}` : ''}` : ''}`}
                    </td>
                    <td>
                      {own?.name === name ? (
                        <>
                          <label>
                            Why{' '}
                            <input
                              value={own.reason}
                              maxLength={400}
                              onChange={(event) => setOwn({ ...own, reason: event.target.value })}
                            />
                          </label>
                          <button
                            type="button"
                            className="main"
                            disabled={own.reason.trim() === ''}
                            onClick={() =>
                              store({
                                ...venue.settings,
                                [name]: { value: own.value, reason: own.reason.trim(), since: today() },
                              })
                            }
                          >
                            Make it ours
                          </button>
                          <button type="button" onClick={() => setOwn(null)}>
                            Leave it
                          </button>
                        </>
                      ) : kept ? (
                        <button type="button" onClick={() => back(name)} aria-label={`${name} back to the catalogue`}>
                          back to {parameter.value}
                        </button>
                      ) : (
                        <button
                          type="button"
                          aria-label={`Change ${name}`}
                          onClick={() => setOwn({ name, value: parameter.value, reason: '' })}
                        >
                          change
                        </button>
                      )}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </Part>
  );
};

/** Today on this machine's calendar. */
const today = (): string => {
  const now = new Date();
  const pad = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
};
