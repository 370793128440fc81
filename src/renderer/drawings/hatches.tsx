/** How floors are told apart on the plan, in ink alone: by class of covering. */
type HatchName = 'dots' | 'lines' | 'cross' | 'bricks' | 'waves' | 'open';

const hatchOf: Readonly<Record<string, HatchName>> = {
  'translucent-tile': 'dots',
  'opaque-tile': 'bricks',
  'walk-mesh': 'open',
  'solid-panel': 'lines',
  'open-back-panel': 'lines',
  'aluminium-panel': 'cross',
  'plywood-geotextile': 'bricks',
  'sheet-clear': 'waves',
  'sheet-white': 'waves',
  'growth-cover': 'waves',
  'fill-on-sheet': 'cross',
  'raised-deck': 'lines',
  none: 'open',
};

/** The hatch of a class; classes a venue added itself share the plain lines. */
export const hatchNameOf = (covering: string): HatchName => hatchOf[covering] ?? 'lines';

export const hatchFor = (covering: string | undefined): string =>
  covering === undefined ? 'transparent' : `url(#hatch-${hatchNameOf(covering)})`;

/** The patterns, in metres of the drawing they stand in. */
export const Hatches = () => (
  <defs>
    <pattern id="hatch-open" width="6" height="6" patternUnits="userSpaceOnUse">
      <path d="M0 6L6 0" className="hatch-line" />
    </pattern>
    <pattern id="hatch-dots" width="3" height="3" patternUnits="userSpaceOnUse">
      <circle cx="1.5" cy="1.5" r="0.3" className="hatch-fill" />
    </pattern>
    <pattern id="hatch-lines" width="2.5" height="2.5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d="M0 0V2.5" className="hatch-line" />
    </pattern>
    <pattern id="hatch-cross" width="2.5" height="2.5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d="M0 0V2.5M0 0H2.5" className="hatch-line" />
    </pattern>
    <pattern id="hatch-bricks" width="4" height="2.6" patternUnits="userSpaceOnUse">
      <path d="M0 0H4M0 1.3H4M1 0V1.3M3 1.3V2.6" className="hatch-line" />
    </pattern>
    <pattern id="hatch-waves" width="4" height="2.4" patternUnits="userSpaceOnUse">
      <path d="M0 1.2Q1 0 2 1.2T4 1.2" className="hatch-line" />
    </pattern>
  </defs>
);

/** One hatch as a small square, for the legend. It draws its own lines: the patterns of the plan are in metres. */
const hatchSwatches: Readonly<Record<HatchName, string>> = {
  open: 'M0 12L16 -2',
  dots: 'M3 3h1.5M8 3h1.5M13 3h1.5M5.5 6h1.5M10.5 6h1.5M3 9h1.5M8 9h1.5M13 9h1.5',
  lines: 'M-2 6L6 -2M2 10L12 0M7 12L17 2M13 12L18 7',
  cross: 'M-2 6L6 -2M2 10L12 0M7 12L17 2M-2 4L6 12M4 -2L16 10M11 -2L18 5',
  bricks: 'M0 3H16M0 7H16M4 0V3M12 0V3M8 3V7M4 7V11M12 7V11',
  waves: 'M0 3Q2 1 4 3T8 3T12 3T16 3M0 7Q2 5 4 7T8 7T12 7T16 7',
};

export const HatchSwatch = ({ covering }: { covering: string }) => (
  <svg className="swatch" viewBox="0 0 16 10" width="16" height="10" aria-hidden>
    <path d={hatchSwatches[hatchNameOf(covering)]} />
  </svg>
);
