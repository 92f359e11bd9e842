// Routes and their addresses: there and back for any name a brew can have.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hashOf, routeOf } from '../../app/router.ts';

describe('routes', () => {
  it.each([
    ['', { page: 'season' }],
    ['#', { page: 'season' }],
    ['#/', { page: 'season' }],
    ['#/tasks', { page: 'tasks' }],
    ['#/subscribe', { page: 'subscribe' }],
    ['#/doors', { page: 'doors' }],
    ['#/reckoner', { page: 'reckoner', question: '' }],
    ['#/reckoner/jar', { page: 'reckoner', question: 'jar' }],
    ['#/reckoner/%E0%A4%A', { page: 'lost', hash: '#/reckoner/%E0%A4%A' }],
    ['#/reckoner/jar/7', { page: 'lost', hash: '#/reckoner/jar/7' }],
    ['#/brews/Ferry%20Light', { page: 'pitch', brew: 'Ferry Light' }],
    ['#/brews/', { page: 'lost', hash: '#/brews/' }],
    ['#/brews/%E0%A4%A', { page: 'lost', hash: '#/brews/%E0%A4%A' }],
    ['#/nowhere', { page: 'lost', hash: '#/nowhere' }],
    ['#/tasks/harvest%3AMillrace', { page: 'tasks', task: 'harvest:Millrace' }],
    ['#/keeping', { page: 'keeping' }],
    ['#/subscribe/7', { page: 'lost', hash: '#/subscribe/7' }],
  ])('%s', (hash, route) => {
    expect(routeOf(hash)).toEqual(route);
  });

  it('finds a question again', () => {
    for (const question of ['', 'jar', 'a b/c'])
      expect(routeOf(hashOf({ page: 'reckoner', question }))).toEqual({
        page: 'reckoner',
        question,
      });
  });

  it('finds a task of any key again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (task) => {
        expect(routeOf(hashOf({ page: 'tasks', task }))).toEqual({ page: 'tasks', task });
      }),
    );
  });

  it('finds a brew of any name again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (brew) => {
        expect(routeOf(hashOf({ page: 'pitch', brew }))).toEqual({ page: 'pitch', brew });
      }),
    );
  });
});
