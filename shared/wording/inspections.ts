import type { SpillAgent } from '#shared/vocabulary/booking.ts';
import type { DefectCause, DefectKind, InspectionKind } from '#shared/vocabulary/inspection.ts';

/** What an inspection and what is met at one are called. */
export const inspectionWords: Readonly<Record<InspectionKind, string>> = {
  baseline: 'Baseline',
  handback: 'Handback',
  'after-24-h': '24 h after',
  'after-72-h': '72 h after',
  'after-7-d': '7 days after',
  free: 'Inspection',
};

export const defectWords: Readonly<Record<DefectKind, string>> = {
  'cover-loss': 'cover lost',
  yellowing: 'yellowing',
  'heat-scald': 'heat scald',
  'winter-death': 'winter death',
  compaction: 'compaction',
  rut: 'rut',
  'pad-mark': 'pad mark',
  'torn-turf': 'torn turf',
  'too-wet': 'too wet',
  'too-dry': 'too dry',
  disease: 'disease',
  'poor-footing': 'poor footing',
  'open-seam': 'open seam',
  debris: 'debris',
  'spill-burn': 'burn of a spill',
  'ice-melt': 'ice or snow melt',
  paint: 'paint',
  'irrigation-or-drain': 'irrigation or drain',
  other: 'other',
};

export const defectCauseWords: Readonly<Record<DefectCause, string>> = {
  production: 'production',
  crowd: 'crowd',
  weather: 'weather',
  venue: 'venue',
  unknown: 'unknown',
};

export const spillWords: Readonly<Record<SpillAgent, string>> = {
  petrol: 'petrol',
  motorOil: 'motor oil',
  hydraulicOil: 'hydraulic oil',
  brakeFluid: 'brake fluid',
  grease: 'grease',
  propyleneGlycol: 'propylene glycol',
  ethyleneGlycol: 'ethylene glycol',
  salt: 'salt',
  iceMelt: 'ice melt',
  drink: 'drink',
};
