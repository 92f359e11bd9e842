// The units that brewers mix: litres, hectolitres and US gallons; °C and °F; EBC, SRM and absorbance.
//
// The US gallon is 231 cubic inches of 2.54 cm (NIST Handbook 44). Colour: SRM is 12.7 and EBC 25 times
// the absorbance at 430 nm over 1 cm (Oxford Companion to Beer, "SRM").

export const LITRES_PER_HL = 100;
export const LITRES_PER_US_GAL = 3.785411784;
const SRM_PER_A430 = 12.7;
const EBC_PER_A430 = 25;

export const litresFromHl = (hl: number): number => hl * LITRES_PER_HL;
export const hlFromLitres = (litres: number): number => litres / LITRES_PER_HL;
export const litresFromUsGal = (gallons: number): number => gallons * LITRES_PER_US_GAL;
export const usGalFromLitres = (litres: number): number => litres / LITRES_PER_US_GAL;

export const fahrenheitFromCelsius = (celsius: number): number => celsius * 1.8 + 32;
export const celsiusFromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

export const ebcFromSrm = (srm: number): number => (srm * EBC_PER_A430) / SRM_PER_A430;
export const srmFromEbc = (ebc: number): number => (ebc * SRM_PER_A430) / EBC_PER_A430;
/** Colours of a clear beer from its absorbance at 430 nm over 1 cm. */
export const ebcFromA430 = (absorbance: number): number => absorbance * EBC_PER_A430;
export const srmFromA430 = (absorbance: number): number => absorbance * SRM_PER_A430;
