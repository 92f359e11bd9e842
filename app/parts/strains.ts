// How a strain is told apart: a hue, a thread pattern that needs no colour, and a letter.
import type { House, Plan } from '../../planner/index.ts';

/** Hues in `tokens.css` (`--strain-1` …), spread for the three kinds of colour blindness. */
const HUES = 6;
/** Core patterns drawn along a thread; five against six hues, so that the pairs repeat only after thirty strains. */
export const WEAVES = ['plain', 'barred', 'hollow', 'beaded', 'dashed'] as const;
export type Weave = (typeof WEAVES)[number];

export type StrainLook = {
  yeast: string;
  /** 1 to 6: which `--strain-n` it wears. */
  hue: number;
  weave: Weave;
  /** One or two characters, unlike those of every other strain of the plan. */
  letter: string;
};

/** Looks for every strain: in the order of the house's own list, so that a new plan does not change them. */
export function strainLooks(plan: Plan, house: House): Map<string, StrainLook> {
  const looks = new Map<string, StrainLook>();
  const taken = new Set<string>();
  const used = [...plan.brews, ...plan.shelf, ...plan.harvests].map((item) => item.yeast);
  const yeasts = [...house.yeasts.map((item) => item.yeast), ...used];
  for (const yeast of yeasts) {
    if (looks.has(yeast)) continue;
    const nth = looks.size;
    const letter = freeLetter(yeast, taken);
    taken.add(letter);
    const weave = WEAVES[nth % WEAVES.length] ?? 'plain';
    looks.set(yeast, { yeast, hue: (nth % HUES) + 1, weave, letter });
  }
  return looks;
}

function freeLetter(yeast: string, taken: ReadonlySet<string>): string {
  const letters = [...yeast.toLocaleUpperCase('en')].filter((sign) => /[\p{L}\p{N}]/u.test(sign));
  for (const letter of letters) if (!taken.has(letter)) return letter;
  for (let n = 2; ; n += 1) {
    const made = `${letters[0] ?? 'Y'}${n}`;
    if (!taken.has(made)) return made;
  }
}
