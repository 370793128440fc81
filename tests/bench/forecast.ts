/**
 * Times the forecast against its budgets, its memory, its cost by size of cell, and its hot chain against the same arithmetic in C
 * (`gcc -O2`, skipped where there is no gcc), in seconds of processor time. `npm run node -- tests/bench/forecast.ts`. Asserts nothing: times belong to a machine.
 */
import { spawnSync } from 'node:child_process';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { answerAll } from '#engine/forecast/answers.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { hotChain, inC, inTypeScript, processorSince } from '#tests/bench/hot-chain.ts';
import { asking, homeDate, july } from '#tests/engine/forecast/sample-question.ts';

/** A concert of five layers: stage, wing, haul route, standing and seated floor, with their people and machines. */
const letters = new Set(['A', 'B', 'F', 'G', 'H']);
const here = ({ zone }: { readonly zone: string }): boolean => letters.has(zone);
const concert: Booking = {
  ...july,
  zones: july.zones.filter(({ letter }) => letters.has(letter)),
  layers: july.layers.filter((layer) => here(layer) && (layer.zone !== 'H' || layer.loading === 'chairs')),
  crowds: july.crowds.filter((crowd) => crowd.zone === 'G'),
  traffic: july.traffic.filter(here),
};
const autumn = homeDate('2027-10-23');
const question = (members: number, cellSize: 1 | 2 | 4 = 2) => asking(concert, { members, cellSize, homeDate: autumn });
/** s of processor time of the best of some rounds. */
const best = (rounds: number, run: () => void): number => {
  let least = Infinity;
  for (let round = 0; round < rounds; round++) {
    const began = process.cpuUsage();
    run();
    least = Math.min(least, processorSince(began));
  }
  return least;
};
const against = (what: string, took: number, budget: number): void =>
  console.log(`${what}\t${took.toFixed(3)} s\tbudget ${budget} s\t${took <= budget ? 'within' : 'OVER'}`);

const memoryOf = (members: number): number => {
  const script = `
    import { answerAll } from '#engine/forecast/answers.ts';
import { foresee } from '#engine/forecast/foresee.ts';
    import { asking, homeDate, july } from '#tests/engine/forecast/sample-question.ts';
    const before = process.memoryUsage.rss();
    foresee(asking(july, { members: ${members}, cellSize: 2, homeDate: homeDate('2027-10-23') }));
    console.log(before, process.resourceUsage().maxRSS * 1024);`;
  const { stdout } = spawnSync(process.execPath, ['--input-type=module-typescript', '--eval', script], {
    encoding: 'utf8',
    cwd: import.meta.dirname,
  });
  return Number(stdout.trim().split(' ')[1]) / 2 ** 20;
};

const { days } = foresee(question(20));
console.log(`a concert of ${concert.layers.length} layers, ${days.length} days, one thread`);
against(
  '500 members, cells of 2 m',
  best(3, () => foresee(question(500))),
  1,
);
const lying = new Set(concert.layers.map(({ covering }) => covering));
const few = { ...question(500), coverings: startingCoverings.filter(({ id }) => lying.has(id)) };
const others = startingCoverings.filter(({ id }) => !lying.has(id) && id !== 'none').slice(0, 7 - lying.size);
let options = 0;
const beside = best(3, () => (options = answerAll({ question: few, floors: others }).options.length));
against(`${options} options beside a forecast, for seven of them`, (beside / (options + 1)) * 7, 4);
let step = 0;
const dragged = (): Booking => {
  const move = (step++ % 40) / 10;
  return {
    ...concert,
    zones: concert.zones.map((zone) =>
      zone.letter === 'A' ? { ...zone, outline: zone.outline.map(([x, y]) => [x + move, y - move] as const) } : zone,
    ),
  };
};
against(
  'the stage dragged, median state',
  best(20, () => foresee(asking(dragged(), { cellSize: 2, homeDate: autumn }))),
  0.1,
);

const sizes = ([4, 2, 1] as const).map((size) => {
  foresee(question(20, size));
  return [size, best(3, () => foresee(question(500, size)))] as const;
});
const times = sizes.map(([, took]) => took);
console.log(
  `${sizes.map(([size, took]) => `cells of ${size} m ${took.toFixed(3)} s`).join(', ')}\tmost to least ${(Math.max(...times) / Math.min(...times)).toFixed(2)}\ttarget ≤ 1.5`,
);
console.log(`1,000 members, all layers of the sample concert: ${memoryOf(1000).toFixed(0)} MB in all\ttarget < 300 MB`);

const chain = hotChain(asking(null, { members: 500, homeDate: autumn }), {
  ...concert,
  layers: concert.layers.filter(({ zone }) => zone === 'B'),
  crowds: [],
  traffic: [],
});
// Turn about, so that whatever else the machine does slows both.
let [ours, theirs] = [inTypeScript(chain, 5), inC(chain, 5)];
for (let turn = 0; turn < 4 && theirs !== null; turn++) {
  const [again, there] = [inTypeScript(chain, 5), inC(chain, 5)!];
  if (again.seconds < ours.seconds) ours = again;
  if (there.seconds < theirs.seconds) theirs = there;
}
if (theirs === null) console.log(`hot chain ${ours.seconds.toFixed(4)} s; there is no gcc, the comparison with C is skipped`);
else {
  const apart = Math.max(...ours.sums.map((sum, at) => Math.abs(sum / theirs.sums[at]! - 1)));
  console.log(
    `hot chain of ${chain.members.length} members: engine ${ours.seconds.toFixed(4)} s, C ${theirs.seconds.toFixed(4)} s\tratio ${(ours.seconds / theirs.seconds).toFixed(2)}\ttarget ≤ 2\tresults apart by ${apart.toExponential(1)}`,
  );
}
