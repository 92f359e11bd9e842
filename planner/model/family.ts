// The family of a jar, a harvest or a beer: what it came from, what came of it, and where each one is now.
import { z } from 'zod';
import { Name } from './common.ts';
import { CultureRef, CultureState } from './facts.ts';

export const CULTURE_PLACES = {
  planned: 'not brewed yet',
  'in-tank': 'in its tank',
  packaged: 'packaged, conditioning',
  finished: 'ready to drink',
  'on-shelf': 'on the shelf',
  used: 'used up',
  gone: 'gone',
} as const;

export const FamilyMember = z
  .strictObject({
    of: CultureRef,
    kin: z
      .enum(['itself', 'descendant', 'parent', 'sibling'])
      .describe('parent: what it came from, and the beer behind that'),
    state: CultureState,
    place: z.enum(Object.keys(CULTURE_PLACES) as [keyof typeof CULTURE_PLACES]),
    where: Name.nullable().describe('The tank of a beer that stands in one'),
    parent: CultureRef.nullable().describe('What it came from: the edge of the tree'),
    says: z.string(),
  })
  .meta({ id: 'FamilyMember' });
export type FamilyMember = z.infer<typeof FamilyMember>;

export const Family = z
  .strictObject({
    of: CultureRef,
    members: z.array(FamilyMember).describe('Itself first, then by nearness'),
    taste: z.array(Name).describe('Beers to taste: brewed, and suspect or on watch'),
    says: z.string().describe('Which batches to taste, in a sentence'),
  })
  .meta({ id: 'Family', description: 'Who shares yeast with whom, and where each one is.' });
export type Family = z.infer<typeof Family>;
