// All marks of the season in their order: threads below bars, knots over them, and on top what is pressed and focused.
import { memo, useMemo } from 'react';
import type { StrainLook } from '../../parts/strains.ts';
import type { Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import type { Picture } from './geometry.ts';
import { BarMark, Knots, PurchaseMark, ThreadMark, ThreadWords } from './marks.tsx';
import type { Weave } from './weave.ts';

/** From this zoom on threads are written on, px per day. */
export const WRITTEN_FROM = 18;

const UNKNOWN: StrainLook = { yeast: '', hue: 1, weave: 'plain', letter: '?' };

/** A mark says only that it belongs to what is looked at; the others fade by the style sheet, without being drawn anew. */
export const WovenMarks = memo(function WovenMarks(props: {
  picture: Picture;
  woven: Weave;
  looks: ReadonlyMap<string, StrainLook>;
  units: Units;
  active: string | null;
  family: ReadonlySet<string> | null;
  seenFrom: number;
}) {
  const { picture, woven, looks, units, active, family, seenFrom } = props;
  const notes = useMemo(() => new Map(woven.ends.map((end) => [end.brew, end.note])), [woven]);
  const lookOf = (yeast: string): StrainLook => looks.get(yeast) ?? UNKNOWN;
  const kin = (brew: string) => (family?.has(brew) ? 'kin' : '');
  const threadState = (from: string, to: string | null) => kin(to ?? from);
  return (
    <>
      {picture.threads.map((thread, at) => (
        <ThreadMark
          key={thread.strand.id}
          id={`ink-${at}`}
          thread={thread}
          look={lookOf(thread.strand.yeast)}
          state={threadState(thread.strand.from.name, thread.strand.to)}
        />
      ))}
      {picture.pxPerDay >= WRITTEN_FROM &&
        picture.threads.map((thread) => (
          <ThreadWords
            key={thread.strand.id}
            thread={thread}
            look={lookOf(thread.strand.yeast)}
            units={units}
            seenFrom={Math.min(Math.max(seenFrom, thread.startX), thread.endX)}
          />
        ))}
      {picture.purchases.map((placed) => (
        <PurchaseMark
          key={placed.purchase.brew}
          placed={placed}
          look={lookOf(placed.purchase.yeast)}
          state={kin(placed.purchase.brew)}
        />
      ))}
      {picture.bars.map((placed) => (
        <BarMark
          key={placed.bar.brew}
          placed={placed}
          look={lookOf(placed.bar.yeast)}
          note={notes.get(placed.bar.brew) ?? null}
          textX={Math.min(Math.max(seenFrom, placed.x), placed.x + placed.width)}
          state={placed.bar.brew === active ? 'kin here' : kin(placed.bar.brew)}
        />
      ))}
      {picture.threads.map((thread) => (
        <Knots
          key={thread.strand.id}
          thread={thread}
          look={lookOf(thread.strand.yeast)}
          state={threadState(thread.strand.from.name, thread.strand.to)}
        />
      ))}
    </>
  );
});

/** What is pressed and focused lies over the bar it is for, and says in one breath what that shows. */
export const Links = memo(function Links(props: {
  picture: Picture;
  units: Units;
  tabStop: string | null;
}) {
  const { picture, units, tabStop } = props;
  return picture.bars.map(({ bar, x, y, width, height }) => (
    <a
      key={bar.brew}
      href={hashOf({ page: 'pitch', brew: bar.brew })}
      data-brew={bar.brew}
      className={bar.planned.done ? 'stays' : 'moves'}
      tabIndex={bar.brew === tabStop ? 0 : -1}
      aria-label={brewWords(bar.planned, units)}
    >
      <rect className="press" x={x} y={y} width={width} height={height} />
    </a>
  ));
});
