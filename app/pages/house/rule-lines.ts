// Every rule and every number of the house as one line: made from the rules' own files and the list of settings. Pure.
import '../../parts/book/no-eval.ts';
import {
  RULES,
  type Rule,
  SETTING_GROUPS,
  SETTING_KEYS,
  SETTINGS,
} from '../../../planner/index.ts';

export type Kind = 'home' | 'nano';

/** A number that can be turned. */
export type Dial = {
  /** Where it stands in the house: `rules.maxGeneration`, `weights.lateness`. */
  place: string;
  unit: string;
  /** What holds where the house says nothing. */
  normal: number;
  source: string;
};

export type RuleLine = {
  id: string;
  /** The sentence. */
  says: string;
  /** What turning its number does; '' where the sentence says it all. */
  turning: string;
  dial: Dial | null;
  /** A rule that forbids and may be made to cost instead. */
  relaxable: boolean;
};

export type RuleGroup = { says: string; about: string; lines: RuleLine[] };

function weightOf(rule: Rule) {
  if (rule.level === 'hard') return rule.relaxedTo ?? null;
  return rule.level === 'left-out' ? null : rule.weight;
}

function ruleLine(rule: Rule, kind: Kind): RuleLine {
  const weight = weightOf(rule);
  return {
    id: rule.id,
    says: rule.says,
    turning: weight?.says ?? '',
    relaxable: rule.level === 'hard' && rule.relaxedTo !== undefined,
    dial: weight && {
      place: `weights.${rule.id}`,
      unit: weight.unit,
      normal: weight[kind],
      source: weight.source,
    },
  };
}

/** The groups of settings, each from its first key to the next group's. */
function settingGroups(kind: Kind): RuleGroup[] {
  return SETTING_GROUPS.map(({ says, from }, at) => {
    const next = SETTING_GROUPS[at + 1]?.from;
    const end = next === undefined ? SETTING_KEYS.length : SETTING_KEYS.indexOf(next);
    const lines = SETTING_KEYS.slice(SETTING_KEYS.indexOf(from), end).map((key): RuleLine => {
      const setting = SETTINGS[key];
      return {
        id: key,
        says: setting.says,
        turning: '',
        relaxable: false,
        dial: {
          place: `rules.${key}`,
          unit: setting.unit,
          normal: setting[kind],
          source: setting.source,
        },
      };
    });
    return { says, about: '', lines };
  });
}

/** All rules and settings in the order in which they are read. */
export function ruleGroups(kind: Kind): RuleGroup[] {
  const of = (fits: (rule: Rule) => boolean) =>
    RULES.filter(fits).map((rule) => ruleLine(rule, kind));
  return [
    {
      says: 'Rules that you may soften',
      about:
        'Each forbids something. Softened, it costs instead: the plan may break it where that is worth it.',
      lines: of((rule) => weightOf(rule) !== null && rule.level === 'hard'),
    },
    {
      says: 'What is worth how much',
      about: 'The plan is the one that costs least by these.',
      lines: of((rule) => rule.level === 'cost' && weightOf(rule) !== null),
    },
    {
      says: 'How much a pitch risks',
      about:
        'Each adds to the chance that a batch goes wrong. They are guesses, and kept apart from cash.',
      lines: of((rule) => rule.level === 'hazard'),
    },
    ...settingGroups(kind),
    {
      says: 'What always holds',
      about: 'Nothing to turn here: no plan breaks these, and these costs follow from other lines.',
      lines: of((rule) => weightOf(rule) === null),
    },
  ];
}

/** Whether a line has a word in it. */
export const hasWord = (line: RuleLine, word: string): boolean =>
  `${line.says} ${line.turning} ${line.id}`.toLowerCase().includes(word.trim().toLowerCase());
