import { type Ground, groundUnderPanel } from '#engine/loads/ground.ts';
import { pressureUnder, type SpreadingCovering } from '#engine/loads/panel/pressure-under.ts';
import type { Mat } from '#shared/vocabulary/vehicle.ts';

/**
 * m² on which the mat under an outrigger presses: never less than the pad, never more than the mat. The pad stands in its middle.
 *
 * @param load kN on the pad @param pad m² @param hours it stands
 */
export const matPatch = (load: number, pad: number, mat: Mat, ground: Ground, hours: number): number => {
  const asCovering: SpreadingCovering = {
    spread: mat.modulus === null ? 'rigid-pad' : 'plate',
    thickness: mat.thickness,
    modulus: mat.modulus ?? 0,
    panelWidth: mat.side,
  };
  const patch = Math.PI * pressureUnder(load, pad, asCovering, groundUnderPanel(ground, hours), 'interior').radius ** 2;
  return Math.min(Math.max(pad, mat.side ** 2), Math.max(pad, patch));
};
