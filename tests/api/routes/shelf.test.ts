// The shelf over HTTP: the jars of the plan in force, with the amounts that tasks and calendar say.
import { expect, test } from 'vitest';
import type { Shelf } from '../../../planner/index.ts';
import { openApp } from '../../builders/app.ts';
import { aPlan } from '../../builders/plan.ts';

test('a jar to come holds the mL that its task says, where the plan itself differs by less than a jug shows', async () => {
  const plan = aPlan();
  const quill = plan.brews.find(({ brew }) => brew === 'Quill');
  if (quill?.source.kind !== 'harvest') throw new Error('Quill is pitched from a harvest');
  const { viability, pitchedB } = quill;
  // the plan draws 184 mL; 190 were told before
  const was = { brew: 'Quill', drawMl: 190, viability, pitchedB, initialB: null, finalB: null };
  const open = await openApp({ plan: { ...plan, told: { brews: [was], harvests: [] } } });
  try {
    const { shelf } = (await open.ask('GET', '/api/shelf')).json as { shelf: Shelf };
    const [jar] = shelf.toCome.filter((one) => one.for === 'Quill');
    expect(jar?.ml).toBeCloseTo(190, 6);
    const { tasks } = (await open.ask('GET', '/api/tasks')).json as {
      tasks: { key: string; amounts: { value: number }[] }[];
    };
    const harvest = tasks.find(({ key }) => key === 'harvest:Millrace');
    expect(harvest?.amounts.map(({ value }) => value)).toContain(190);
  } finally {
    await open.close();
  }
});
