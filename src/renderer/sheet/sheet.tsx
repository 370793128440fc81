import { useEffect, type KeyboardEvent } from 'react';
import { LastHour } from '../margin/last-hour.tsx';
import { Trouble } from '../margin/trouble.tsx';
import { Working } from '../margin/working.tsx';
import { Book } from '../pages/book.tsx';
import { Compare } from '../pages/compare.tsx';
import { Foresee } from '../pages/foresee.tsx';
import { Recover } from '../pages/recover.tsx';
import { VenuePage } from '../pages/venue-page.tsx';
import { FieldPlan } from '../plan/field-plan.tsx';
import { ZoneTable } from '../plan/zone-table.tsx';
import { Strip } from '../strip/strip.tsx';
import { begin, chooseTheme, chooseUnits, isChanged, redo, show, undo, useDesk } from './desk.ts';
import { verbs } from './verbs.ts';

const pages = { book: Book, foresee: Foresee, compare: Compare, recover: Recover, venue: VenuePage };

/** One drawing sheet: the plan in the middle, the strip below, the margin on the right, the title block at its foot. */
export const Sheet = () => {
  const desk = useDesk();
  const { verb, theme, units } = desk;
  useEffect(() => void begin(), []);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  const Page = pages[verb];
  const onKeyDown = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    (event.shiftKey ? redo : undo)();
  };
  return (
    <div className="sheet" onKeyDown={onKeyDown}>
      <header>
        <nav aria-label="What you are doing">
          {verbs.map((one) => (
            <button key={one} type="button" aria-current={verb === one ? 'page' : undefined} onClick={() => show({ verb: one })}>
              {one}
            </button>
          ))}
        </nav>
        <LastHour />
        <div className="look" role="group" aria-label="Look of the sheet">
          <button type="button" onClick={() => chooseUnits(units === 'us' ? 'si' : 'us')}>
            {units === 'us' ? 'ft, °F' : 'm, °C'}
          </button>
          <button type="button" onClick={() => chooseTheme(theme === 'dark' ? 'paper' : 'dark')}>
            {theme === 'dark' ? 'paper' : 'dark'}
          </button>
        </div>
      </header>
      <main>
        <FieldPlan />
        <div className="twin" tabIndex={0} role="region" aria-label="Zones as a table">
          <ZoneTable />
        </div>
      </main>
      <aside aria-label="Margin" tabIndex={0}>
        <Trouble />
        <Working />
        <Page />
        <TitleBlock />
      </aside>
      <footer>
        <Strip />
      </footer>
    </div>
  );
};

/** What the sheet shows and how far it can be leaned on. */
const TitleBlock = () => {
  const desk = useDesk();
  const { venue, booking, run, preview } = desk;
  return (
    <dl className="title-block">
      <div>
        <dt>Venue</dt>
        <dd>{venue?.name ?? '–'}</dd>
      </div>
      <div>
        <dt>Booking</dt>
        <dd>
          {booking?.name ?? '–'}
          {isChanged(desk) && ' (changed, not stored)'}
        </dd>
      </div>
      <div>
        <dt>Run</dt>
        <dd>{run ? `${run.id.slice(0, 12)}, ${run.result.members} members` : preview ? 'usual season, not kept' : '–'}</dd>
      </div>
      <div>
        <dt>Made</dt>
        <dd>{run ? `${run.createdAt.slice(0, 10)}, engine ${run.engineVersion}` : '–'}</dd>
      </div>
      <div className="wide">
        <dt>Standing</dt>
        <dd>A forecast of turf. Readiness is decided by measured tests and the competition’s own rules.</dd>
      </div>
    </dl>
  );
};
