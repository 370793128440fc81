import { ChosenZone } from './chosen-zone.tsx';
import { Conflict } from './conflict.tsx';
import { DatesAndFloors } from './dates-and-floors.tsx';
import { OpenedFigurePanel } from './opened-figure.tsx';
import { TitleBlock } from './title-block.tsx';
import { Trouble } from './trouble.tsx';
import { Working } from './working.tsx';
import { ZoneCauses } from './zone-causes.tsx';

/** What is selected, in words and figures, and what can be done with it. The title block stands at its foot. */
export const Margin = () => (
  <aside aria-label="Margin" data-part="margin">
    <div className="margin-text" tabIndex={0} role="region" aria-label="What is chosen">
      <Trouble />
      <Conflict />
      <Working />
      <OpenedFigurePanel />
      <ChosenZone />
      <DatesAndFloors />
      <ZoneCauses />
    </div>
    <TitleBlock />
  </aside>
);
