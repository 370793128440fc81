import type { ReactNode } from 'react';
import { dateOf } from '#shared/calendar/local-time.ts';
import { coverSteps } from '#shared/wording/cover-scale.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { verdictMarks, verdictWords } from '#shared/wording/words.ts';
import { drawnBooking, drawnForecast, show, useDesk, type ShownState } from '../desk/desk.ts';
import { momentWords } from '../desk/moments.ts';
import { HatchSwatch } from '../drawings/hatches.tsx';

/** What the colours, hatches, words and shade of the plan say, and which evening is drawn. */
export const Legend = ({ children }: { children?: ReactNode }) => {
  const desk = useDesk();
  const { state, coverings, shadow, cursor } = desk;
  const forecast = drawnForecast(desk);
  const floors = [...new Set(drawnBooking(desk)?.layers.map((layer) => layer.covering) ?? [])];
  const states: readonly (readonly [ShownState, string])[] = [
    ['after', 'last layer off'],
    ['home', forecast ? dayWords(dateOf(forecast.homeDate.start)) : 'home date'],
    ['cursor', cursor ? `cursor, ${dayWords(dateOf(cursor))}` : 'cursor'],
  ];
  return (
    <figcaption>
      {children}
      <span className="states" role="group" aria-label="Evening that is drawn">
        {states.map(([one, words]) => (
          <button key={one} type="button" aria-pressed={state === one} onClick={() => show({ state: one })}>
            {words}
          </button>
        ))}
      </span>
      <ul className="legend" aria-label="Live cover by colour">
        {coverSteps.map((step) => (
          <li key={step.words}>
            <i style={{ background: step.colour }} />
            {step.words}
          </li>
        ))}
      </ul>
      <ul className="legend" aria-label="Floors by hatch">
        {floors.map((id) => (
          <li key={id}>
            <HatchSwatch covering={id} />
            {coverings.find((covering) => covering.id === id)?.name ?? id}
          </li>
        ))}
      </ul>
      <p>
        {Object.entries(verdictMarks)
          .map(([verdict, mark]) => `${mark}: ${verdictWords[verdict as keyof typeof verdictWords]}`)
          .join('; ')}
        .{state === 'cursor' && ' On the cursor’s day each zone shows its middle.'}
        {shadow && cursor && (shadow.altitude > 0 ? ` Shade: ${momentWords(cursor)}.` : ` Night at ${momentWords(cursor)}.`)}
      </p>
    </figcaption>
  );
};
