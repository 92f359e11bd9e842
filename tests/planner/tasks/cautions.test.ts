// Where work can hurt someone, its task says how: by kind of work, with the source of each caution.
import { describe, expect, it } from 'vitest';
import type { TaskKind } from '../../../planner/index.ts';
import { tasks } from '../../../planner/index.ts';
import { CAUTIONS, cautionText, LOCAL_CODES } from '../../../planner/tasks/cautions.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';

const all = tasks(aPlan(), aHouse());
const cautionOf = (kind: TaskKind, brew?: string) => {
  const found = all.find(
    (task) => task.kind === kind && (brew === undefined || task.brew === brew),
  );
  expect(found, `a task of kind ${kind}`).toBeDefined();
  return found?.caution ?? '';
};

describe('the table of cautions', () => {
  it.each(Object.entries(CAUTIONS))('%s names its source and speaks in sentences', (_, caution) => {
    expect(caution.source.length).toBeGreaterThan(5);
    expect(caution.says).toMatch(/\.$/);
  });

  it('ends with local codes once, where they bear on it', () => {
    const text = cautionText('pressure', 'co2', 'chemicals') ?? '';
    expect(text.split(LOCAL_CODES)).toHaveLength(2);
    expect(cautionText('closed-jar')).not.toContain(LOCAL_CODES);
    expect(cautionText()).toBeNull();
  });
});

// What each kind of work has to warn of. Jars: Escarpment Labs KB 274 (loosen or vent, never tighten). Venting
// before opening: C. White, quoted by brewplus.com. CO2 gathers low: Brewing Business issue 2 citing HSE. No entry
// into a vessel: OSHA summaries. Chemicals into water: MBAA brewpub safety sheet. Hot wort: beerandbrewing.com.
describe('each kind of work', () => {
  it.each([
    ['check-jar', 'Quill', /never tighten/],
    ['take-out', 'Quill', /loosen the lid/],
    ['harvest', 'Millrace', /pressure out of the vessel completely/],
    ['harvest', 'Millrace', /gathers low/],
    ['harvest', 'Millrace', /Never put your head or body into a tank/],
    ['harvest', 'Millrace', /never tighten/],
    ['read-volume', 'Millrace', /never tighten/],
    ['package', 'Millrace', /pressure out of the vessel completely/],
    ['package', 'Millrace', /burst/],
    ['clean', 'Millrace', /chemical to the water, never water to the chemical/],
    ['clean', 'Millrace', /never mix acid with caustic/],
    ['clean', 'Millrace', /Never put your head or body into a tank/],
    ['brew-pitch', 'Millrace', /scalds/],
    ['starter', 'Heron', /boils over/],
    ['starter', 'Heron', /never close it tight/],
    ['chill-decant', 'Heron', /never close it tight/],
    ['dry-hop', 'Quill', /gush/],
    ['crash', 'Quill', /vacuum/],
    ['discard-by', undefined, /cloth/],
  ] as const)('%s for %s says %s', (kind, brew, text) => {
    expect(cautionOf(kind, brew)).toMatch(text);
  });

  it('leaves out what the work does not have: no jar in a brew from packs', () => {
    expect(cautionOf('brew-pitch', 'Millrace')).not.toMatch(/jar/);
    expect(cautionOf('brew-pitch', 'Quill')).toMatch(/jar/);
  });

  it.each(['package', 'clean', 'harvest', 'brew-pitch', 'crash', 'dry-hop'] as const)(
    '%s defers to local codes and licensed practice',
    (kind) => {
      expect(cautionOf(kind)).toContain(LOCAL_CODES);
    },
  );
});
