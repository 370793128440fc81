import { addDays, dateOf, daysBetween, hoursBetween, midnight } from '#shared/calendar/local-time.ts';
import type { RecoveryPlan } from '#shared/vocabulary/plan.ts';
import { jobWords } from '#shared/wording/words.ts';
import { faint, ink, rule, type Paper } from '#reports/paper.ts';

const rowHeight = 15;
const labelWidth = 44;

/** The plan as bars over days, a row a zone and one for the whole field; decisions as marks above. */
export const drawPlanChart = (paper: Paper, plan: RecoveryPlan, timeZone: string, homeDate: string): void => {
  const jobs = [...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs];
  if (jobs.length === 0) return paper.sentence('No job is planned: every zone is left to itself.');
  const first = dateOf(jobs.map((job) => job.start).toSorted()[0]!);
  const days = daysBetween(first, dateOf(homeDate)) + 1;
  const rows = [...plan.zones.map((zone) => ({ name: zone.zone, jobs: zone.jobs })), { name: 'field', jobs: plan.fieldJobs }];
  paper.room(rows.length * rowHeight + 40);
  const { doc } = paper;
  const top = paper.y + 14;
  const left = paper.left + labelWidth;
  const hour = (paper.width - labelWidth) / (days * 24);
  const x = (time: string): number => left + Math.max(0, hoursBetween(midnight(first), time, timeZone)) * hour;
  const bottom = top + rows.length * rowHeight;
  for (let day = 0; day <= days; day++) {
    const at = left + day * 24 * hour;
    doc.moveTo(at, top).lineTo(at, bottom).lineWidth(0.3).strokeColor(rule).stroke();
    const every = Math.ceil(days / 24);
    if (day < days && day % every === 0)
      doc
        .font('regular')
        .fontSize(6.5)
        .fillColor(faint)
        .text(addDays(first, day).slice(5), at + 1, paper.y + 2, { lineBreak: false });
  }
  rows.forEach((row, index) => {
    const y = top + index * rowHeight;
    doc
      .font('bold')
      .fontSize(8)
      .fillColor(ink)
      .text(row.name, paper.left, y + 3, { width: labelWidth - 4, lineBreak: false });
    doc
      .moveTo(left, y + rowHeight)
      .lineTo(paper.left + paper.width, y + rowHeight)
      .lineWidth(0.3)
      .strokeColor(rule)
      .stroke();
    for (const job of row.jobs) {
      const [from, until] = [x(job.start), Math.max(x(job.end), x(job.start) + 1.5)];
      doc
        .rect(from, y + 2, until - from, rowHeight - 4)
        .fillColor(job.crew > 0 ? '#3d7a73' : '#cfcac0')
        .fill();
      doc
        .rect(from, y + 2, until - from, rowHeight - 4)
        .lineWidth(0.4)
        .strokeColor(ink)
        .stroke();
      const text = jobWords[job.job];
      doc.font('regular').fontSize(6.2);
      if (doc.widthOfString(text) + 3 < until - from)
        doc.fillColor(job.crew > 0 ? '#ffffff' : ink).text(text, from + 1.5, y + 4.2, { lineBreak: false });
    }
  });
  const home = x(homeDate);
  doc
    .moveTo(home, top - 4)
    .lineTo(home, bottom + 4)
    .lineWidth(1.4)
    .strokeColor(ink)
    .stroke();
  doc
    .font('bold')
    .fontSize(7)
    .fillColor(ink)
    .text('home date', home - 60, bottom + 3, { width: 58, align: 'right', lineBreak: false });
  paper.y = bottom + 16;
};
