// The family trees of the strains, one below the other; or of one strain alone with some of it lit.
import { useMemo } from 'react';
import type { Shelf } from '../../../planner/index.ts';
import type { StrainLook } from '../../parts/strains.ts';
import { harvestCodes } from './find.ts';
import { StrainHead } from './strain-head.tsx';
import { treesOf } from './tree.ts';
import { TreePicture } from './tree-picture.tsx';

export function Family(props: {
  shelf: Shelf;
  looks: ReadonlyMap<string, StrainLook>;
  lit: ReadonlySet<string> | null;
  /** This strain alone. */
  yeast?: string;
}) {
  const { shelf, looks, lit, yeast } = props;
  const trees = useMemo(() => treesOf(shelf.cultures), [shelf]);
  const codes = useMemo(() => harvestCodes(shelf), [shelf]);
  return trees
    .filter((tree) => yeast === undefined || tree.yeast === yeast)
    .map((tree) => {
      const look = looks.get(tree.yeast);
      return (
        <section key={tree.yeast} className={`strain-tree hue-${look?.hue ?? 1}`}>
          {yeast === undefined && look && <StrainHead look={look} />}
          <TreePicture tree={tree} look={look} codes={codes} lit={lit} />
        </section>
      );
    });
}
