// All marks of the season in their order: threads below bars, knots over them, and on top what is pressed and focused.
import { memo, useMemo } from 'react';
import type { StrainLook } from '../../parts/strains.ts';
import type { Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import type { Picture, Thread } from './geometry.ts';
import { Kept } from './kept.tsx';
import { BarMark, Knots, PurchaseMark, ThreadMark, ThreadWords } from './marks.tsx';
import { inSight, type Sight } from './sight.ts';
import { familyOf } from './walk.ts';
import type { Weave } from './weave.ts';

/** From this zoom on threads are written on, px per day. */
export const WRITTEN_FROM = 18;

/** So far beside its line a mark may reach: a jar's code, a corner, the words of a packet, px. */
const BESIDE = 60;

const UNKNOWN: StrainLook = { yeast: '', hue: 1, weave: 'plain', letter: '?' };

export type Marked = {
  picture: Picture;
  woven: Weave;
  looks: ReadonlyMap<string, StrainLook>;
  units: Units;
  sight: Sight;
};

/** All marks in sight. */
export const WovenMarks = memo(function WovenMarks(props: Marked) {
  return <Marks {...props} of={null} active={null} />;
});

/**
 * The line of yeast that is looked at, drawn once more over all the rest, which pales meanwhile as one layer: so no mark of
 * the others is touched.
 */
export const KinMarks = memo(function KinMarks(props: Marked & { active: string }) {
  const { active, woven } = props;
  const family = useMemo(() => familyOf(active, woven), [active, woven]);
  return <Marks {...props} of={family} />;
});

function Marks(props: Marked & { of: ReadonlySet<string> | null; active: string | null }) {
  const { picture, woven, looks, units, sight, of } = props;
  const notes = useMemo(() => new Map(woven.ends.map((end) => [end.brew, end.note])), [woven]);
  const lookOf = (yeast: string): StrainLook => looks.get(yeast) ?? UNKNOWN;
  const inkOf = useMemo(
    () => new Map(picture.threads.map(({ strand }, at) => [strand.id, at])),
    [picture],
  );
  const wanted = (brew: string) => of === null || of.has(brew);
  const threads = picture.threads.filter(({ strand }) => wanted(strand.to ?? strand.from.name));
  const bars = picture.bars.filter(({ bar }) => wanted(bar.brew));
  const purchases = picture.purchases.filter(({ purchase }) => wanted(purchase.brew));
  const threadSeen = ({ startX, endX }: Thread) =>
    inSight(sight, startX - BESIDE, endX - startX + 2 * BESIDE);
  const kin = of === null ? '' : 'kin-';
  return (
    <>
      {threads.map((thread) => (
        <Kept key={thread.strand.id} shown={threadSeen(thread)}>
          <ThreadMark
            id={`ink-${kin}${inkOf.get(thread.strand.id)}`}
            thread={thread}
            look={lookOf(thread.strand.yeast)}
          />
        </Kept>
      ))}
      {picture.pxPerDay >= WRITTEN_FROM &&
        threads.map((thread) => (
          <Kept key={thread.strand.id} shown={threadSeen(thread)}>
            <ThreadWords
              thread={thread}
              look={lookOf(thread.strand.yeast)}
              units={units}
              seenFrom={Math.min(Math.max(sight.edge, thread.startX), thread.endX)}
            />
          </Kept>
        ))}
      {purchases.map((placed) => (
        <Kept key={placed.purchase.brew} shown={inSight(sight, placed.x - BESIDE, 3 * BESIDE)}>
          <PurchaseMark placed={placed} look={lookOf(placed.purchase.yeast)} />
        </Kept>
      ))}
      {bars.map((placed) => (
        <Kept key={placed.bar.brew} shown={inSight(sight, placed.x, placed.freeX - placed.x)}>
          <BarMark
            placed={placed}
            look={lookOf(placed.bar.yeast)}
            note={notes.get(placed.bar.brew) ?? null}
            textX={Math.min(Math.max(sight.edge, placed.x), placed.x + placed.width)}
            here={placed.bar.brew === props.active}
          />
        </Kept>
      ))}
      {threads.map((thread) => (
        <Kept key={thread.strand.id} shown={threadSeen(thread)}>
          <Knots thread={thread} look={lookOf(thread.strand.yeast)} />
        </Kept>
      ))}
    </>
  );
}

/** What is pressed and focused lies over the bar it is for, and says in one breath what that shows. */
export const Links = memo(function Links(props: {
  picture: Picture;
  units: Units;
  sight: Sight;
  tabStop: string | null;
  carried: string | null;
}) {
  const { picture, units, sight, tabStop, carried } = props;
  // What has the focus or is carried stays, wherever it is: hidden, it would lose both.
  const stays = (brew: string) => brew === tabStop || brew === carried;
  return picture.bars.map(({ bar, x, y, width, height }) => (
    <Kept key={bar.brew} shown={inSight(sight, x, width) || stays(bar.brew)}>
      <a
        href={hashOf({ page: 'pitch', brew: bar.brew })}
        data-brew={bar.brew}
        className={bar.planned.done ? 'stays' : 'moves'}
        tabIndex={bar.brew === tabStop ? 0 : -1}
        aria-label={brewWords(bar.planned, units)}
      >
        <rect className="press" x={x} y={y} width={width} height={height} />
      </a>
    </Kept>
  ));
});
