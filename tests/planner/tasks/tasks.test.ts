// From a plan to what has to be done: every kind of task by table, then what holds for any plan.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type House, type Plan, TASK_KINDS, Task, tasks } from '../../../planner/index.ts';
import { TASK_MAKERS } from '../../../planner/tasks/index.ts';
import {
  aHouse,
  aPlan,
  aPlannedBrew,
  aPlannedHarvest,
  aTank,
  aYeast,
  daysAfter,
  heron,
  quill,
} from '../../builders/plan.ts';

function only(key: string, plan: Plan = aPlan(), house: House = aHouse()): Task {
  const found = tasks(plan, house).filter((task) => task.key === key);
  expect(found, `one task ${key}`).toHaveLength(1);
  return found[0] as Task;
}
const keys = (plan: Plan, house: House = aHouse()) => tasks(plan, house).map((task) => task.key);

describe('the small season', () => {
  it('asks for this, in this order', () => {
    expect(tasks(aPlan(), aHouse()).map((task) => `${task.day} ${task.time} ${task.key}`)).toEqual([
      // pitch 5 h after the kettle is lit, yeast out of the cold 3 h before that: 09:00 + 5 − 3 = 11:00
      '2027-01-09 09:00 brew-pitch:Millrace',
      '2027-01-09 11:00 take-out:Millrace',
      '2027-01-21 null crash:Millrace',
      '2027-01-23 null check-jar:Quill',
      // the yeast stays below the beer: the beer leaves first
      '2027-01-23 null package:Millrace',
      '2027-01-23 null harvest:Millrace',
      '2027-01-23 null clean:Millrace',
      '2027-01-24 null read-volume:Millrace', // harvest + 1 settle day
      '2027-01-24 null discard-by:@shelf:J1', // 20 December + 35 days
      '2027-01-27 null order:Heron',
      '2027-01-30 09:00 brew-pitch:Quill',
      '2027-01-30 11:00 take-out:Quill',
      '2027-02-03 null starter:Heron',
      '2027-02-05 null chill-decant:Heron:1',
      '2027-02-06 09:00 brew-pitch:Heron',
      '2027-02-06 11:00 chill-decant:Heron:2',
      '2027-02-07 null dry-hop:Quill',
      '2027-02-11 null crash:Quill',
      '2027-02-13 null package:Quill',
      '2027-02-13 null clean:Quill',
      '2027-02-25 null crash:Heron',
      '2027-02-27 null package:Heron',
      '2027-02-27 null clean:Heron',
      '2027-02-27 null discard-by:Millrace:S1', // 23 January + 35 days
    ]);
  });

  it('has every kind of task, and a maker for each kind in the order of the kinds', () => {
    expect(new Set(tasks(aPlan(), aHouse()).map((task) => task.kind))).toEqual(new Set(TASK_KINDS));
    expect(TASK_MAKERS.map((maker) => maker.kind)).toEqual([...TASK_KINDS]);
  });

  it('says in each what is done, with what, what good looks like and why', () => {
    for (const task of tasks(aPlan(), aHouse())) {
      expect(Task.safeParse(task).error, task.key).toBeUndefined();
      expect(task.minutes, task.key).toBeGreaterThan(0);
      expect(task.steps.length, task.key).toBeGreaterThan(1);
      expect(task.haveReady.length, task.key).toBeGreaterThan(0);
      expect(task.goodLooksLike, task.key).toMatch(/\.$/);
      expect(task.why, task.key).toMatch(/\.$/);
      for (const step of task.steps) expect(step, task.key).toMatch(/^[A-Z].*[.?]$/);
      const text = JSON.stringify(task);
      expect(text, task.key).not.toMatch(/undefined|NaN|Infinity|\[object/);
    }
  });
});

describe('order', () => {
  it('names packs, brews and the day of arrival', () => {
    const task = only('order:Heron');
    expect(task.title).toBe('Order 1 pack of Harbour Lager for Heron');
    expect(task.steps.join(' ')).toContain('Wed 3 February');
    // 11.50 for the pack and 6.00 for the delivery
    expect(task.amounts).toContainEqual({ what: 'Cost with delivery', value: 17.5, unit: 'EUR' });
    expect(task.why).toContain('starter on Wed 3 February');
  });

  it('keeps its key when a new plan moves it and adds a line', () => {
    const [order] = aPlan().orders;
    const moved = aPlan({
      orders: [
        {
          ...order,
          orderOn: '2027-01-20',
          arrivesOn: '2027-01-27',
          deliveryMinor: 600,
          lines: [
            { yeast: 'Mill Lane Ale', packs: 1, costMinor: 1050, for: ['Later'] },
            { yeast: 'Harbour Lager', packs: 2, costMinor: 2300, for: ['Heron'] },
          ],
        },
      ],
    });
    // Later is not on the plan, so Heron is the first brew that it serves
    expect(only('order:Heron', moved).day).toBe('2027-01-20');
    expect(only('order:Heron', moved).title).toBe(
      'Order 1 pack of Mill Lane Ale and 2 packs of Harbour Lager for Heron and Later',
    );
  });

  it('goes out before a closed day, but not before today', () => {
    const closed = aHouse({ closed: ['2027-01-27', '2027-01-26'] });
    expect(only('order:Heron', aPlan(), closed).day).toBe('2027-01-25');
    const late = only('order:Heron', aPlan({ today: '2027-01-27' }), closed);
    expect(late.day).toBe('2027-01-27');
    expect(late.why).toContain('find hands');
  });
});

describe('check-jar', () => {
  it('tells what to look for and what to do if it fails, by when', () => {
    const steps = only('check-jar:Quill').steps.join(' ');
    expect(steps).toContain('within 0.003 of 1.011'); // final gravity of Millrace
    expect(steps).toContain('Order 2 packs of Mill Lane Ale by 23 January.');
    expect(steps).toContain('The jar is filled today');
    // the check is the last moment itself, so no other is named; an earlier check names it
    expect(steps).not.toContain('Decide by');
    const early = aPlan({ brews: [aPlannedBrew(), quill({ checkOn: '2027-01-20' })] });
    expect(only('check-jar:Quill', early).steps.join(' ')).toContain('Decide by Sat 23 January.');
  });

  it('promises no fallback where there is none, and on brew day comes before the kettle', () => {
    const fallback = { kind: 'none' as const, decideBy: '2027-01-30', says: 'Nothing in time.' };
    const plan = aPlan({ brews: [aPlannedBrew(), quill({ checkOn: '2027-01-30', fallback })] });
    const task = only('check-jar:Quill', plan);
    expect(task.why).not.toContain('fallback');
    expect(task.steps.join(' ')).not.toContain('Decide by');
    expect(task.time).toBe('08:00'); // an hour before 09:00
  });

  it('looks at the beer in its tank where the jar is not filled yet', () => {
    const plan = aPlan({ brews: [aPlannedBrew(), quill({ checkOn: '2027-01-20' }), heron()] });
    const task = only('check-jar:Quill', plan);
    expect(task.title).toBe('Check Millrace in its tank: its yeast is for Quill');
    expect(task.steps.join(' ')).not.toContain('smell the slurry');
  });

  it('is not asked for fresh packs', () => {
    expect(keys(aPlan())).not.toContain('check-jar:Millrace');
  });
});

describe('starter, chill and decant, take out', () => {
  it('gives litres, extract and seed', () => {
    const task = only('starter:Heron');
    expect(task.title).toBe('Make a starter of 1.5 L for Heron from 1 pack of Harbour Lager');
    expect(task.amounts).toContainEqual({ what: 'Dry malt extract', value: 150, unit: 'g' });
    expect(task.time).toBeNull();
  });

  it('pitches a small starter whole: no chilling, no decanting', () => {
    const small = heron({
      starter: {
        litres: 0.8,
        extractG: 80,
        startOn: '2027-02-04',
        growDays: 2,
        chillOn: null,
        initialB: 188,
        finalB: 270,
      },
    });
    const plan = aPlan({ brews: [aPlannedBrew(), quill(), small] });
    expect(keys(plan).filter((key) => key.startsWith('chill-decant'))).toEqual([]);
    expect(only('brew-pitch:Heron', plan).steps.join(' ')).toContain(
      'Pour in the whole starter, 0.8 L.',
    );
    // the starter took the pack out of the cold
    expect(keys(plan)).not.toContain('take-out:Heron');
  });

  it('leaves a starter of the brew day itself to a clock time before the pitch', () => {
    const fresh = heron({
      starter: {
        litres: 0.5,
        extractG: 50,
        startOn: '2027-02-06',
        growDays: 0,
        chillOn: null,
        initialB: 188,
        finalB: 188,
      },
    });
    const plan = aPlan({ brews: [aPlannedBrew(), quill(), fresh] });
    expect(only('starter:Heron', plan).time).toBe('10:00'); // 14:00 − 4 h
  });

  it.each([
    ['a jar', 'take-out:Quill', 'Take jar JEK2 out of the cold for Quill'],
    [
      'liquid packs',
      'take-out:Millrace',
      'Take 1 pack of Mill Lane Ale out of the cold for Millrace',
    ],
  ])('takes %s out of the cold on brew day', (_, key, title) => {
    expect(only(key).title).toBe(title);
  });

  it('leaves dry packs in the cold, and slurry of the day was never there', () => {
    const dry = aHouse({ yeasts: [aYeast({ form: 'dry' }), aYeast({ yeast: 'Harbour Lager' })] });
    expect(keys(aPlan(), dry)).not.toContain('take-out:Millrace');
    const today = quill({
      source: {
        kind: 'harvest',
        brew: 'Millrace',
        harvestedOn: '2027-01-30',
        drawMl: 184,
        ageDays: 0,
        jars: 1,
      },
    });
    expect(keys(aPlan({ brews: [aPlannedBrew(), today] }))).not.toContain('take-out:Quill');
  });
});

describe('brew and pitch', () => {
  it('says litres, tank and yeast in its title and how alive the yeast should be', () => {
    const task = only('brew-pitch:Quill');
    expect(task.title).toBe('Brew Quill: 20 L into Cone, pitch 184 mL out of Millrace');
    expect(task.goodLooksLike).toContain('86 % alive (78 %–91 %)');
    expect(task.steps.join(' ')).toContain('Throw away what remains in an opened jar');
  });

  it('warns at the gravity ceiling only where the yeast is wanted again', () => {
    expect(only('brew-pitch:Millrace').steps.join(' ')).toContain('1.070 or more');
    expect(only('brew-pitch:Quill').steps.join(' ')).not.toContain('1.070');
  });

  it('brews on through the days that a large brew takes, all yeast into the first', () => {
    const large = aPlannedBrew({
      kettle: [
        { day: '2027-01-09', turns: 1 },
        { day: '2027-01-10', turns: 2 },
      ],
    });
    const plan = aPlan({ brews: [large] });
    expect(only('brew-pitch:Millrace', plan).steps.join(' ')).toContain('3 turns');
    const second = only('brew-pitch:Millrace:2', plan);
    expect(second.day).toBe('2027-01-10');
    expect(second.steps.join(' ')).toContain('No more yeast');
  });

  it('lights the kettle for a second brew of the day after the turns of the first', () => {
    const plan = aPlan({ brews: [aPlannedBrew(), quill({ day: '2027-01-09' })] });
    expect(only('brew-pitch:Quill', plan).time).toBe('13:00'); // 09:00 + one turn of 4 h
  });
});

describe('work in the tank', () => {
  it('dry hops on the day, or before a closed day, but never before the harvest', () => {
    const closed = aHouse({ closed: ['2027-02-07'] });
    expect(only('dry-hop:Quill', aPlan(), closed).day).toBe('2027-02-06');
    const harvest = aPlannedHarvest({ brew: 'Quill', day: '2027-02-07', usableFrom: '2027-02-08' });
    const plan = aPlan({ harvests: [aPlannedHarvest(), harvest] });
    // harvested on the closed 7 February: the hops wait for the next day rather than go in before it
    const moved = only('dry-hop:Quill', plan, closed);
    expect(moved.day).toBe('2027-02-08');
    expect(moved.why).toContain('Sun 7 February');
  });

  it('crashes a day early where the day is closed, and says why', () => {
    const task = only('crash:Millrace', aPlan(), aHouse({ closed: ['2027-01-21'] }));
    expect(task.day).toBe('2027-01-20');
    expect(task.why).toContain('Set earlier than Thu 21 January');
    expect(task.title).toBe('Crash Millrace: set Keg A to 2 °C');
  });

  it('cleans when the tank is emptied, else on the first work day before the next beer', () => {
    expect(only('clean:Millrace').day).toBe('2027-01-23');
    const task = only('clean:Millrace', aPlan(), aHouse({ closed: ['2027-01-23', '2027-01-24'] }));
    expect(task.day).toBe('2027-01-27'); // Wednesday; Heron goes in on 6 February
    expect(task.why).toContain('Heron goes into Keg A on Sat 6 February');
  });

  it('cleans twice after a diastatic yeast', () => {
    const house = aHouse({
      yeasts: [aYeast({ nature: 'diastatic' }), aYeast({ yeast: 'Harbour Lager' })],
    });
    expect(only('clean:Millrace', aPlan(), house).minutes).toBe(2 * only('clean:Millrace').minutes);
    expect(only('clean:Millrace', aPlan(), house).steps.join(' ')).toContain(
      'clean everything twice',
    );
  });
});

describe('harvest and its jars', () => {
  it('says how many mL into how many jars, for whom, and what goes on each label', () => {
    const task = only('harvest:Millrace');
    expect(task.title).toBe('Harvest Millrace: 288 mL into 2 jars for Quill'); // 184 + 104
    expect(task.minutes).toBe(30); // 20 + 2 × 5, the home defaults
    const labels = task.steps.filter((step) => step.startsWith('Label: '));
    expect(labels).toEqual([
      'Label: JEK2 · out of Millrace · Mill Lane Ale · generation 1 (a fresh pack is 0) · 23 Jan 2027 · 184 mL · for Quill · discard by 27 Feb 2027.',
      'Label: JEKY · out of Millrace · Mill Lane Ale · generation 1 (a fresh pack is 0) · 23 Jan 2027 · 104 mL · spare · discard by 27 Feb 2027.',
    ]);
    expect(task.steps.join(' ')).toContain('Package the beer first');
  });

  it('draws from the bottom outlet while the beer stays', () => {
    const harvest = aPlannedHarvest({ day: '2027-01-20' });
    expect(only('harvest:Millrace', aPlan({ harvests: [harvest] })).steps.join(' ')).toContain(
      'Draw off the bottom of Keg A',
    );
  });

  it('is no work where nothing is kept', () => {
    const plan = aPlan({ harvests: [aPlannedHarvest({ jars: [] })] });
    expect(keys(plan)).not.toContain('harvest:Millrace');
    expect(keys(plan)).not.toContain('read-volume:Millrace');
  });

  it('comes before the kettle where it is pitched the same day', () => {
    const harvest = aPlannedHarvest({
      day: '2027-01-30',
      jars: [{ ml: 184, for: 'Quill', leavesOn: '2027-01-30' }],
    });
    expect(only('harvest:Millrace', aPlan({ harvests: [harvest] })).time).toBe('09:00');
  });

  it('reads the jars later rather than too early, but before the first is drawn', () => {
    const nano = { kind: 'nano' as const, workDays: ['wed' as const, 'sat' as const] };
    // settled on Sunday 24 January; no hands until Wednesday 27 January
    const house = aHouse({ ...nano, brewDays: ['sat'] });
    expect(only('read-volume:Millrace', aPlan(), house).day).toBe('2027-01-27');
    const drawn = aPlannedHarvest({
      jars: [{ ml: 184, for: 'Quill', leavesOn: '2027-01-24' }],
    });
    // drawn on the day of the reading: read before the kettle of Quill is lit at 09:00
    expect(only('read-volume:Millrace', aPlan({ harvests: [drawn] })).time).toBe('08:00');
    const soon = aPlannedHarvest({
      jars: [{ ml: 184, for: 'Quill', leavesOn: '2027-01-26' }],
    });
    expect(only('read-volume:Millrace', aPlan({ harvests: [soon] }), house).day).toBe('2027-01-23');
  });
});

describe('discard-by', () => {
  it('stands for spare jars and for jars of the shelf that no brew takes', () => {
    const discards = keys(aPlan()).filter((key) => key.startsWith('discard-by'));
    expect(discards).toEqual(['discard-by:@shelf:J1', 'discard-by:Millrace:S1']);
  });

  it('leaves out a jar of the shelf that is pitched', () => {
    const [jar] = aPlan().shelf;
    const plan = aPlan({ shelf: jar === undefined ? [] : [{ ...jar, usedFor: 'Quill' }] });
    expect(keys(plan)).not.toContain('discard-by:@shelf:J1');
  });

  it.each([
    ['2026-12-25', '2027-01-04', '2027-01-04'], // past before the season was planned: on the planning day
    ['2027-01-06', '2027-01-04', '2027-01-06'],
    ['2026-12-25', '2027-02-01', '2027-01-09'], // later plans leave it at the season's start
  ])('a jar good until %s, planned on %s, goes on %s', (discardBy, today, expected) => {
    const [jar] = aPlan().shelf;
    const plan = aPlan({ today, shelf: jar === undefined ? [] : [{ ...jar, discardBy }] });
    expect(only('discard-by:@shelf:J1', plan).day).toBe(expected);
  });

  it.each([
    // 184 + 104 mL are in the plan's jars; 5 % of the harvest may stay in them
    [300, true, false], // rest 12 of 300: 4 %
    [310, true, true], // rest 22 of 310: 7 %
    [310, false, false], // not harvested yet: what is not wanted is not kept
  ])('a harvest of %i mL, taken %s, leaves a rest to discard: %s', (ml, done, expected) => {
    const harvest = aPlannedHarvest({ done, settledMl: { low: ml, likely: ml, high: ml } });
    const plan = aPlan({ harvests: [harvest] });
    expect(keys(plan).includes('discard-by:Millrace:rest')).toBe(expected);
    if (expected) {
      expect(only('discard-by:Millrace:rest', plan).amounts[0]?.value).toBe(ml - 288);
    }
  });

  it('goes a day early before a closed day', () => {
    const task = only('discard-by:@shelf:J1', aPlan(), aHouse({ closed: ['2027-01-24'] }));
    expect(task.day).toBe('2027-01-23');
  });

  it('does not rename the spare jar when a draw is added', () => {
    const more = aPlannedHarvest({
      jars: [
        { ml: 100, for: 'Heron', leavesOn: '2027-02-06' },
        { ml: 184, for: 'Quill', leavesOn: '2027-01-30' },
        { ml: 4, for: null, leavesOn: '2027-02-27' },
      ],
    });
    const plan = aPlan({ harvests: [more] });
    expect(keys(plan)).toContain('discard-by:Millrace:S1');
    expect(only('take-out:Quill', plan).title).toContain('JEK2');
  });
});

describe('the reserve', () => {
  const jars = [
    { ml: 184, for: 'Quill', leavesOn: '2027-01-30' },
    { ml: 104, for: null, leavesOn: '2027-02-21', untilPassed: 'Quill' },
  ];
  const plan = (more: typeof jars = []) =>
    aPlan({ harvests: [aPlannedHarvest({ jars: [...jars, ...more] })] });

  it('is one jar more to harvest, with its reason', () => {
    const task = only('harvest:Millrace', plan());
    expect(task.title).toBe('Harvest Millrace: 288 mL into 2 jars for Quill');
    expect(task.minutes).toBe(30); // 20 + 2 × 5, the home defaults
    expect(task.why).toContain('kept until Quill is tasted and passed');
    expect(task.steps.join(' ')).toContain('in reserve until Quill is passed');
    expect(task.why).not.toContain('1 jar kept in reserve.');
  });

  it('may go once its beer is passed, at the latest on its last day', () => {
    const task = only('discard-by:Millrace:reserve', plan());
    expect(task.title).toBe(
      'Discard jar JEKH (104 mL of Mill Lane Ale out of Millrace) once Quill is tasted and passed, at the latest on Sat 27 February',
    );
    // brewed on 30 January, 12 days in the tank, 10 to condition
    expect(task.day).toBe(quill().readyOn);
    expect(task.steps[0]).toContain('Taste Quill');
    expect(task.caution).not.toBe('');
  });

  it('stands on its last day where its beer is ready only after it', () => {
    const late = quill({ readyOn: '2027-04-01' });
    const made = aPlan({ ...plan(), brews: [aPlannedBrew(), late, heron()] });
    expect(only('discard-by:Millrace:reserve', made).day).toBe('2027-02-27');
  });

  it('renames no other jar and is not renamed', () => {
    const spare = { ml: 4, for: null, leavesOn: '2027-02-27' };
    const codes = (count: number) =>
      only('read-volume:Millrace', plan(Array(count).fill(spare))).amounts.map(({ what }) =>
        what.slice(0, 5).replace(/[ ,]/g, ''),
      );
    expect(codes(0)).toEqual(['JEK2', 'JEKH']);
    expect(codes(1)).toEqual(['JEK2', 'JEKY', 'JEKH']);
    expect(new Set(codes(12)).size).toBe(14);
    expect(codes(12).at(-1)).toBe('JEKH');
  });
});

describe('done tasks', () => {
  it('are flagged and stand on the day on which they were done', () => {
    const made = tasks(aPlan(), aHouse(), [{ key: 'crash:Millrace', day: '2027-01-20' }]);
    const task = made.find((one) => one.key === 'crash:Millrace');
    expect(task).toMatchObject({ done: true, day: '2027-01-20' });
    expect(made.filter((one) => one.done)).toHaveLength(1);
  });

  it('count as done where the brew is brewed, with all that had to come before', () => {
    const done = (made: Task[]) => made.filter((one) => one.done).map((one) => one.key);
    const brewed = aPlan({ brews: [aPlannedBrew({ done: true }), quill(), heron({ done: true })] });
    const expected = [
      'brew-pitch:Millrace',
      'take-out:Millrace',
      'order:Heron',
      'starter:Heron',
      'chill-decant:Heron:1',
      'brew-pitch:Heron',
      'chill-decant:Heron:2',
    ];
    expect(done(tasks(brewed, aHouse()))).toEqual(expected);
    // told by the ticks alone, before a new plan is made
    const ticks = [
      { key: 'brew-pitch:Millrace', day: '2027-01-09' },
      { key: 'brew-pitch:Heron', day: '2027-02-06' },
    ];
    expect(done(tasks(aPlan(), aHouse(), ticks))).toEqual(expected);
  });

  it('leave dry hop and crash behind once the beer is packaged', () => {
    const made = tasks(aPlan(), aHouse(), [{ key: 'package:Quill', day: '2027-02-13' }]);
    const done = made.filter((one) => one.done).map((one) => one.key);
    expect(done).toEqual(['dry-hop:Quill', 'crash:Quill', 'package:Quill']);
  });
});

/** A small season with its days, names, closed days and jars thrown about. */
const anySeason = fc
  .record({
    shift: fc.integer({ min: 0, max: 60 }),
    closed: fc.uniqueArray(fc.integer({ min: 0, max: 120 }), { maxLength: 40 }),
    jars: fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 4 }),
    names: fc.uniqueArray(
      fc
        .string({ minLength: 1, maxLength: 12, unit: 'grapheme' })
        .filter((text) => text.trim() === text && /^[^\r\n\t]+$/.test(text)),
      { minLength: 3, maxLength: 3 },
    ),
    kind: fc.constantFrom('home' as const, 'nano' as const),
  })
  .map(({ shift, closed, jars, names, kind }) => {
    const [a = 'a', b = 'b', c = 'c'] = names;
    const at = (day: string) => daysAfter(day, shift);
    const house = aHouse({
      kind,
      closed: closed.map((day) => daysAfter('2027-01-09', day)),
      tanks: [aTank(), aTank({ tank: 'Cone' })],
    });
    const plan = aPlan({
      brews: [
        aPlannedBrew({ brew: a, day: at('2027-01-09') }),
        quill({
          brew: b,
          day: at('2027-01-30'),
          dryHopOn: at('2027-02-07'),
          emptiedOn: at('2027-02-13'),
          checkOn: at('2027-01-23'),
        }),
        heron({ brew: c, day: at('2027-02-06'), emptiedOn: at('2027-02-27') }),
      ],
      harvests: [
        aPlannedHarvest({
          brew: a,
          day: at('2027-01-23'),
          jars: jars.map((ml, index) =>
            index === 0
              ? { ml, for: b, leavesOn: at('2027-01-30') }
              : { ml, for: null, leavesOn: at('2027-02-27') },
          ),
        }),
      ],
      orders: [
        {
          orderOn: at('2027-01-27'),
          arrivesOn: at('2027-02-03'),
          deliveryMinor: 600,
          lines: [{ yeast: 'Harbour Lager', packs: 1, costMinor: 1150, for: [c] }],
        },
      ],
    });
    return { plan, house };
  });

describe('for any plan', () => {
  it('gives well-formed tasks with keys of their own, in order', () => {
    fc.assert(
      fc.property(anySeason, ({ plan, house }) => {
        const made = tasks(plan, house);
        const found = made.map((task) => task.key);
        expect(new Set(found).size).toBe(found.length);
        for (const task of made) expect(Task.safeParse(task).success).toBe(true);
        for (let at = 1; at < made.length; at++) {
          const [a, b] = [made[at - 1] as Task, made[at] as Task];
          expect(a.day <= b.day).toBe(true);
          if (a.day === b.day) expect((a.time ?? '') <= (b.time ?? '')).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keeps every key when a new plan moves the days', () => {
    fc.assert(
      fc.property(anySeason, fc.integer({ min: 1, max: 20 }), ({ plan, house }, days) => {
        const later = (day: string) => daysAfter(day, days);
        const moved: Plan = {
          ...plan,
          brews: plan.brews.map((brew) => ({
            ...brew,
            day: later(brew.day),
            kettle: brew.kettle.map((turn) => ({ ...turn, day: later(turn.day) })),
            emptiedOn: later(brew.emptiedOn),
          })),
          orders: plan.orders.map((order) => ({ ...order, orderOn: later(order.orderOn) })),
          harvests: plan.harvests.map((one) => ({ ...one, day: later(one.day) })),
        };
        expect(new Set(keys(moved, house))).toEqual(new Set(keys(plan, house)));
      }),
      { numRuns: 50 },
    );
  });

  it('puts no movable work on a closed day without saying that nothing else will do', () => {
    const movable = new Set([
      'order',
      'crash',
      'dry-hop',
      'read-volume',
      'clean',
      'discard-by',
      'package',
    ]);
    fc.assert(
      fc.property(anySeason, ({ plan, house }) => {
        const closed = new Set(house.closed);
        for (const task of tasks(plan, house)) {
          if (movable.has(task.kind) && closed.has(task.day))
            expect(task.why).toContain('find hands');
        }
      }),
      { numRuns: 60 },
    );
  });
});
