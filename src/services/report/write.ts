import type { PaperKind, WrittenFile } from '#shared/contract/contract.ts';
import { calendarFile } from '#reports/calendar-file.ts';
import { recoveryReport, type PrintWishes, type RecoveryPapers } from '#reports/recovery-report.ts';
import { jobTable, sodTable, zoneTable } from '#reports/tables.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import type { Answer } from '#shared/contract/failure.ts';

/** Writes one paper of a kept plan from frozen things alone. */
export const writeReport: Service<'report/write'> = async ({ store, typeface }, { planId, kind, paper, units }) => {
  const gathered = await store.read(async (contents): Promise<Answer<RecoveryPapers>> => {
    const plan = await contents.plans.find(planId);
    if (!plan) return notFound('plan', planId);
    const forecast = await contents.runs.find(plan.forecastId);
    const input = await contents.runs.inputOf(plan.forecastId);
    if (!forecast || input === null) return notFound('forecast', plan.forecastId);
    const { venue, booking } = JSON.parse(input) as ForecastQuestion;
    if (booking === null) return invalid([{ field: 'planId', reason: 'belongs to a forecast without an event' }]);
    return done({ venue, booking, forecast, plan });
  });
  return gathered.ok ? done(await written(gathered.value, kind, { paper, units, typeface: typeface() })) : gathered;
};

const written = async (papers: RecoveryPapers, kind: PaperKind, wishes: PrintWishes): Promise<WrittenFile> => {
  const stem = `${papers.booking.id}-${kind}`;
  const text = (content: string, ending: string, mediaType: string): WrittenFile => ({
    fileName: `${stem}.${ending}`,
    mediaType,
    base64: Buffer.from(content, 'utf8').toString('base64'),
  });
  switch (kind) {
    case 'recovery-report':
      return {
        fileName: `${stem}.pdf`,
        mediaType: 'application/pdf',
        base64: Buffer.from(await recoveryReport(papers, wishes)).toString('base64'),
      };
    case 'calendar':
      return text(calendarFile(papers), 'ics', 'text/calendar');
    case 'zone-table':
      return text(zoneTable(papers), 'csv', 'text/csv');
    case 'job-table':
      return text(jobTable(papers), 'csv', 'text/csv');
    case 'sod-table':
      return text(sodTable(papers), 'csv', 'text/csv');
  }
};
