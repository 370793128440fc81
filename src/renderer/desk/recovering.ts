import type { PaperKind } from '#shared/contract/contract.ts';
import type { DoneJob, Lock, Mend } from '#shared/vocabulary/plan.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { addHours, shiftDays } from '#shared/calendar/local-time.ts';
import { ask, work } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { change, deskNow, valueOf } from './desk.ts';
import { edit } from './editing.ts';
import { foresee } from './foreseeing.ts';
import { nowAtVenue } from './moments.ts';
import { readEstimate } from './previewing.ts';
import { saveFixture, saveVenue } from './venue-keeping.ts';

/** Members drawn when a plan is asked for before a forecast was kept. */
const membersForPlan = 100;

/** Plans the recovery on the newest kept run; draws one first where there is none. */
export const makePlan = oneAtATime(async (): Promise<void> => {
  if (!deskNow().run && !(await foresee(membersForPlan))) return;
  const { run, plan, locks, done } = deskNow();
  if (!run) return;
  change({ failure: null, said: '' });
  const answer = await work('plan/make', { forecastId: run.id, now: null, locks, done, instead: plan?.id ?? null }, (job) =>
    change({ job }),
  );
  change({ job: null });
  const made = valueOf(answer);
  if (!made || deskNow().run !== run) return;
  change({ plan: made, estimate: null, sod: null, said: `Planned and kept as ${made.id.slice(0, 13)}.` });
  await readEstimate(made.id);
});

/** Holds the planner to a way back for a zone; null leaves the choice to it. */
export const lock = (zone: string, window: string, programme: Lock['programme'] | null): void => {
  const others = deskNow().locks.filter((one) => one.zone !== zone || one.window !== window);
  change({ locks: programme === null ? others : [...others, { zone, window, programme, farm: null }] });
};

type JobKey = Omit<DoneJob, 'start' | 'end'>;
const isJob = (one: JobKey, other: JobKey): boolean =>
  one.zone === other.zone && one.window === other.window && one.job === other.job;

/** A job under the hand, at hours it is not let go at yet. */
let pulled: DoneJob | null = null;
let asking = false;
let again = false;

/** Asks which rules the jobs at known hours would break, one question at a time; the newest is never left out. */
const recheck = async (): Promise<void> => {
  if (asking) {
    again = true;
    return;
  }
  const { plan, done } = deskNow();
  const held = pulled;
  const moves = held === null ? [...done] : [...done.filter((one) => !isJob(one, held)), held];
  if (!plan || moves.length === 0) return change({ broken: [] });
  asking = true;
  const answer = await ask('plan/recheck', { id: plan.id, moves }).finally(() => (asking = false));
  if (answer.ok && deskNow().plan === plan) change({ broken: answer.value });
  if (!again) return;
  again = false;
  await recheck();
};

/** Says while a job is dragged which rules it would break at these hours; null lets go of it. */
export const pullJob = (job: DoneJob | null): void => {
  pulled = job;
  void recheck();
};

/** Enters the hours a job really took, or holds it to hours to come; null takes the entry back. */
export const enterDone = (job: JobKey, hours: { start: string; end: string } | null): void => {
  pulled = null;
  const others = deskNow().done.filter((one) => !isJob(one, job));
  change({ done: hours === null ? others : [...others, { ...job, ...hours }] });
  void recheck();
};

/** Lays the farms of the plan side by side and weighs a reserve. */
export const weighSod = oneAtATime(async (): Promise<void> => {
  const { plan } = deskNow();
  if (!plan) return;
  change({ failure: null });
  const answer = await work('plan/sod', { id: plan.id }, (job) => change({ job }));
  change({ job: null });
  const sod = valueOf(answer);
  if (sod && deskNow().plan?.id === plan.id) change({ sod });
});

/** Writes a paper and hands it to the person as a file. */
export const writePaper = oneAtATime(
  async (kind: PaperKind, paper: 'letter' | 'a4', alternatives: readonly string[] = []): Promise<void> => {
    const { plan, units } = deskNow();
    if (!plan) return;
    const file = valueOf(await ask('report/write', { planId: plan.id, kind, paper, units, alternatives: [...alternatives] }));
    if (!file) return;
    const bytes = Uint8Array.from(atob(file.base64), (letter) => letter.charCodeAt(0));
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([bytes], { type: file.mediaType }));
    link.download = file.fileName;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    change({ said: `${file.fileName} is written.`, failure: null });
  },
  (kind, paper) => `${kind} ${paper}`,
);

/** The venue as it stands once a mend is agreed on; null where the mend is not the venue's to make. */
const mendedVenue = (venue: Venue, mend: Mend): Venue | null => {
  const { workforce } = venue;
  const farm = (id: string, changed: Partial<Venue['farms'][number]>): Venue => ({
    ...venue,
    farms: venue.farms.map((one) => (one.id === id ? { ...one, ...changed } : one)),
  });
  const known = 'farm' in mend ? venue.farms.find((one) => one.id === mend.farm) : undefined;
  switch (mend.kind) {
    case 'more-people': {
      const { dayCrew, nightCrew } = workforce;
      return { ...venue, workforce: { ...workforce, dayCrew: dayCrew + mend.people, nightCrew: nightCrew + mend.people } };
    }
    case 'more-machines': {
      const machines = { ...workforce.machines, [mend.machine]: (workforce.machines[mend.machine] ?? 0) + mend.count };
      return { ...venue, workforce: { ...workforce, machines } };
    }
    case 'more-skilled': {
      const skills = { ...workforce.skills, [mend.skill]: (workforce.skills?.[mend.skill] ?? 0) + mend.people };
      return { ...venue, workforce: { ...workforce, skills } };
    }
    case 'boards':
      return { ...venue, rules: { ...venue.rules, boards: true } };
    case 'whole-field': {
      const { halves: _, ...rules } = venue.rules;
      return { ...venue, rules };
    }
    case 'more-trucks':
      return known ? farm(mend.farm, { trucksPerDay: known.trucksPerDay + mend.perDay }) : null;
    case 'shorter-notice':
      return known ? farm(mend.farm, { notice: Math.max(0, known.notice - mend.hours) }) : null;
    default:
      return null;
  }
};

/** Agrees to a mend: changes the venue, the booking or the home date as it says, stores that, and plans again. */
export const takeMend = oneAtATime(async (mend: Mend): Promise<void> => {
  const { venue, booking, fixtures, homeId, run } = deskNow();
  if (!venue || !booking) return;
  const changed = mendedVenue(venue, mend);
  if (changed) {
    if (!(await saveVenue(changed))) return;
    change({ run });
  } else if (mend.kind === 'earlier-strike') {
    const last = (zone: string): string =>
      booking.layers
        .filter((layer) => layer.zone === zone)
        .map((layer) => layer.off)
        .toSorted()
        .at(-1)!;
    edit({
      ...booking,
      layers: booking.layers.map((layer) => {
        const off = addHours(layer.off, -mend.hours, venue.place.timeZone);
        return layer.off === last(layer.zone) && off > layer.on ? { ...layer, off } : layer;
      }),
    });
  } else if (mend.kind === 'later-home-date') {
    const home = fixtures.find((fixture) => fixture.id === homeId);
    if (!home) return;
    const later = { ...home, start: shiftDays(home.start, mend.days), end: shiftDays(home.end, mend.days) };
    if (!(await saveFixture(later))) return;
  } else if (mend.kind === 'let-go') {
    const now = nowAtVenue();
    change({ done: deskNow().done.filter(({ start }) => start < now), broken: [] });
  } else if (mend.kind === 'zones-not-ready') {
    for (const zone of mend.zones) lock(zone, mend.window, 'leave');
  }
  await makePlan();
});
