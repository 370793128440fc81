import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';

/**
 * A paper as plain data: what stands on it, in order, in words ready to be read. Every paper is first one of these, made from frozen
 * runs alone, and then printed; the same sheet gives the same bytes.
 */
export interface Sheet {
  readonly title: TitleBlock;
  /** `large` is tabloid or A3. */
  readonly format: 'standard' | 'large';
  readonly turned: boolean;
  /** The print is made smaller, down to what is still readable, to hold to this many pages; nothing is ever left out. Null: as many as needed. */
  readonly pages: number | null;
  readonly parts: readonly Part[];
}

/** What stands in the title block of every page. */
export interface TitleBlock {
  readonly paper: string;
  readonly venue: string;
  readonly subject: string;
  /** Short facts on the right: home date, run, date. */
  readonly facts: readonly string[];
  /** Said on every page: that it is a forecast. */
  readonly footnote: string;
  /** Epoch ms; the only time in the file that is not part of what is told. */
  readonly createdAt: number;
}

export interface Column {
  readonly head: string;
  /** Share of the width of the table. */
  readonly width: number;
  readonly align?: 'left' | 'right';
}

export interface TablePart {
  readonly part: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Said where there is no row. */
  readonly empty: string;
  /** Smallest height of a row, pt: room to write by hand. */
  readonly rowHeight?: number;
  /** The last row is a sum. */
  readonly sum?: boolean;
}

/** What the cells or zones of a map are filled with. */
export type MapFill = 'after' | 'home' | 'recovered' | 'verdict' | 'floors';

export interface MapDrawing {
  readonly caption: string;
  /** What it shows, in words, for a reader who does not see it. */
  readonly inWords: string;
  readonly fill: MapFill;
  readonly forecast: Forecast;
  readonly outline: Polygon;
  /** Bearing of the field's +y axis, °. */
  readonly bearing: number;
  /** Words on each zone, by letter; the letter alone where the words do not fit. */
  readonly labels: Readonly<Record<string, string>>;
  /** Letters of zones with new turf. */
  readonly replaced: readonly string[];
  /** Pattern number of each event zone's floor, by letter, and what the patterns mean. */
  readonly floors: Readonly<Record<string, number>>;
  readonly floorNames: readonly string[];
}

export interface ChartBar {
  readonly from: string;
  readonly until: string;
  readonly words: string;
  /** Somebody works on it, or it is waiting time. */
  readonly worked: boolean;
}
export interface ChartDrawing {
  readonly timeZone: string;
  readonly from: string;
  readonly until: string;
  readonly rows: readonly { readonly name: string; readonly bars: readonly ChartBar[] }[];
  readonly marks: readonly { readonly at: string; readonly words: string }[];
  readonly homeDate: string;
  /** People at work, by hours from a moment to a moment; empty where it is not drawn. */
  readonly people: readonly { readonly from: string; readonly until: string; readonly count: number }[];
  readonly rowHeight: number;
}

export interface Picture {
  /** JPEG or PNG. */
  readonly bytes: Uint8Array;
  readonly caption: string;
}

export type Part =
  | { readonly part: 'heading'; readonly text: string }
  | { readonly part: 'sentence'; readonly text: string; readonly strong?: boolean }
  | { readonly part: 'small'; readonly text: string }
  | {
      readonly part: 'list';
      readonly items: readonly string[];
      readonly mark?: 'dash' | 'box' | 'number';
      readonly small?: boolean;
    }
  | TablePart
  | {
      readonly part: 'maps';
      readonly maps: readonly MapDrawing[];
      /** pt */ readonly height: number;
      readonly legend: 'cover' | 'verdict' | 'floors';
    }
  | { readonly part: 'chart'; readonly chart: ChartDrawing }
  | {
      readonly part: 'columns';
      readonly left: readonly Part[];
      readonly right: readonly Part[];
      /** of the left */ readonly share: number;
    }
  /** Lines to write on, each with its label below. */
  | { readonly part: 'blanks'; readonly labels: readonly string[] }
  | { readonly part: 'pictures'; readonly pictures: readonly Picture[] }
  | { readonly part: 'page' };

export const heading = (text: string): Part => ({ part: 'heading', text });
export const sentence = (text: string): Part => ({ part: 'sentence', text });
export const strong = (text: string): Part => ({ part: 'sentence', text, strong: true });
export const small = (text: string): Part => ({ part: 'small', text });
export const list = (items: readonly string[], mark: 'dash' | 'box' | 'number' = 'dash'): Part => ({ part: 'list', items, mark });
export const smallList = (items: readonly string[]): Part => ({ part: 'list', items, small: true });
export const table = (
  columns: readonly (readonly [head: string, width: number, align?: 'right'])[],
  rows: readonly (readonly string[])[],
  empty: string,
  more: { readonly rowHeight?: number; readonly sum?: boolean } = {},
): TablePart => ({
  part: 'table',
  columns: columns.map(([head, width, align]) => (align === undefined ? { head, width } : { head, width, align })),
  rows,
  empty,
  ...more,
});
