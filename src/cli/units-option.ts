import { unitSystems, type UnitSystem } from '#shared/units/quantity.ts';
import { misused, type Desk } from '#cli/command.ts';

/** `--units us` or `--units si`; SI when left out. */
export const unitsOf = (desk: Desk): UnitSystem => {
  const named = desk.options['units'] ?? 'si';
  const system = unitSystems.find((one) => one === named);
  if (system === undefined) throw misused('--units', `must be ${unitSystems.join(' or ')}, not "${String(named)}"`);
  return system;
};
