// The family of a strain, drawn: jars and beers as knots on its thread, with where each one is; what is suspect or on watch is ringed and named.
import { type KeyboardEvent, useState } from 'react';
import { CULTURE_PLACES } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Scroller } from '../../parts/scroller.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { hashOf } from '../../router.ts';
import { cutTo } from '../season/marks.tsx';
import { COLUMN, type Knot, keyOf, nameOf, stepFrom, type Tree } from './tree.ts';

const STATES = { sound: '', watch: 'on watch', suspect: 'suspect' } as const;

export function TreePicture(props: {
  tree: Tree;
  look: StrainLook | undefined;
  /** The first letters of a harvest's codes, by its key. */
  codes: ReadonlyMap<string, string>;
  /** What is shown apart from the rest; null: all of it alike. */
  lit: ReadonlySet<string> | null;
}) {
  const { tree, look, codes, lit } = props;
  const [stop, setStop] = useState(tree.knots[0]?.key ?? '');
  const follow = (event: KeyboardEvent<SVGSVGElement>) => {
    const key = (event.target as Element).closest('a')?.getAttribute('data-knot') ?? null;
    const next = key === null ? null : stepFrom(tree, key, event.key);
    if (next === null) return;
    event.preventDefault();
    setStop(next);
    for (const link of event.currentTarget.querySelectorAll('a')) {
      if (link.getAttribute('data-knot') === next) link.focus();
    }
  };
  const state = (key: string) => (lit === null ? '' : lit.has(key) ? 'kin' : 'other');
  return (
    <Scroller label={`The family of ${tree.yeast}`} className="tree-scroller">
      <Drawing
        label={`Family of ${tree.yeast}; arrow keys follow the yeast`}
        width={tree.width}
        height={tree.height}
        on={{ onKeyDown: follow }}
      >
        <g className={`family hue-${look?.hue ?? 1}`}>
          {tree.columns.map(({ generation, x }) => (
            <g key={generation} className="generation">
              <line x1={x} x2={x} y1="22" y2={tree.height} />
              <text x={x} y="14" textAnchor="middle">
                {generation === 0 ? '0, fresh' : generation}
              </text>
            </g>
          ))}
          {tree.branches.map(({ key, d, to }) => (
            <g key={key} className={`thread ${to.culture.place} ${state(key)}`}>
              <path className="strand" d={d} />
              {look && look.weave !== 'plain' && <path className={`core ${look.weave}`} d={d} />}
            </g>
          ))}
          {tree.knots.map((knot) => (
            <KnotMark
              key={knot.key}
              knot={knot}
              code={codes.get(knot.key) ?? null}
              state={state(knot.key)}
              tabStop={knot.key === stop}
            />
          ))}
        </g>
      </Drawing>
    </Scroller>
  );
}

function KnotMark(props: { knot: Knot; code: string | null; state: string; tabStop: boolean }) {
  const { knot, code, state } = props;
  const { culture, x, y } = knot;
  const { of, place, where } = culture;
  const beer = of.kind === 'beer';
  const there = where === null ? CULTURE_PLACES[place] : `in ${where}`;
  const room = COLUMN * (beer ? 1 - 0.5 : 0.42);
  const name = of.kind === 'harvest' ? (code ?? '') : nameOf(of);
  const doubt = STATES[culture.state];
  return (
    <>
      <svg className={`knot ${of.kind} ${place} ${culture.state} ${state}`} aria-hidden="true">
        {culture.state !== 'sound' && <circle className="doubt" cx={x} cy={y} r="10.5" />}
        {beer ? (
          <circle className="mark" cx={x} cy={y} r="5" />
        ) : (
          <path className="mark" d={`M${x - 4.5} ${y - 4}h9v10h-9zM${x - 5.5} ${y - 6.5}h11`} />
        )}
        <text className="name" x={x - (beer ? 5 : 6)} y={y - (doubt === '' ? 12 : 15)}>
          {cutTo(name, room + 16, 6.2)}
        </text>
        {doubt !== '' && (
          <text className="there doubt-word" x={x - (beer ? 5 : 6)} y={y + 22}>
            {doubt}
          </text>
        )}
        {(beer || place !== 'planned') && (
          <text className="there" x={x - (beer ? 5 : 6)} y={y + (doubt === '' ? 20 : 33)}>
            {cutTo(there, room + 22, 5.4)}
          </text>
        )}
      </svg>
      <a
        href={hashOf({ page: 'shelf', view: of.kind, name: nameOf(of) })}
        data-knot={keyOf(of)}
        tabIndex={props.tabStop ? 0 : -1}
        aria-label={culture.says}
      >
        <rect className="press" x={x - 16} y={y - 24} width={room + 20} height={46} />
      </a>
    </>
  );
}
