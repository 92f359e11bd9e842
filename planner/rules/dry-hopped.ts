// Nothing pitched that came out of beer dry-hopped before the harvest.
import {
  brewName,
  brewSubject,
  hardByBrew,
  hoppedDaysBefore,
  plural,
  sourceNameOf,
} from './rule.ts';

export const dryHopped = hardByBrew({
  id: 'dry-hopped',
  title: 'Harvest before the hops',
  level: 'hard',
  unit: 'days',
  says: 'Yeast harvested after the beer was dry-hopped is not pitched again.',
  relaxedTo: {
    home: 0.06,
    nano: 0.08,
    unit: 'hazard',
    says: 'How much more a pitch of hopped slurry is risked.',
    source: 'a guess; direction from Young, MBAA Technical Quarterly 58(2), 2021',
  },
  at(t, b, found) {
    const before = hoppedDaysBefore(t, t.source[b] as number);
    if (before > 0) found(before, b, 0);
  },

  bars: (t, _b, source) => hoppedDaysBefore(t, source) > 0,
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get ${sourceNameOf(t, f.subject)}, harvested ${plural(f.amount, 'day')} after the dry hop.`,
  remedy: () => 'Harvest before the dry hop where the tank allows it, or pitch from another beer.',
});
