// Tasks read in other units. Source of the factors: NIST Handbook 44, appendix C; °P by NBS Circular 440.
import { describe, expect, test } from 'vitest';
import { taskIn } from '../../../planner/tasks/read-in.ts';
import { aTask } from '../../builders/calendar.ts';

const US = { volume: 'us', gravity: 'plato' } as const;
const said = (title: string, names: string[] = [], units = US) =>
  taskIn(aTask({ title }), units, names).title;

describe('figures in sentences', () => {
  test.each([
    // 200 / 29.5735 = 6.76
    ['pitch 200 mL of jar J1', 'pitch 6.8 fl oz of jar J1'],
    // 20 / 3.785411784 = 5.283
    ['20 L into Keg A', '5.28 gal into Keg A'],
    ['A starter of 0.75 L.', 'A starter of 0.2 gal.'],
    // 10 × 9 / 5 + 32 = 50
    ['into Keg A at 10 °C.', 'into Keg A at 50 °F.'],
    ['into the cold at -1 °C', 'into the cold at 30 °F'],
    // 20 °C = 68 °F, 25 °C = 77 °F
    ['Cool it to 20–25 °C.', 'Cool it to 68–77 °F.'],
    // 75 / 28.3495 = 2.65
    ['Boil 75 g of extract', 'Boil 2.6 oz of extract'],
    ['240 mL to 310 mL settle', '8.1 fl oz to 10.5 fl oz settle'],
    // 400 / 29.5735 = 13.53, 380 / 29.5735 = 12.85 (12.849)
    ['jars of 400 mL (380 mL wanted)', 'jars of 13.5 fl oz (12.8 fl oz wanted)'],
    // The table of Circular 440: SG 1.04003 is 10 °P.
    ['20 L at 1.040.', '5.28 gal at 10 °P.'],
    ['it should finish within 0.003 of 1.040', 'it should finish within 0.8 °P of 10 °P'],
    ['how many mL have settled?', 'how many fl oz have settled?'],
  ])('%s', (metric, us) => expect(said(metric)).toBe(us));

  test.each([
    'Sat 23 January, 321 billion living cells, 80 % alive',
    'for 10 minutes, about 2 days, 1 pack',
    '3 Large kegs, 2 grain bags, 4 Ls',
    'generation 2 (a fresh pack is 0)',
    '€1.05 a jar',
  ])('stays: %s', (text) => expect(said(text)).toBe(text));

  test('only what was asked for is turned', () => {
    expect(said('20 L at 1.040', [], { volume: 'us', gravity: 'sg' } as never)).toBe(
      '5.28 gal at 1.040',
    );
    expect(said('20 L at 1.040', [], { volume: 'metric', gravity: 'plato' } as never)).toBe(
      '20 L at 10 °P',
    );
    const task = aTask();
    expect(taskIn(task, { volume: 'metric', gravity: 'sg' }, [])).toBe(task);
  });

  test('a name stays a name, whatever stands in it', () => {
    expect(said('Brew Batch 20 L: 20 L into 5 L Keg', ['Batch 20 L', '5 L Keg', 'Batch'])).toBe(
      'Brew Batch 20 L: 5.28 gal into 5 L Keg',
    );
  });
});

test('amounts carry value and unit together', () => {
  const { amounts } = taskIn(
    aTask({
      amounts: [
        { what: 'Slurry', value: 200, unit: 'mL' },
        { what: 'Original gravity', value: 1.04, unit: 'SG' },
        { what: 'Cells', value: 321, unit: 'billion' },
      ],
    }),
    US,
    [],
  );
  expect(amounts).toEqual([
    { what: 'Slurry', value: 6.8, unit: 'fl oz' },
    { what: 'Original gravity', value: 10, unit: '°P' },
    { what: 'Cells', value: 321, unit: 'billion' },
  ]);
});
