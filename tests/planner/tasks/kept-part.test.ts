// What people are told to do where a part of a starter is kept, from the divided starter to the pitch out of its jar.
import { describe, expect, it } from 'vitest';
import { plan, tasks } from '../../../planner/index.ts';
import { TODAY, twoOfOnePack } from '../../builders/kept-starter.ts';

const house = twoOfOnePack(1);
const made = plan({ house, today: TODAY, seed: 1, steps: 6000 });
const all = tasks(made, house);
const of = (key: string) => {
  const task = all.find((one) => one.key === key);
  if (!task) throw new RangeError(`there is no task ${key}`);
  return { ...task, text: [task.title, ...task.steps, task.why].join(' ') };
};

describe('a part of a starter that is kept', () => {
  it('says how to divide the starter, into which jar, and how the jar can hurt', () => {
    const keep = of('harvest:First');
    expect(keep.day).toBe('2027-03-03');
    // 240 billion of 480 into the jar, 180 into the wort; 240 ÷ (2.1 × 0.8) mL; the other 60 are over
    expect(keep.title).toBe('Keep a part of the starter for First: 143 mL into 1 jar for Second');
    expect(keep.text).toMatch(/50 % of it goes into 1 jar, 3[78] % into First/);
    expect(keep.text).toMatch(/About 1[23] % is left over/);
    expect(keep.text).toMatch(/Label: \w{4} · kept from the starter of First · .* · generation 0/);
    expect(keep.text).toContain('discard by 7 Apr 2027');
    expect(keep.caution).toContain('can bulge, foam over or burst');
    // nothing is harvested, so only the jar is work: 5 minutes
    expect(keep.minutes).toBe(5);
  });

  it('does not let all of it be poured into the first beer', () => {
    expect(of('starter:First').text).toContain('so that a part can be kept in a jar for Second');
    expect(of('chill-decant:First:2').text).toContain('Do not pour it all into the wort');
    const pitch = of('brew-pitch:First').text;
    expect(pitch).toMatch(/Pour in what is for the wort: 3[78] % of the starter's yeast/);
    expect(pitch).not.toContain('pour all of it in');
  });

  it('checks the jar, not a beer, and pitches it', () => {
    const check = of('check-jar:Second');
    expect(check.text).not.toMatch(/gravity|Taste First/);
    expect(check.text).toContain('143 mL kept from the starter of First is wanted');
    expect(of('read-volume:First').text).toContain('kept from the starter of First');
    expect(of('take-out:Second').text).toContain('generation 0 (a fresh pack is 0)');
    expect(all.filter((task) => task.kind === 'harvest').length).toBe(1);
  });

  it('says to discard what nobody is to get', () => {
    const [first] = made.brews;
    const harvests = made.harvests.map((harvest) => ({
      ...harvest,
      jars: harvest.jars.map((jar) => ({ ...jar, for: null })),
    }));
    const spare = tasks({ ...made, brews: first ? [first] : [], harvests }, house).find(
      (task) => task.kind === 'discard-by',
    );
    expect(spare?.title).toMatch(/kept from the starter of First\), unless it was used/);
    expect(spare?.day).toBe('2027-04-07');
  });
});
