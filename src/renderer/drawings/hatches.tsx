/** How floors are told apart on the plan, in ink alone: by class of covering. */
const hatchOf: Readonly<Record<string, 'dots' | 'lines' | 'cross' | 'bricks'>> = {
  'translucent-tile': 'dots',
  'opaque-tile': 'bricks',
  'walk-mesh': 'dots',
  'solid-panel': 'lines',
  'open-back-panel': 'lines',
  'aluminium-panel': 'cross',
  'plywood-geotextile': 'bricks',
};

export const hatchFor = (covering: string | undefined): string =>
  `url(#hatch-${covering ? (hatchOf[covering] ?? 'lines') : 'none'})`;

export const Hatches = () => (
  <defs>
    <pattern id="hatch-none" width="4" height="4" patternUnits="userSpaceOnUse" />
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
  </defs>
);
