import { middleOf, moveRing, rectangleOf, shift, toCentimetre } from '#shared/geometry/moving.ts';
import type { SourceId } from '#shared/sources/sources.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import type { FieldCode, FieldLines } from '#shared/vocabulary/venue.ts';

/**
 * Fields of the games with the dimensions of their rules. Sizes in m; a yard is 0.9144 m and a foot 0.3048 m exactly. The field's own
 * length runs along +y; a diamond has home plate at the bottom and second base above it.
 */
const foot = 0.3048;
const yard = 0.9144;

/** One size of a game's field: what its rules call it, the usual value and what the rules let it be, m. */
interface Size {
  readonly words: string;
  readonly usual: number;
  readonly low: number;
  readonly high: number;
}

export interface FieldLayout {
  readonly name: string;
  readonly shape: 'rectangle' | 'diamond' | 'oval';
  readonly length: Size;
  readonly width: Size;
  /** m of grass kept beyond the lines, as a start: common practice, no source. For a diamond it is the rules' foul ground. */
  readonly beyond: number;
  readonly source: SourceId;
  /** `recalled`: from the rules as remembered; put it right against the book before turf is cut. */
  readonly standing: 'published' | 'recalled';
}

const size = (words: string, usual: number, low = usual, high = usual): Size => ({ words, usual, low, high });

export const fieldLayouts: Readonly<Record<FieldCode, FieldLayout>> = {
  'association-football': {
    name: 'Association football (soccer)',
    shape: 'rectangle',
    length: size('touch line', 105, 90, 120),
    width: size('goal line', 68, 45, 90),
    beyond: 3,
    source: 'laws-of-the-game',
    standing: 'published',
  },
  'american-football': {
    name: 'American football',
    shape: 'rectangle',
    length: size('end line to end line', 360 * foot),
    width: size('sideline to sideline', 160 * foot),
    beyond: 12 * foot,
    source: 'american-football-rules',
    standing: 'published',
  },
  'canadian-football': {
    name: 'Canadian football',
    shape: 'rectangle',
    length: size('dead line to dead line', 150 * yard, 130 * yard, 150 * yard),
    width: size('sideline to sideline', 65 * yard),
    beyond: 4,
    source: 'canadian-football-rules',
    standing: 'recalled',
  },
  'rugby-union': {
    name: 'Rugby union',
    shape: 'rectangle',
    length: size('goal line to goal line', 100, 94, 100),
    width: size('touch line to touch line', 70, 68, 70),
    beyond: 5,
    source: 'rugby-union-laws',
    standing: 'published',
  },
  'rugby-league': {
    name: 'Rugby league',
    shape: 'rectangle',
    length: size('goal line to goal line', 100),
    width: size('touch line to touch line', 68),
    beyond: 4,
    source: 'rugby-league-laws',
    standing: 'recalled',
  },
  'gaelic-games': {
    name: 'Gaelic football and hurling',
    shape: 'rectangle',
    length: size('end line to end line', 145, 130, 145),
    width: size('side line to side line', 90, 80, 90),
    beyond: 4,
    source: 'gaelic-rules',
    standing: 'recalled',
  },
  baseball: {
    name: 'Baseball, diamond and outfield',
    shape: 'diamond',
    length: size('home plate to centre-field fence', 400 * foot, 380 * foot, 440 * foot),
    width: size('home plate to fence along the foul lines', 325 * foot, 250 * foot, 360 * foot),
    beyond: 60 * foot,
    source: 'baseball-rules',
    standing: 'published',
  },
  'australian-football': {
    name: 'Australian football, oval',
    shape: 'oval',
    length: size('goal line to goal line', 165, 135, 185),
    width: size('across the middle', 135, 110, 155),
    beyond: 5,
    source: 'australian-football-laws',
    standing: 'published',
  },
  cricket: {
    name: 'Cricket, oval',
    shape: 'oval',
    length: size('boundary to boundary, straight', 150, 130 * yard, 180 * yard),
    width: size('boundary to boundary, square', 140, 130 * yard, 180 * yard),
    beyond: 3 * yard,
    source: 'cricket-conditions',
    standing: 'recalled',
  },
};

/** Points of an arc, ends included. Degrees anticlockwise from +x. */
const arc = ([cx, cy]: Point, radius: number, from: number, to: number, steps: number): readonly Point[] =>
  Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = ((from + ((to - from) * step) / steps) * Math.PI) / 180;
    return [toCentimetre(cx + radius * Math.cos(angle)), toCentimetre(cy + radius * Math.sin(angle))];
  });

const ellipse = (halfWidth: number, halfLength: number): Polygon =>
  Array.from({ length: 96 }, (_, step): Point => {
    const angle = (step * Math.PI) / 48;
    return [toCentimetre(halfWidth * Math.cos(angle)), toCentimetre(halfLength * Math.sin(angle))];
  });

const closed = (ring: Polygon): readonly Point[] => [...ring, ring[0]!];
const box = (halfWidth: number, bottom: number, top: number): readonly Point[] =>
  closed(rectangleOf([-halfWidth, bottom], [halfWidth, top]));
const across = (halfWidth: number, y: number): readonly Point[] => [
  [-halfWidth, y],
  [halfWidth, y],
];
/** A line at a height and its twin in the other half. */
const bothEnds = (line: readonly Point[]): readonly (readonly Point[])[] => [line, line.map(([x, y]): Point => [x, -y])];

/** m beyond the goal lines of games with an in-goal that their length leaves out. */
const inGoal: Partial<Record<FieldCode, number>> = { 'rugby-union': 10, 'rugby-league': 8 };

/** Distance from home plate to the fence at an angle, °, from straight ahead: smooth from the foul lines to the centre. */
const fence = ({ length, width }: FieldLines, angle: number): number =>
  width + (length - width) * Math.cos((2 * angle * Math.PI) / 180);

/** A point at a distance from home plate, which lies at the origin, and an angle, °, clockwise from straight ahead. */
const fromHome = (distance: number, angle: number): Point => [
  toCentimetre(distance * Math.sin((angle * Math.PI) / 180)),
  toCentimetre(distance * Math.cos((angle * Math.PI) / 180)),
];

const fenceLine = (lines: FieldLines): readonly Point[] =>
  Array.from({ length: 37 }, (_, step) => fromHome(fence(lines, 45 - step * 2.5), 45 - step * 2.5));

/** Bases 90 ft apart; foul ground of a width around home plate and as far as the bases, then running in to the foul poles. */
const diamondOutline = (lines: FieldLines, beyond: number): Polygon => {
  const side = (sign: 1 | -1): Point => {
    const [x, y] = fromHome(90 * foot, 45 * sign);
    const out = beyond / Math.SQRT2;
    return [toCentimetre(x + sign * out), toCentimetre(y - out)];
  };
  return [...fenceLine(lines), side(-1), ...arc([0, 0], beyond, 225, 315, 18), side(1)];
};

/** How far the drawing of a diamond is moved so that the upright rectangle around its turf has its middle at the origin. */
const homeShift = (lines: FieldLines): Point => {
  const [x, y] = middleOf(diamondOutline(lines, fieldLayouts.baseball.beyond));
  return [-x, -y];
};

/**
 * Edge of the turf around a game's lines.
 * @param beyond m of grass kept outside them; above 0 for a diamond
 */
export const turfAround = (lines: FieldLines, beyond: number): Polygon => {
  const { shape } = fieldLayouts[lines.code];
  if (shape === 'oval') return ellipse(lines.width / 2 + beyond, lines.length / 2 + beyond);
  if (shape === 'diamond') return moveRing(diamondOutline(lines, Math.max(1, beyond)), shift(...homeShift(lines)));
  const half: Point = [lines.width / 2 + beyond, lines.length / 2 + (inGoal[lines.code] ?? 0) + beyond];
  return rectangleOf([toCentimetre(-half[0]), toCentimetre(-half[1])], [toCentimetre(half[0]), toCentimetre(half[1])]);
};

const painted: Readonly<Record<FieldCode, (lines: FieldLines) => readonly (readonly Point[])[]>> = {
  'association-football': ({ length, width }) => {
    const [half, end] = [width / 2, length / 2];
    // The arc of the penalty area is the part of the circle about the penalty mark that lies outside it.
    const reach = (Math.acos(5.5 / 9.15) * 180) / Math.PI;
    return [
      box(half, -end, end),
      across(half, 0),
      arc([0, 0], 9.15, 0, 360, 48),
      ...bothEnds(box(20.16, end - 16.5, end)),
      ...bothEnds(box(9.16, end - 5.5, end)),
      ...bothEnds(arc([0, end - 11], 9.15, 270 - reach, 270 + reach, 12)),
      ...bothEnds(across(0.2, end - 11)),
    ];
  },
  'american-football': ({ length, width }) => {
    const goal = length / 2 - 30 * foot;
    return [
      box(width / 2, -length / 2, length / 2),
      ...Array.from({ length: 21 }, (_, line) => across(width / 2, toCentimetre(-goal + line * 5 * yard))),
    ];
  },
  'canadian-football': ({ length, width }) => [
    box(width / 2, -length / 2, length / 2),
    ...Array.from({ length: 23 }, (_, line) => across(width / 2, toCentimetre((line - 11) * 5 * yard))),
  ],
  'rugby-union': ({ length, width }) => rugby(length, width, inGoal['rugby-union']!, [length / 2 - 22, 10]),
  'rugby-league': ({ length, width }) => rugby(length, width, inGoal['rugby-league']!, [40, 30, 20, 10]),
  'gaelic-games': ({ length, width }) => [
    box(width / 2, -length / 2, length / 2),
    across(5, 0),
    ...[13, 20, 45, 65].flatMap((metres) => bothEnds(across(width / 2, length / 2 - metres))),
    ...bothEnds(box(9.5, length / 2 - 13, length / 2)),
    ...bothEnds(box(7, length / 2 - 4.5, length / 2)),
  ],
  baseball: (lines) => {
    const bases = [0, 45, 0, -45].map((angle, base) =>
      fromHome(base === 0 ? 0 : base === 2 ? 90 * Math.SQRT2 * foot : 90 * foot, angle),
    );
    const mound: Point = [0, toCentimetre(60.5 * foot)];
    // The grass line of the infield lies 95 ft from the pitcher's plate, from foul line to foul line.
    const skin = foulReach(mound[1], 95 * foot);
    return [
      [fromHome(lines.width, -45), [0, 0] as Point, fromHome(lines.width, 45)],
      fenceLine(lines),
      closed(bases),
      arc(mound, 95 * foot, skin, 180 - skin, 24),
      arc(mound, 9 * foot, 0, 360, 24),
    ].map((line) => line.map(shift(...homeShift(lines))));
  },
  'australian-football': ({ length, width }) => {
    const oval = ellipse(width / 2, length / 2);
    const inside = ([x, y]: Point): boolean => (2 * x) ** 2 / width ** 2 + (2 * y) ** 2 / length ** 2 <= 1;
    return [
      closed(oval),
      box(25, -25, 25),
      arc([0, 0], 1.5, 0, 360, 16),
      arc([0, 0], 5, 0, 360, 24),
      ...bothEnds(arc([0, length / 2], 50, 180, 360, 72).filter(inside)),
      ...bothEnds(box(3.2, length / 2 - 9, length / 2)),
    ];
  },
  cricket: ({ length, width }) => [
    closed(ellipse(width / 2, length / 2)),
    // The pitch: 22 yards by 10 feet.
    box(5 * foot, -11 * yard, 11 * yard),
  ],
};

const rugby = (length: number, width: number, depth: number, lines: readonly number[]): readonly (readonly Point[])[] => [
  box(width / 2, -length / 2 - depth, length / 2 + depth),
  across(width / 2, 0),
  ...[length / 2, ...lines].flatMap((y) => bothEnds(across(width / 2, y))),
];

/** Angle, ° from +x, at which a circle about the pitcher's plate meets the right foul line. */
const foulReach = (plate: number, radius: number): number => {
  // On the foul line x = y: y² + (y − plate)² = radius².
  const y = (plate + Math.sqrt(2 * radius * radius - plate * plate)) / 2;
  return (Math.atan2(y - plate, y) * 180) / Math.PI;
};

/** The lines of a game, m, in the field's own axes: each a row of points. */
export const paintedLines = (lines: FieldLines): readonly (readonly Point[])[] => painted[lines.code](lines);
