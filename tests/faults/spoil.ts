import type { Chance } from '#tests/faults/chance.ts';

const deep = (levels: number): unknown => {
  let value: unknown = 1;
  for (let level = 0; level < levels; level++) value = level % 2 === 0 ? [value] : { more: value };
  return value;
};

/** Values nobody should send: each once, made when it is wanted. */
const nasty: readonly (() => unknown)[] = [
  () => null,
  () => undefined,
  () => true,
  () => '',
  () => ' ',
  () => '0',
  () => 'x'.repeat(5000),
  () => 'é\u0301🌱'.repeat(400),
  () => '\ud800',
  () => '\u0000\u202e\u2028',
  () => '../../../../etc/passwd',
  () => '..\\..\\windows\\system32',
  () => '=HYPERLINK("http://elsewhere.invalid","x")',
  () => "'; drop table bookings; --",
  () => '<img src=x onerror=alert(1)>',
  () => '__proto__',
  () => 'constructor',
  () => '2027-02-30T25:61',
  () => '9999-12-31T23:59',
  () => '2027-03-14T02:30',
  () => -1,
  () => 0,
  () => -0,
  () => 1e308,
  () => -1e308,
  () => 5e-324,
  () => Number.MAX_SAFE_INTEGER,
  () => Number.MAX_SAFE_INTEGER + 2,
  () => Number.NaN,
  () => Number.POSITIVE_INFINITY,
  () => [],
  () => ({}),
  () => [[]],
  () => Array.from({ length: 2000 }, (_, index) => index),
  () => Array.from({ length: 300 }, (_, index) => [Math.cos(index) * 1e3, Math.sin(index * 7) * 1e3]),
  () => deep(40),
  () => deep(3000),
  () => JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}') as unknown,
  () => new Date(0),
  () => new Map([[1, 2]]),
  () => 10n ** 30n,
  () => () => 1,
  () => Symbol('x'),
];

/** Levels that are changed or copied; what lies deeper is the same in every copy. */
const deepest = 500;

type Box = Record<string, unknown>;
const isBox = (value: unknown): value is Box => typeof value === 'object' && value !== null;

/** Every place in a value, as the box and the key in it. */
const placesOf = (value: unknown, places: [Box, string][] = [], level = 0): [Box, string][] => {
  if (isBox(value) && level < deepest)
    for (const key of Object.keys(value)) {
      places.push([value, key]);
      if (places.length < 4000) placesOf(value[key], places, level + 1);
    }
  return places;
};

/** A copy; what cannot be copied, such as a function, is itself. */
const copied = (value: unknown, level = 0): unknown => {
  if (level > deepest) return value;
  // Not `map`: a spoilt list may have a constructor of its own.
  if (Array.isArray(value)) return Array.from(value, (inner) => copied(inner, level + 1));
  if (!isBox(value) || ![Object.prototype, null].includes(Object.getPrototypeOf(value) as object | null)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copied(inner, level + 1)]));
};

/** Changes a copy of a request in one to three places. */
export const spoilRequest = (request: unknown, dice: Chance): unknown => {
  if (dice.below(60) === 0) return dice.pick(nasty)();
  const spoilt = copied(request);
  for (let times = 1 + dice.below(3); times > 0; times--) {
    const places = placesOf(spoilt);
    if (places.length === 0) return dice.pick(nasty)();
    const [box, key] = dice.pick(places);
    const value = box[key];
    const how = dice.below(12);
    if (how < 5) box[key] = dice.pick(nasty)();
    else if (how === 5) Reflect.deleteProperty(box, key);
    else if (how === 6 && typeof value === 'number') box[key] = value * dice.pick([-1, 0.5, 10, 1e6, 1e-6]);
    else if (how === 7 && typeof value === 'string') {
      const at = dice.below(value.length + 1);
      box[key] = value.slice(0, at) + String.fromCharCode(dice.below(0x250)) + value.slice(at + dice.below(3));
    } else if (how === 8 && Array.isArray(value))
      box[key] = Array.from({ length: dice.pick([2, 20, 200]) }, () => copied(value)).flat();
    else if (how === 9 && Array.isArray(value)) box[key] = value.toReversed();
    else if (how === 10) {
      const [from, name] = dice.pick(places);
      box[key] = copied(from[name]);
    } else
      Object.defineProperty(box, dice.pick(['__proto__', 'constructor', 'toString', 'more', '']), {
        value: dice.pick(nasty)(),
        enumerable: true,
        configurable: true,
        writable: true,
      });
  }
  return spoilt;
};

const bits: readonly string[] = [
  '',
  ',',
  ';',
  '"',
  '""',
  '\n',
  '\r',
  '\t',
  '\0',
  '-',
  '1e999',
  '-9999',
  'NaN',
  '=1+1',
  'x'.repeat(20_000),
  ',,,,,,,,',
  '\ufeff',
  '𝟗',
  '1,5',
  '2024-02-30',
  '9'.repeat(400),
];

/** Changes text of a file in some places: characters, whole lines, columns. */
export const spoilText = (text: string, dice: Chance): string => {
  let spoilt = text;
  for (let times = 1 + dice.below(5); times > 0; times--) {
    const at = dice.below(spoilt.length + 1);
    const lines = spoilt.split('\n');
    const line = dice.below(lines.length);
    switch (dice.below(8)) {
      case 0:
        spoilt = spoilt.slice(0, at);
        break;
      case 1:
        spoilt = spoilt.slice(0, at) + dice.pick(bits) + spoilt.slice(at + dice.below(6));
        break;
      case 2:
        lines.splice(line, 1 + dice.below(3));
        spoilt = lines.join('\n');
        break;
      case 3:
        lines.splice(line, 0, ...Array.from({ length: dice.pick([1, 5, 400]) }, () => lines[line] ?? ''));
        spoilt = lines.join('\n');
        break;
      case 4:
        lines[line] = (lines[line] ?? '').split(',').toReversed().join(',');
        spoilt = lines.join('\n');
        break;
      case 5:
        lines[line] = (lines[line] ?? '')
          .split(',')
          .map((cell) => (dice.below(4) === 0 ? dice.pick(bits) : cell))
          .join(',');
        spoilt = lines.join('\n');
        break;
      case 6:
        spoilt = spoilt.replaceAll(dice.pick([',', '\n', '.', '-', '0']), dice.pick(bits.filter((bit) => bit.length < 10)));
        break;
      default:
        spoilt = spoilt.slice(0, at) + String.fromCharCode(dice.below(0xffff)) + spoilt.slice(at + 1);
    }
    if (spoilt.length > 400_000) spoilt = spoilt.slice(0, 400_000);
  }
  return spoilt;
};

/** Changes the bytes of a file in some places. */
export const spoilBytes = (bytes: Uint8Array, dice: Chance): Uint8Array => {
  let spoilt = new Uint8Array(bytes);
  for (let times = 1 + dice.below(8); times > 0; times--) {
    const at = dice.below(Math.max(1, spoilt.length));
    const how = dice.below(6);
    if (how === 0) spoilt = spoilt.slice(0, at);
    else if (how === 1)
      spoilt = new Uint8Array([...spoilt.slice(0, at), ...spoilt.slice(Math.min(spoilt.length, at + 1 + dice.below(40)))]);
    // The head says how large the picture is: it is hit more often than its share.
    else if (how === 2) spoilt[dice.below(Math.min(40, spoilt.length || 1))] = dice.pick([0, 0xff, 0x7f, dice.below(256)]);
    else spoilt[at] = (spoilt[at] ?? 0) ^ (1 << dice.below(8));
  }
  return spoilt;
};
