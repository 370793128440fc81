import { unitOf, show as inUnits } from '#shared/units/quantity.ts';
import { constructions, grasses, soils, type Grass } from '#shared/vocabulary/turf.ts';
import { constructionWords, grassWords, soilWords } from '#shared/wording/words.ts';
import { Choice, NumberField, Part, QuantityField, TextField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { boundsOf } from '../../drawings/frame.ts';
import { climateOf, guessedClimate } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

const share = (value: number): number => Math.round(1000 * value) / 10;

/** Where the venue lies, how large its turf is, what grows on it and what it stands in. */
export const Ground = ({ venue, set }: VenuePart) => {
  const { units } = useDesk();
  const { field, place } = venue;
  const bounds = boundsOf([field.outline]);
  const setField = (changed: Partial<typeof field>): void => set({ ...venue, field: { ...field, ...changed } });
  const setRoot = (changed: Partial<typeof field.rootZone>): void => setField({ rootZone: { ...field.rootZone, ...changed } });
  const setUsual = (changed: Partial<typeof field.usual>): void => setField({ usual: { ...field.usual, ...changed } });
  const setPlace = (changed: Partial<typeof place>): void =>
    set({
      ...venue,
      place: { ...place, ...changed },
      // A climate that was guessed from the latitude goes with it.
      climate: venue.climate.origin.startsWith(guessedClimate) ? climateOf(changed.latitude ?? place.latitude) : venue.climate,
    });
  /** The turf, and the standing zones on it, stretched about the middle to another size. */
  const resize = (width: number, height: number): void => {
    if (!(width > 5 && width < 400 && height > 5 && height < 400)) return;
    const stretch = (outline: typeof field.outline) =>
      outline.map(([x, y]) => [(x * width) / bounds.width, (y * height) / bounds.height] as const);
    set({
      ...venue,
      field: { ...field, outline: stretch(field.outline) },
      zones: venue.zones.map((zone) => ({ ...zone, outline: stretch(zone.outline) })),
    });
  };
  const [base, second] = field.sward;
  const sward = (grass: Grass, other: Grass | '', part: number): void =>
    setField({
      sward:
        other === '' || part <= 0
          ? [{ grass, share: 1 }]
          : [
              { grass, share: 1 - part },
              { grass: other, share: part },
            ],
    });
  return (
    <Part title="Place, field, root zone">
      <ul className="settings plain-settings">
        <li className="whole">
          <label>
            <span>Name</span>
            <TextField label="Name of the venue" value={venue.name} change={(name) => set({ ...venue, name })} />
          </label>
        </li>
        <Line text="Latitude, ° north">
          <NumberField
            label="Latitude, ° north"
            value={place.latitude}
            low={-66}
            high={66}
            change={(latitude) => setPlace({ latitude })}
          />
        </Line>
        <Line text="Longitude, ° east">
          <NumberField
            label="Longitude, ° east"
            value={place.longitude}
            low={-180}
            high={180}
            change={(longitude) => setPlace({ longitude })}
          />
        </Line>
        <Line text={`Above the sea, ${unitOf('length', units)}`}>
          <QuantityField
            label="Above the sea"
            quantity="length"
            value={place.elevation}
            change={(elevation) => setPlace({ elevation })}
          />
        </Line>
        <Line text="Time zone">
          <TextField label="Time zone of the venue" value={place.timeZone} change={(timeZone) => setPlace({ timeZone })} />
        </Line>
        <Line text="Axis, ° from north">
          <NumberField
            label="Bearing of the field axis, °"
            value={field.bearing}
            low={0}
            high={360}
            change={(bearing) => setField({ bearing })}
          />
        </Line>
        <Line text={`Turf across, ${unitOf('length', units)}`}>
          <QuantityField
            label="Turf across"
            quantity="length"
            value={bounds.width}
            change={(width) => resize(width, bounds.height)}
          />
        </Line>
        <Line text={`Turf along, ${unitOf('length', units)}`}>
          <QuantityField
            label="Turf along"
            quantity="length"
            value={bounds.height}
            change={(height) => resize(bounds.width, height)}
          />
        </Line>
        <Line text={`Apron around it, ${unitOf('length', units)}`}>
          <QuantityField label="Apron" quantity="length" value={field.apron} change={(apron) => setField({ apron })} />
        </Line>
        <Line text="Grass">
          <Choice
            label="Base grass"
            value={base!.grass}
            words={grasses.map((grass) => [grass, grassWords[grass]] as const)}
            change={(grass) => sward(grass, second?.grass === grass ? '' : (second?.grass ?? ''), second?.share ?? 0)}
          />
        </Line>
        <Line text="with, and %">
          <span className="two">
            <Choice
              label="Second grass"
              value={second?.grass ?? ''}
              words={[
                ['', 'nothing else'] as const,
                ...grasses.filter((grass) => grass !== base!.grass).map((grass) => [grass, grassWords[grass]] as const),
              ]}
              change={(other) => sward(base!.grass, other, second?.share ?? 0.2)}
            />
            {second && (
              <NumberField
                label="Share of the second grass, %"
                value={share(second.share)}
                low={1}
                high={60}
                change={(value) => value > 0 && value < 100 && sward(base!.grass, second.grass, value / 100)}
              />
            )}
          </span>
        </Line>
        <Line text={`Height of cut, ${unitOf('smallLength', units)}`}>
          <QuantityField
            label="Height of cut"
            quantity="smallLength"
            digits={units === 'us' ? 3 : 1}
            value={field.mowingHeight}
            change={(mowingHeight) => setField({ mowingHeight })}
          />
        </Line>
        <Line text="Construction">
          <Choice
            label="Construction"
            value={field.rootZone.construction}
            words={constructions.map((one) => [one, constructionWords[one]] as const)}
            change={(construction) => setRoot({ construction })}
          />
        </Line>
        <Line text="Soil">
          <Choice
            label="Soil"
            value={field.rootZone.soil}
            words={soils.map((one) => [one, soilWords[one]] as const)}
            change={(soil) => setRoot({ soil })}
          />
        </Line>
        <Line text="Sand, % by mass">
          <NumberField
            label="Sand, % by mass"
            value={share(field.rootZone.sandShare)}
            low={0}
            high={100}
            change={(value) => setRoot({ sandShare: value / 100 })}
          />
        </Line>
        <Line text={`Root zone, ${unitOf('smallLength', units)} deep`}>
          <QuantityField
            label="Depth of the root zone"
            quantity="smallLength"
            value={field.rootZone.depth}
            change={(depth) => setRoot({ depth })}
          />
        </Line>
        <Line text={`Gravel beneath, ${unitOf('smallLength', units)}`}>
          <QuantityField
            label="Gravel beneath"
            quantity="smallLength"
            value={field.rootZone.gravelDepth}
            change={(gravelDepth) => setRoot({ gravelDepth })}
          />
        </Line>
        <Line text={`Drains apart, ${unitOf('length', units)}`}>
          <QuantityField
            label="Drains apart"
            quantity="length"
            value={field.rootZone.drainSpacing}
            change={(drainSpacing) => setRoot({ drainSpacing })}
          />
        </Line>
        <Line text="Water through it, mm/h">
          <NumberField
            label="Water through it, mm/h"
            value={field.rootZone.conductivity}
            low={0.1}
            high={2000}
            change={(conductivity) => setRoot({ conductivity })}
          />
        </Line>
        <Line text="Live cover on an ordinary day, %">
          <NumberField
            label="Live cover on an ordinary day, %"
            value={share(field.usual.cover)}
            low={0}
            high={100}
            change={(value) => setUsual({ cover: value / 100 })}
          />
        </Line>
        <Line text="Living crowns, % of a full stand">
          <NumberField
            label="Living crowns, % of a full stand"
            value={share(field.usual.crowns)}
            low={0}
            high={100}
            change={(value) => setUsual({ crowns: value / 100 })}
          />
        </Line>
        <Line text="Reserve, % of full">
          <NumberField
            label="Reserve, % of full"
            value={share(field.usual.reserve)}
            low={0}
            high={100}
            change={(value) => setUsual({ reserve: value / 100 })}
          />
        </Line>
      </ul>
      <p className="caution">
        {inUnits(bounds.width * bounds.height, 'area', units)} within its sides. Standing: as entered for this venue; a new
        venue’s root zone and state are our assumption until measured. Back to what is stored: the button at the foot.
      </p>
    </Part>
  );
};

const Line = ({ text, children }: { text: string; children: React.ReactNode }) => (
  <li>
    <div className="line">
      <span>{text}</span>
      {children}
    </div>
  </li>
);
