import { addHours, clockOf, dateOf } from '#shared/calendar/local-time.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { jobWords, verdictMarks, verdictWords } from '#shared/wording/words.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import type { ChartDrawing, MapDrawing, MapFill } from '#reports/sheet.ts';
import { coveringName, daysShort, jobsInOrder, percent } from '#reports/wording.ts';

const captions: Readonly<Record<MapFill, string>> = {
  after: 'When the last layer is off',
  home: 'On the home date, nothing done',
  recovered: 'On the home date, after the work',
  verdict: 'What the home date asks of each zone',
  floors: 'Footprints and floors',
};

/** Letters of the zones that get new turf. */
export const replacedZones = ({ plan }: RecoveryPapers): readonly string[] =>
  plan.plan.zones.filter((zone) => /^replace/.test(zone.programme)).map((zone) => zone.zone);

/** The coverings of the booking in the order they first lie, and the pattern of each event zone: its longest-lying covering. */
const floorsOf = (papers: RecoveryPapers): Pick<MapDrawing, 'floors' | 'floorNames'> => {
  const ids = [...new Set(papers.booking.layers.map((layer) => layer.covering))];
  const floors: Record<string, number> = {};
  for (const zone of papers.booking.zones) {
    const longest = papers.booking.layers
      .filter((layer) => layer.zone === zone.letter)
      .toSorted((a, b) => (a.on < b.on ? -1 : 1))[0];
    if (longest) floors[zone.letter] = ids.indexOf(longest.covering);
  }
  return { floors, floorNames: ids.map((id) => coveringName(papers, id)) };
};

const inWordsOf = ({ result }: { readonly result: Forecast }, fill: MapFill, replaced: readonly string[]): string =>
  result.zones
    .map((zone) => {
      const said =
        fill === 'after'
          ? percent(zone.coverAfter.p50)
          : fill === 'verdict'
            ? verdictWords[zone.verdict]
            : fill === 'floors'
              ? zone.name
              : fill === 'recovered' && replaced.includes(zone.letter)
                ? 'new turf'
                : percent(zone.coverHome.p50);
      return `${zone.letter} ${said}`;
    })
    .join(', ');

/** A map of the field. On the verdict map every zone carries its letter, its verdict and the days it is short. */
export const mapOf = (papers: RecoveryPapers, fill: MapFill, caption = captions[fill]): MapDrawing => {
  const { venue, forecast } = papers;
  const labels: Record<string, string> = {};
  const replaced = fill === 'recovered' ? replacedZones(papers) : [];
  for (const zone of forecast.result.zones) {
    const short = daysShort(zone, venue.rules.coverNeeded);
    if (fill === 'verdict')
      labels[zone.letter] =
        `${zone.letter} ${verdictMarks[zone.verdict]}${short === 0 ? '' : short === null ? ', 60+ d' : `, ${short} d`}`;
    else if (fill === 'floors') labels[zone.letter] = `${zone.letter} ${zone.name}`;
  }
  return {
    caption,
    inWords: `${inWordsOf(forecast, fill, replaced)}.`,
    fill,
    forecast: forecast.result,
    outline: venue.field.outline,
    bearing: venue.field.bearing,
    labels,
    replaced,
    ...floorsOf(papers),
  };
};

/** The jobs as bars, with decisions as marks; with people at work where asked for. */
export const chartOf = (papers: RecoveryPapers, rowHeight: number, withPeople: boolean): ChartDrawing | null => {
  const jobs = jobsInOrder(papers);
  if (jobs.length === 0) return null;
  const { plan } = papers.plan;
  const bar = (job: (typeof jobs)[number]): ChartDrawing['rows'][number]['bars'][number] => ({
    from: job.start,
    until: job.end,
    words: jobWords[job.job],
    worked: job.crew > 0,
  });
  const homeDate = papers.forecast.result.homeDate.start;
  const marks = plan.decisions
    .map((decision) => ({ at: decision.at, words: decision.name }))
    .toSorted((a, b) => (a.at < b.at ? -1 : 1));
  return {
    timeZone: papers.venue.place.timeZone,
    from: [jobs[0]!.start, ...marks.map((mark) => mark.at)].toSorted()[0]!,
    until: homeDate,
    rows: [
      ...plan.zones.map((zone) => ({ name: zone.zone, bars: zone.jobs.map(bar) })),
      { name: 'field', bars: plan.fieldJobs.map(bar) },
    ],
    marks,
    homeDate,
    people: withPeople ? peopleOf(papers) : [],
    rowHeight,
  };
};

/** People at work between the hours at which something begins or ends. */
export const peopleOf = (papers: RecoveryPapers): ChartDrawing['people'] => {
  const jobs = jobsInOrder(papers).filter((job) => job.crew > 0);
  const moments = [...new Set(jobs.flatMap((job) => [job.start, job.end]))].toSorted();
  return moments.slice(0, -1).flatMap((from, index) => {
    const until = moments[index + 1]!;
    const count = jobs.filter((job) => job.start < until && job.end > from).reduce((sum, job) => sum + job.crew, 0);
    return count === 0 ? [] : [{ from, until, count }];
  });
};

/** Clock hours from one time to another, each as [from, until). */
export const hoursOfDay = (from: string, until: string, timeZone: string): readonly string[] => {
  const hours: string[] = [];
  for (let at = `${dateOf(from)}T${clockOf(from).slice(0, 2)}:00`; at < until; at = addHours(at, 1, timeZone)) hours.push(at);
  return hours;
};
