import { show, type UnitSystem } from '#shared/units/quantity.ts';
import type { Estimate } from '#shared/vocabulary/money.ts';

/** What the three cases of an estimate rest on, in the reader's units. */
export const basisWords = ({ area, basis }: Pick<Estimate, 'area' | 'basis'>, units: UnitSystem): string => {
  if (area.likely === 0) return 'The plan lays no sod: the quantities are the plan’s in all three.';
  const said = (value: number): string => show(value, 'area', units);
  const whose = basis.members === 1 ? 'the usual season' : `the lowest and the highest tenth of ${basis.members} members`;
  return `Likely is the plan (${said(area.likely)}). Low and high follow the area that ${whose} would have replaced (${said(basis.replaceLow)} and ${said(basis.replaceHigh)}); low is the plan at most, high at least; labour and materials in proportion, trucks whole.`;
};
