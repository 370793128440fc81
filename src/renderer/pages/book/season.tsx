import { Part } from '../../components/fields.tsx';
import { momentWords } from '../../desk/moments.ts';
import { percent } from '../../components/numbers.ts';
import { useDesk } from '../../desk/desk.ts';
import { closeDays, collisionsOf, coveredDays, groundOf, stackedCovers } from '../../strip/season-stack.ts';

/** The season of the strip in figures: what lies on each standing zone, and where two bookings come down on the same ground. */
export const Season = () => {
  const { venue, season } = useDesk();
  if (!venue || season.length === 0) return null;
  const covers = stackedCovers(venue, season);
  const collisions = collisionsOf(covers);
  return (
    <Part title="The season by zone">
      {collisions.length > 0 && (
        <ul>
          {collisions.map((one) => (
            <li key={`${one.zone}-${one.first}-${one.second}`}>
              Zone {one.zone}: {one.second} comes down {one.apart < 0 ? 'before' : `${one.apart} days after`} {one.first}{' '}
              {one.apart < 0 ? 'is off' : 'is off'}.
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>Days under cover, all bookings together</summary>
        <table>
          <caption>
            Days weighted by the share of the zone that is covered; within {closeDays} days is told as a collision
          </caption>
          <thead>
            <tr>
              <th scope="col">Zone</th>
              <th scope="col">Days covered</th>
              <th scope="col">By</th>
            </tr>
          </thead>
          <tbody>
            {groundOf(venue).map((zone) => (
              <tr key={zone.letter}>
                <th scope="row">
                  {zone.letter} {zone.name}
                </th>
                <td>{coveredDays(covers, zone.letter, venue.place.timeZone).toFixed(1)}</td>
                <td>
                  {covers
                    .filter((cover) => cover.zone === zone.letter && cover.share >= 0.1)
                    .map((cover) => `${cover.name} ${percent(cover.share)} to ${momentWords(cover.off)}`)
                    .join('; ') || '–'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </Part>
  );
};
