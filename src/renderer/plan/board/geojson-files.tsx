import { useState } from 'react';
import { fromGeoJson, toGeoJson, type Coordinates, type DrawnShape } from '#shared/geometry/geojson.ts';
import { Choice, Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { shapesOf, withNew, withOutline, type DrawnOn, type Plot } from '../../desk/shapes.ts';
import { draw } from '../drafting.ts';
import { editPlot, plotNow } from '../drawing.ts';

const coordinateWords = {
  earth: 'longitude and latitude (RFC 7946)',
  field: 'metres from the middle of the field',
} as const satisfies Record<Coordinates, string>;

/** The plot with shapes of a file: one that has the letter or the name of a drawn one takes its outline's place. */
const withShapes = (plot: Plot, on: DrawnOn, shapes: readonly DrawnShape[]): Plot =>
  shapes.reduce((sofar, read) => {
    const part = on === 'event' ? 'footprint' : read.part === 'footprint' ? 'standing-zone' : read.part;
    const known = shapesOf(sofar, on).find(
      (shape) =>
        shape.part === part &&
        (part === 'field' || (shape.letter === read.letter && (read.letter !== null || shape.name === read.name))),
    );
    if (known) return withOutline(sofar, known.key, read.outline);
    return withNew(sofar, { ...read, part })?.plot ?? sofar;
  }, plot);

/** Drawings in and out as GeoJSON. */
export const GeoJsonFiles = ({ on }: { on: DrawnOn }) => {
  const { venue, booking } = useDesk();
  const [coordinates, setCoordinates] = useState<Coordinates>('earth');
  const [problems, setProblems] = useState<readonly string[]>([]);
  if (!venue) return null;
  const frame = { place: venue.place, bearing: venue.field.bearing };
  const write = (): void => {
    const plot = plotNow();
    if (!plot) return;
    const shapes = shapesOf(plot, on).map(({ part, letter, name, use, outline }) => ({ part, letter, name, use, outline }));
    const link = document.createElement('a');
    const text = JSON.stringify(toGeoJson(shapes, frame, coordinates), null, 1);
    link.href = URL.createObjectURL(new Blob([text], { type: 'application/geo+json' }));
    link.download = `${on === 'event' ? (booking?.id ?? 'event') : venue.id}.geojson`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };
  const takeIn = async (file: File): Promise<void> => {
    const plot = plotNow();
    const read = fromGeoJson(await file.text(), frame, null);
    setProblems(read.problems);
    // An event's drawing takes the outline of a field along; the field is the venue's to change.
    const shapes = read.shapes.filter((shape) => on === 'venue' || shape.part === 'footprint');
    const left = read.shapes.length - shapes.length;
    if (plot && shapes.length > 0)
      editPlot(withShapes(plot, on, shapes), { part: on === 'event' ? 'footprint' : 'field', id: '' });
    draw({
      said: `${shapes.length} ${shapes.length === 1 ? 'shape' : 'shapes'} taken in as ${coordinateWords[read.coordinates]}${left > 0 ? `; ${left} of the venue left out, open venue to take them in` : ''}.`,
    });
  };
  return (
    <Part title="Drawings in and out (GeoJSON)">
      <div className="row">
        <label>
          Written in{' '}
          <Choice label="Coordinates of the file" value={coordinates} words={coordinateWords} change={setCoordinates} />
        </label>
        <button type="button" onClick={write}>
          Write GeoJSON
        </button>
        <label>
          Take in{' '}
          <input
            type="file"
            aria-label="GeoJSON file to take in"
            accept=".geojson,.json,application/geo+json"
            onChange={(event) => {
              const file = event.target.files?.[0];
              event.target.value = '';
              if (file) void takeIn(file);
            }}
          />
        </label>
      </div>
      {problems.length > 0 && (
        <ul>
          {problems.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      <p className="caution">
        Longitude and latitude are laid about the venue’s place with the field’s bearing. A file in metres says so; any other is
        taken for longitude and latitude where it lies about the venue.
      </p>
    </Part>
  );
};
