/**
 * From energy to photons, the currency of growth.
 *
 *   photons per joule at one wavelength = λ/(h c NA)
 *   mol per MJ of global radiation      = (share of energy in 400–700 nm) × (µmol/J of that light)
 *
 * µmol/J and mol/MJ are the same number. The factor alone moves a daily light integral by up to 13 %: whoever prints one prints it.
 */
const planck = 6.62607015e-34; // J s
const lightSpeed = 299792458; // m/s
const avogadro = 6.02214076e23; // 1/mol

/** @param wavelength nm; @returns µmol/J. @source nrel-midc-par */
export const photonsPerJoule = (wavelength: number): number => ((wavelength * 1e-9) / (planck * lightSpeed * avogadro)) * 1e6;

/** @param parShare share of solar energy in 400–700 nm; @param perJoule µmol/J of that light; @returns mol/MJ of global radiation */
export const molPerMegajoule = (parShare: number, perJoule: number): number => parShare * perJoule;

/** @param global MJ/m²; @param perMegajoule mol/MJ; @returns mol/m². @source faust-logan-2018 */
export const lightFromRadiation = (global: number, perMegajoule: number): number => global * perMegajoule;

/** µmol/m²/s held for some hours, as mol/m²: PPFD × h × 0.0036. */
export const lightFromFlux = (flux: number, hours: number): number => flux * hours * 0.0036;

/** mol/m² within some hours, as the mean flux, µmol/m²/s; 0 for no time at all. */
export const meanFlux = (light: number, hours: number): number => (hours > 0 ? light / (hours * 0.0036) : 0);
