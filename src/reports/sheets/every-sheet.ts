import type { PaperKind } from '#shared/contract/contract.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import type { Sheet } from '#reports/sheet.ts';
import { chargeBack } from '#reports/sheets/charge-back.ts';
import { fieldUseConditions } from '#reports/sheets/field-use-conditions.ts';
import { holdAnswer } from '#reports/sheets/hold-answer.ts';
import { inspectionForm } from '#reports/sheets/inspection-form.ts';
import { meetingSheet } from '#reports/sheets/meeting-sheet.ts';
import { nightBefore } from '#reports/sheets/night-before.ts';
import { promoterMap } from '#reports/sheets/promoter-map.ts';
import { recoveryChart } from '#reports/sheets/recovery-chart.ts';
import { recoveryReport } from '#reports/sheets/recovery-report.ts';
import { seasonLedger } from '#reports/sheets/season-ledger.ts';
import { shiftSheet } from '#reports/sheets/shift-sheet.ts';
import { sodOrderSheet } from '#reports/sheets/sod-order.ts';
import { testSheet } from '#reports/sheets/test-sheet.ts';

/** Makes a sheet from the papers of a plan. */
export type SheetMaker = (papers: RecoveryPapers, units: UnitSystem) => Sheet;

/** Papers that are printed; the other kinds are files for programs. */
export type PrintedKind = Exclude<PaperKind, 'calendar' | `${string}-table`>;

export const everySheet: Readonly<Record<PrintedKind, SheetMaker>> = {
  'recovery-report': recoveryReport,
  'meeting-sheet': meetingSheet,
  'sod-order': sodOrderSheet,
  'recovery-chart': recoveryChart,
  'hold-answer': holdAnswer,
  'field-use-conditions': fieldUseConditions,
  'promoter-map': promoterMap,
  'night-before': nightBefore,
  'shift-sheet': shiftSheet,
  'inspection-form': inspectionForm,
  'test-sheet': testSheet,
  'charge-back': chargeBack,
  'season-ledger': seasonLedger,
};
