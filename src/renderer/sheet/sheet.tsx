import { useEffect, useMemo, type KeyboardEvent } from 'react';
import { LastHour } from '../margin/last-hour.tsx';
import { Margin } from '../margin/margin.tsx';
import { Book } from '../pages/book/book.tsx';
import { Compare } from '../pages/compare/compare.tsx';
import { Foresee } from '../pages/foresee/foresee.tsx';
import { Inspect } from '../pages/inspect/inspect.tsx';
import { Recover } from '../pages/recover/recover.tsx';
import { Settle } from '../pages/settle/settle.tsx';
import { Report } from '../pages/report.tsx';
import { NewVenue } from '../pages/venue/new-venue.tsx';
import { TakeIn, VenuePage } from '../pages/venue/venue-page.tsx';
import { DrawingBoard } from '../plan/board/drawing-board.tsx';
import { FieldPlan } from '../plan/field-plan.tsx';
import { Strip } from '../strip/strip.tsx';
import { AfterTheHand, chooseClock, chooseTheme, chooseUnits, show, useDesk } from '../desk/desk.ts';
import { redo, undo } from '../desk/editing.ts';
import { begin, listenToOthers } from '../desk/opening.ts';
import { goToPart, usePartsByKey } from './parts-by-key.ts';
import { PageWords } from './page-words.tsx';
import { verbs } from './verbs.ts';

const pages = {
  book: Book,
  foresee: Foresee,
  compare: Compare,
  recover: Recover,
  inspect: Inspect,
  settle: Settle,
  report: Report,
  venue: VenuePage,
};

const margin = <Margin />;

/** Keys of undo and redo belong to a text field while somebody types in it. */
const isTyping = (target: EventTarget): boolean =>
  target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && ['text', 'search'].includes(target.type));

/** One drawing sheet: the plan and the work in the middle, the strip below, the margin with the title block on the right. */
export const Sheet = () => {
  const { verb, theme, units, clock, wide, opened, venues, venue } = useDesk();
  useEffect(() => {
    listenToOthers();
    void begin();
  }, []);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
    // A field for the time is as wide as its clock needs.
    document.documentElement.dataset['clock'] = clock;
  }, [theme, clock]);
  usePartsByKey();
  // The same elements as long as the page is the same: what AfterTheHand holds back is not drawn by the sheet's own changes.
  const work = useMemo(() => {
    const Page = pages[verb];
    return (
      <>
        <DrawingBoard />
        <PageWords verb={verb} />
        <Page />
      </>
    );
  }, [verb]);
  const strip = useMemo(() => <Strip key={clock} />, [clock]);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    (event.shiftKey || key === 'y' ? redo : undo)();
  };
  return (
    <div className={wide ? 'sheet wide-plan' : 'sheet'} onKeyDown={onKeyDown}>
      <header data-part="doing">
        <button type="button" className="skip" aria-keyshortcuts="F6" onClick={() => goToPart(1)}>
          F6: on to the plan, the work, the margin, the calendar
        </button>
        <nav aria-label="What you are doing">
          {verbs.map((one) => (
            <button key={one} type="button" aria-current={verb === one ? 'page' : undefined} onClick={() => show({ verb: one })}>
              {one}
            </button>
          ))}
        </nav>
        <LastHour />
        <div className="look" role="group" aria-label="Look of the sheet">
          <button
            type="button"
            aria-label={units === 'us' ? 'ft, °F: show metres and Celsius' : 'm, °C: show feet and Fahrenheit'}
            onClick={() => chooseUnits(units === 'us' ? 'si' : 'us')}
          >
            {units === 'us' ? 'ft, °F' : 'm, °C'}
          </button>
          <button
            type="button"
            aria-label={clock === '24' ? '24 h: show the twelve-hour clock' : '12 h: show the 24-hour clock'}
            onClick={() => chooseClock(clock === '24' ? '12' : '24')}
          >
            {clock} h
          </button>
          <button
            type="button"
            aria-label={theme === 'dark' ? 'dark: show the paper-white sheet' : 'paper: show the dark sheet'}
            onClick={() => chooseTheme(theme === 'dark' ? 'paper' : 'dark')}
          >
            {theme === 'dark' ? 'dark' : 'paper'}
          </button>
        </div>
      </header>
      {opened && venues.length === 0 ? (
        <main className="no-venue" data-part="work">
          <section>
            <h1>No venue yet</h1>
            <p>
              Everything begins with the place: a name, where it lies, how large the field is and what grows on it. Then a home
              date, then the first booking. A venue file that Fieldback wrote can be taken in as well.
            </p>
            <NewVenue />
            <TakeIn />
          </section>
        </main>
      ) : (
        <>
          <main>
            <h1 className="for-readers">{venue?.name ?? 'Fieldback'}</h1>
            <FieldPlan />
            <div className="board" key={verb} tabIndex={0} role="region" aria-label={`Work: ${verb}`} data-part="work">
              <AfterTheHand>{work}</AfterTheHand>
            </div>
          </main>
          <AfterTheHand>{margin}</AfterTheHand>
          <footer data-part="calendar">
            <AfterTheHand>{strip}</AfterTheHand>
          </footer>
        </>
      )}
    </div>
  );
};
