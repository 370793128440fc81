import { drawnForecast, show, useDesk } from '../../desk/desk.ts';
import { Pressed } from './pressed.tsx';

/** Zones as the forecast letters them (the event's, the venue's, the rest of the turf), and the one that stands on the sheet. */
export const useZones = () => {
  const desk = useDesk();
  const zones = drawnForecast(desk)?.zones ?? [];
  return { zones, chosen: zones.find((zone) => zone.letter === desk.zone)?.letter ?? null };
};

/** The zone one stands in; the plan shows it too. */
export const ZoneChoice = ({ value }: { value: string | null }) => {
  const { zones } = useZones();
  if (zones.length === 0) return <p className="empty">There are no zones yet: open a venue with a home date first.</p>;
  const choices = zones.map(({ letter, name }) => [letter, `${letter} ${name}`] as const);
  return <Pressed label="Zone" value={value} choices={choices} change={(letter) => show({ zone: letter })} />;
};
