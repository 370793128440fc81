import { bekkerSinkage, type SinkageModuli } from '#engine/soil/bekker-sinkage.ts';
import { multipassFactor } from '#engine/soil/repeated-passes.ts';

/**
 * Depth of the mark that wheels leave for good, m.
 *
 * The sinkage law was measured on bare, loose soil of a known bearing strength. A rooted, firm root zone is stiffer, so the moduli
 * are raised in proportion to its bearing strength under the same patch; sinkage up to a yield share of that strength springs
 * back and leaves no rut; each further pass adds by the multi-pass law. The scaling and the yield share are our assumption.
 *
 *     rut = [z(p) − z(p_y)] N^(1/a),  p_y = yield share × strength,  z by Bekker with moduli × strength/measured strength
 *
 * p peak pressure on the soil (kPa), width of the patch (m), N passes. The depth is capped at `deepest`.
 *
 * @source wong-2008
 */
export interface RutSoil {
  /** kPa, bearing strength of this root zone now, under this patch */
  readonly strength: number;
  /** kPa, bearing strength under the same patch of the soil the moduli were measured on */
  readonly measuredStrength: number;
  readonly moduli: SinkageModuli;
  /** Share of the strength up to which marks spring back. */
  readonly yieldShare: number;
  readonly passExponent: number;
  /** m */
  readonly deepest: number;
}

export const rutDepth = (pressure: number, width: number, passes: number, soil: RutSoil): number => {
  const yields = soil.yieldShare * soil.strength;
  if (!(pressure > yields) || !(passes > 0)) return 0;
  const stiffening = soil.strength / soil.measuredStrength;
  const moduli = { kc: soil.moduli.kc * stiffening, kphi: soil.moduli.kphi * stiffening, n: soil.moduli.n };
  const first = bekkerSinkage(pressure, width, moduli) - bekkerSinkage(yields, width, moduli);
  return Math.min(soil.deepest, first * multipassFactor(passes, soil.passExponent));
};
