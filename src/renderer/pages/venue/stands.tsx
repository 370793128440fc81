import { unitOf } from '#shared/units/quantity.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';
import { EntryTable, Part, QuantityField, RemoveButton, TextField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { newStand } from '../../desk/venue-start.ts';
import { boundsOf } from '../../drawings/frame.ts';
import { freeKey, withAt, type VenuePart } from './parts.ts';

const sides = ['north', 'south', 'east', 'west'] as const;
const sideWords = { north: 'above the field', south: 'below it', east: 'right of it', west: 'left of it' } as const;

/** The blocks of seats that shade the field. */
export const Stands = ({ venue, set }: VenuePart) => {
  const { units } = useDesk();
  const change = (index: number, changed: Partial<Stand>): void =>
    set({ ...venue, stands: withAt(venue.stands, index, changed) });
  return (
    <Part title="Stands">
      {venue.stands.length === 0 ? (
        <p className="empty">Without stands the field is reckoned in the open: they decide the light it gets.</p>
      ) : (
        <EntryTable
          caption={`From the middle of the field and its axis, ${unitOf('length', units)}. Tiers and shapes are drawn on the plan.`}
          heads={['Stand', 'Left', 'Bottom', 'Wide', 'Deep', 'High', 'Roof under']}
          end="Remove"
        >
          {venue.stands.map((stand, index) => {
            const frame = boundsOf([stand.outline]);
            const reframe = (changed: Partial<typeof frame>): void => {
              const next = { ...frame, ...changed };
              if (!(next.width > 0.5 && next.height > 0.5)) return;
              const move = (outline: Stand['outline']) =>
                outline.map(
                  ([x, y]) =>
                    [
                      next.x + ((x - frame.x) / frame.width) * next.width,
                      next.y + ((y - frame.y) / frame.height) * next.height,
                    ] as const,
                );
              change(index, {
                outline: move(stand.outline),
                tiers: stand.tiers.map((tier) => ({ ...tier, outline: move(tier.outline) })),
                roof: stand.roof && { ...stand.roof, outline: move(stand.roof.outline) },
              });
            };
            const raise = (height: number): void => {
              if (!(height > 0 && height <= 120)) return;
              const top = stand.tiers.at(-1)?.height ?? stand.height;
              change(index, {
                height: (stand.height * height) / top,
                tiers: stand.tiers.map((tier) => ({ ...tier, height: (tier.height * height) / top })),
              });
            };
            const cover = (underside: number): void =>
              change(index, {
                roof:
                  underside > 0
                    ? { outline: stand.outline, transmission: 0, ...stand.roof, underside, top: underside + 2 }
                    : null,
              });
            const cell = (label: string, value: number, take: (value: number) => void) => (
              <td>
                <QuantityField label={`${stand.name} ${label}`} quantity="length" value={value} change={take} />
              </td>
            );
            return (
              <tr key={stand.id}>
                <td>
                  <TextField label={`Name of ${stand.name}`} value={stand.name} change={(name) => change(index, { name })} />
                </td>
                {cell('left', frame.x, (x) => reframe({ x }))}
                {cell('bottom', frame.y, (y) => reframe({ y }))}
                {cell('wide', frame.width, (width) => reframe({ width }))}
                {cell('deep', frame.height, (height) => reframe({ height }))}
                {cell('high', stand.tiers.at(-1)?.height ?? stand.height, raise)}
                {cell('roof under, 0 for none', stand.roof?.underside ?? 0, cover)}
                <td>
                  <RemoveButton
                    label={`Remove ${stand.name}`}
                    remove={() => set({ ...venue, stands: venue.stands.filter((_, at) => at !== index) })}
                  />
                </td>
              </tr>
            );
          })}
        </EntryTable>
      )}
      <div className="row">
        {sides.map((side) => (
          <button
            key={side}
            type="button"
            onClick={() => {
              const key = freeKey(
                'stand',
                venue.stands.map(({ id }) => id),
              );
              set({ ...venue, stands: [...venue.stands, newStand(venue, key, side)] });
            }}
          >
            Add a stand {sideWords[side]}
          </button>
        ))}
      </div>
    </Part>
  );
};
