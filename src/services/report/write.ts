import type { PaperKind, WrittenFile } from '#shared/contract/contract.ts';
import { calendarFile } from '#reports/calendar-file.ts';
import { printSheet, type PrintWishes } from '#reports/print-sheet.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { everySheet } from '#reports/sheets/every-sheet.ts';
import { costTable, jobTable, sodTable, zoneTable } from '#reports/tables.ts';
import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import { gather } from '#services/report/gather.ts';

/** Writes one paper of a kept plan from frozen runs and records that only grow. */
export const writeReport: Service<'report/write'> = async ({ store, typeface }, { planId, kind, paper, units, alternatives }) => {
  const gathered = await store.read((contents) =>
    gather(contents, planId, alternatives, { units, withSeason: kind === 'season-ledger' }),
  );
  return gathered.ok ? done(await written(gathered.value, kind, { paper, units, typeface: typeface() })) : gathered;
};

const written = async (papers: RecoveryPapers, kind: PaperKind, wishes: PrintWishes): Promise<WrittenFile> => {
  const stem = kind === 'season-ledger' ? `${papers.venue.id}-${kind}` : `${papers.booking.id}-${kind}`;
  const text = (content: string, ending: string, mediaType: string): WrittenFile => ({
    fileName: `${stem}.${ending}`,
    mediaType,
    base64: Buffer.from(content, 'utf8').toString('base64'),
  });
  switch (kind) {
    case 'calendar':
      return text(calendarFile(papers, wishes.units), 'ics', 'text/calendar');
    case 'zone-table':
      return text(zoneTable(papers), 'csv', 'text/csv');
    case 'job-table':
      return text(jobTable(papers), 'csv', 'text/csv');
    case 'sod-table':
      return text(sodTable(papers), 'csv', 'text/csv');
    case 'cost-table':
      return text(costTable(papers), 'csv', 'text/csv');
    default: {
      const bytes = await printSheet(everySheet[kind](papers, wishes.units), wishes);
      return { fileName: `${stem}.pdf`, mediaType: 'application/pdf', base64: Buffer.from(bytes).toString('base64') };
    }
  }
};
