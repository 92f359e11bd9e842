// What the fields of the house itself are called; its rules by their own sentences.
import './no-eval.ts';
import { RULES, SETTINGS, type SettingKey } from '../../../planner/index.ts';
import type { FieldSpec } from './fields.ts';

const text = (field: string, label: string, wide = 16): FieldSpec => ({
  field,
  label,
  kind: 'text',
  wide,
});
const number = (field: string, label: string, unit = '', blank?: string): FieldSpec => ({
  field,
  label,
  kind: 'number',
  unit,
  wide: 6,
  ...(blank ? { blank } : {}),
});

/** The fields of the house, by their place. */
export const HEAD_FIELDS: readonly FieldSpec[] = [
  text('name', 'Name of the house', 24),
  { field: 'kind', label: 'Kind of house', kind: 'choice', options: ['home', 'nano'], wide: 8 },
  text('timeZone', 'Time zone', 20),
  text('currency', 'Currency, three letters', 6),
  { field: 'from', label: 'First day that may be a brew day', kind: 'day', wide: 10 },
  { field: 'to', label: 'Last day that may be a brew day', kind: 'day', wide: 10 },
  text('brewDays', 'Brew days'),
  { ...text('workDays', 'Days for other work'), blank: 'the brew days' },
  { ...text('starterDays', 'Days on which a starter may be begun'), blank: 'by the kind of house' },
  text('closed', 'Closed days'),
  number('brewsPerDay', 'Turns of the kettle in a day'),
  number('brewLengthL', 'Litres of one turn', 'L', 'no limit'),
  number('orderLeadDays', 'Days from ordering packs to having them', 'days'),
  number('packAgeOnArrivalDays', 'Age of a pack when it comes', 'days'),
  number('deliveryCost', 'A delivery costs', 'currency'),
  number('conditioningRoomL', 'Room for beer that conditions', 'L', 'no limit'),
  number('store.tempC', 'Temperature of the cold store', '°C'),
  number('store.maxJars', 'Jars that find room', 'jars'),
  number('store.jarMl', 'Slurry that one jar holds', 'mL'),
  number('store.settleDays', 'Days a jar settles before it is read', 'days'),
  number('starterGear.vessels', 'Starter vessels', ''),
  number('starterGear.maxLitres', 'Largest starter', 'L'),
  {
    field: 'starterGear.stirred',
    label: 'Starters are stirred',
    kind: 'yesno',
    wide: 6,
  },
  { ...text('relaxed', 'Rules that cost instead of forbidding'), blank: 'none' },
];

/** Units of rules that can be read in others. */
const READ_AS: Readonly<Record<string, string>> = { SG: 'SG', '°C': '°C', EBC: 'EBC' };

/** How the number of a rule is written. */
export function ruleSpec(field: string, label: string, unit: string): FieldSpec {
  return { field, label, kind: 'number', unit: READ_AS[unit] ?? unit, wide: 7 };
}

/** The field at a place of the house: `store.tempC`, `rules.maxGeneration`; null where none is known. */
export function headSpec(place: string): FieldSpec | null {
  const known = HEAD_FIELDS.find(({ field }) => field === place);
  if (known) return known;
  const [part, key = ''] = place.split('.');
  if (part === 'rules' && Object.hasOwn(SETTINGS, key)) {
    const setting = SETTINGS[key as SettingKey];
    return { ...ruleSpec(place, setting.says, setting.unit), blank: 'as it comes' };
  }
  const rule = part === 'weights' ? RULES.find(({ id }) => id === key) : undefined;
  if (rule) return { ...ruleSpec(place, `Weight of “${rule.title}”`, ''), blank: 'as it comes' };
  return null;
}
