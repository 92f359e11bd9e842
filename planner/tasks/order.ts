// Order yeast: one task for each delivery, early enough to arrive before it is wanted.
import type { PlannedOrder } from '../model/index.ts';
import {
  compareText,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { placeOn, plusDays, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { counted, listed } from './words.ts';

export const order: TaskMaker = {
  kind: 'order',
  make: (context) => context.plan.orders.flatMap((one) => orderTask(one, context)),
};

/** The brews that an order serves, the earliest first. */
function served(one: PlannedOrder, context: TaskContext): string[] {
  const names = [...new Set(one.lines.flatMap((line) => line.for))];
  const dayOf = (name: string) => context.planned(name)?.day ?? '9999-12-31';
  return names.sort((a, b) => compareText(dayOf(a), dayOf(b)) || compareText(a, b));
}

/** The order that a task is about; undefined if the plan has none such. */
export function orderOfTask(key: string, context: TaskContext): PlannedOrder | undefined {
  return context.plan.orders.find((one) => {
    const first = served(one, context)[0];
    return first !== undefined && taskKey('order', first) === key;
  });
}

function orderTask(one: PlannedOrder, context: TaskContext): TaskDraft[] {
  const brews = served(one, context);
  const first = brews[0];
  if (first === undefined) return [];
  const { plan, house, hands } = context;
  const placed = placeOn(one.orderOn, {
    allowed: (day) => !hands.closed(day),
    from: plan.today,
    to: one.orderOn,
  });
  const packs = one.lines.map((line) => `${counted(line.packs, 'pack')} of ${line.yeast}`);
  const costMinor = one.lines.reduce((sum, line) => sum + line.costMinor, one.deliveryMinor);
  const neededFor = brews.map((name) => {
    const brew = context.planned(name);
    const wanted = brew?.starter?.startOn ?? brew?.day;
    if (wanted === undefined) return name;
    return `${name} (${brew?.starter ? 'starter on' : 'brewed on'} ${sayDay(wanted)})`;
  });
  const oldest = plusDays(one.arrivesOn, -house.packAgeOnArrivalDays);
  return [
    {
      key: taskKey('order', first),
      day: placed.day,
      minutes: MINUTES.order[house.kind],
      time: null,
      brew: first,
      title: `Order ${listed(packs)} for ${listed(brews)}`,
      steps: [
        'Look in the cold store first: a pack you forgot saves the order.',
        `Order ${listed(packs)}${packs.length > 1 ? ' in one delivery' : ''}.`,
        `Ask for packs made on or after ${sayDay(oldest)}, sent cold.`,
        `Put the packs into the cold as they arrive, by ${sayDay(one.arrivesOn)}, with the day of making on them.`,
      ],
      amounts: [
        ...one.lines.map((line) => ({ what: line.yeast, value: line.packs, unit: 'packs' })),
        {
          what: 'Cost with delivery',
          value: costMinor / Math.max(1, plan.minorPerMajor),
          unit: plan.currency,
        },
      ],
      haveReady: ['Names and numbers of packs', 'The address for the delivery'],
      goodLooksLike: `The seller confirms that the packs arrive by ${sayDay(one.arrivesOn)}.`,
      why: [
        `Needed for ${listed(neededFor)}; an order takes ${counted(house.orderLeadDays, 'day')}.`,
        placed.why,
      ]
        .filter(Boolean)
        .join(' '),
      caution: null,
      happened: brews.every(context.isBrewed),
    },
  ];
}
