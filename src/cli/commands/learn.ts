import type { Assimilation, Proposal } from '#shared/vocabulary/learning.ts';
import { misused, type Command, type Desk } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textTable } from '#cli/text-table.ts';

const figure = (quantity: string, value: number): string =>
  quantity === 'cover' ? `${Math.round(100 * value)} %` : `${Math.round(1000 * value)} mm`;

const seenLines = ({ seen }: Assimilation): readonly string[] =>
  textTable(
    ['zone', 'at', 'what', 'seen', 'forecast', '8 of 10', 'now', '8 of 10', ''],
    seen.map(({ zone, at, quantity, seen: value, before, after, used }) => [
      zone,
      at.replace('T', ' '),
      quantity,
      figure(quantity, value),
      figure(quantity, before.p50),
      `${figure(quantity, before.p10)}–${figure(quantity, before.p90)}`,
      figure(quantity, after.p50),
      `${figure(quantity, after.p10)}–${figure(quantity, after.p90)}`,
      used ? '' : 'seen later',
    ]),
  );

const tellWeighing = (desk: Desk, one: Assimilation): void => {
  for (const line of seenLines(one)) desk.print(line);
  const widened =
    one.widened === 1
      ? ''
      : ` Only ${one.firstEffectiveSize.toFixed(1)} had come near; every doubt was widened by ${one.widened} and the run made again.`;
  desk.print(`${one.effectiveSize.toFixed(1)} of ${one.members} members count.${widened}`);
  const { before, after } = one.replaceArea;
  desk.print(
    `To be replaced: ${Math.round(after.p50)} m² (${Math.round(after.p10)} to ${Math.round(after.p90)}); before ${Math.round(before.p50)} m² (${Math.round(before.p10)} to ${Math.round(before.p90)}).`,
  );
  for (const { inspectionId, reason } of one.leftOut) desk.print(`Left out ${inspectionId}: ${reason}.`);
};

const tellProposal = (desk: Desk, proposal: Proposal): void => {
  const { id, readings, runs, effectiveSize, members, trust, changes, decision } = proposal;
  desk.print(`${id}: ${readings} readings of ${runs.length} events; ${effectiveSize.toFixed(1)} of ${members} members count.`);
  if (trust < 1) desk.print(`The readings were given ${trust.toFixed(2)} of their weight, so that enough members count.`);
  if (changes.length === 0) desk.print('Nothing moved by more than chance: no number is proposed.');
  else
    for (const line of textTable(
      ['number', 'now', '8 of 10', 'proposed', '8 of 10', 'unit'],
      changes.map(({ name, unit, before, after }) => [
        name,
        String(before.value),
        `${before.low}–${before.high}`,
        String(after.value),
        `${after.low}–${after.high}`,
        unit,
      ]),
    ))
      desk.print(line);
  if (decision) desk.print(`${decision.answer} by ${decision.by} at ${decision.decidedAt}: ${decision.reason}`);
};

const textOption = (desk: Desk, option: string): string | null => {
  const value = desk.options[option];
  return typeof value === 'string' && value !== '' ? value : null;
};

/** What each word after `learn` does. */
const acts: Readonly<Record<string, (desk: Desk) => Promise<void>>> = {
  from: async (desk) => {
    const forecastId = desk.need('forecast');
    const knownAt = textOption(desk, 'known-at');
    if (knownAt !== null) {
      const replayed = await desk.work('learning/replay', { forecastId, members: null, knownAt });
      return desk.json ? desk.printJson(replayed) : tellWeighing(desk, replayed.assimilation);
    }
    const weighed = await desk.work('learning/assimilate', { forecastId, inspections: null, members: null });
    if (desk.json) return desk.printJson(weighed);
    tellWeighing(desk, weighed);
    desk.note(`Kept as run ${weighed.runId}.`);
  },
  propose: async (desk) => {
    const proposal = await desk.work('learning/propose', { venueId: await onlyVenue(desk), runs: null });
    if (desk.json) return desk.printJson(proposal);
    tellProposal(desk, proposal);
  },
  accept: async (desk) => decide(desk, 'learning/accept'),
  refuse: async (desk) => decide(desk, 'learning/refuse'),
  history: async (desk) => {
    const known = await desk.ask('learning/list', { venueId: await onlyVenue(desk) });
    if (desk.json) return desk.printJson(known);
    for (const { runId, parentId, createdAt, effectiveSize, members } of known.assimilations)
      desk.print(`${createdAt} run ${runId} from ${parentId}: ${effectiveSize.toFixed(1)} of ${members} members count.`);
    for (const proposal of known.proposals) tellProposal(desk, proposal);
    if (known.assimilations.length + known.proposals.length === 0) desk.print('Nothing was learnt yet.');
  },
};

const decide = async (desk: Desk, name: 'learning/accept' | 'learning/refuse'): Promise<void> => {
  const asked = { id: desk.need('proposal'), by: desk.need('by'), reason: textOption(desk, 'reason') ?? '' };
  const decided =
    name === 'learning/accept'
      ? await desk.ask('learning/accept', { ...asked, names: textOption(desk, 'names')?.split(',') ?? null })
      : await desk.ask('learning/refuse', asked);
  if (desk.json) return desk.printJson(decided);
  tellProposal(desk, decided);
};

/** Learns from what was seen: forecasts weighed by inspections, and numbers of the venue proposed, accepted or refused. */
export const learn: Command = {
  summary: 'Weighs a forecast by inspections, replays a past event, and proposes, accepts or refuses numbers of the venue',
  usage:
    'from --forecast RUN [--known-at YYYY-MM-DDTHH:MM] | propose [--venue ID] | accept --proposal ID --by NAME [--names a,b] [--reason TEXT] | refuse --proposal ID --by NAME [--reason TEXT] | history [--venue ID]',
  options: {
    forecast: { type: 'string' },
    'known-at': { type: 'string' },
    venue: { type: 'string' },
    proposal: { type: 'string' },
    by: { type: 'string' },
    names: { type: 'string' },
    reason: { type: 'string' },
  },
  run: async (desk) => {
    const [word] = desk.words;
    const act = word !== undefined && Object.hasOwn(acts, word) ? acts[word] : undefined;
    if (act === undefined) throw misused('learn', `must be followed by ${Object.keys(acts).join(', ')}`);
    await act(desk);
  },
};
