// Walking along the yeast: to the parent, to the child, among siblings, from line to line.
import { describe, expect, it } from 'vitest';
import { familyOf, stepFrom } from '../../../app/pages/season/walk.ts';
import { weave } from '../../../app/pages/season/weave.ts';
import { aHouse, aPlan, aPlannedBrew, heron, quill } from '../../builders/plan.ts';

/** Millrace (packs) feeds Quill and Rook; Heron comes from packs of its own. */
function season() {
  const source = quill().source;
  const rook = aPlannedBrew({ brew: 'Rook', day: '2027-02-05', tank: 'Keg B', source });
  return weave(aPlan({ brews: [aPlannedBrew(), quill(), rook, heron()] }), aHouse());
}

describe('steps', () => {
  it.each([
    ['Quill', 'back', 'Millrace'],
    ['Millrace', 'on', 'Quill'],
    ['Quill', 'after', 'Rook'],
    ['Rook', 'before', 'Quill'],
    ['Rook', 'after', 'Heron'],
    ['Millrace', 'after', 'Heron'],
    ['Heron', 'before', 'Millrace'],
    ['Heron', 'first', 'Millrace'],
    ['Millrace', 'last', 'Heron'],
    ['Millrace', 'back', null],
    ['Millrace', 'before', null],
    ['Rook', 'on', null],
    ['Heron', 'after', null],
  ] as const)('%s, %s: %s', (brew, step, to) => {
    expect(stepFrom(brew, step, season())).toBe(to);
  });
});

describe('family', () => {
  it('is every beer before and after on the same yeast, and no cousin', () => {
    expect(familyOf('Millrace', season())).toEqual(new Set(['Millrace', 'Quill', 'Rook']));
    expect(familyOf('Rook', season())).toEqual(new Set(['Rook', 'Millrace']));
    expect(familyOf('Heron', season())).toEqual(new Set(['Heron']));
  });
});
