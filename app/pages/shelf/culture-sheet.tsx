// The page of one jar, harvest or beer: what it is and where, its family lit in the tree, and what can be told of it.
import { useQuery } from '@tanstack/react-query';
import type { CultureRef, FamilyMember, NewsKind, Shelf } from '../../../planner/index.ts';
import { CULTURE_PLACES, NEWS_WORDS } from '../../../planner/index.ts';
import { fullDay } from '../../parts/days.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { useUnits } from '../../parts/units.ts';
import { familyQuery } from '../../queries/shelf.ts';
import { hashOf } from '../../router.ts';
import { SomethingElse } from '../tasks/something-else.tsx';
import { Family } from './family.tsx';
import type { Found } from './find.ts';
import { JarList } from './jar-list.tsx';
import { keyOf, nameOf } from './tree.ts';

const SAYS_STATE = { sound: 'sound', watch: 'on watch', suspect: 'suspect' } as const;

export function CultureSheet(props: {
  shelf: Shelf;
  looks: ReadonlyMap<string, StrainLook>;
  found: Found;
}) {
  const { shelf, looks, found } = props;
  const { culture, jar, jars } = found;
  const { of } = culture;
  const [units] = useUnits();
  const family = useQuery(familyQuery(of));
  const members = family.data?.family.members ?? [];
  const look = looks.get(culture.yeast);
  const shown = jar === null ? jars : [jar];
  return (
    <>
      <p className="back">
        <a href={hashOf({ page: 'shelf', view: 'all', name: '' })}>The shelf</a>
      </p>
      <h1 className="season-title">{titleOf(of, jar?.code ?? null)}</h1>
      <p className={`lead-text strain hue-${look?.hue ?? 1}`}>
        <span>
          {culture.yeast}, generation {culture.generation} (a fresh pack is 0);{' '}
          {culture.where === null ? CULTURE_PLACES[culture.place] : `in ${culture.where}`};{' '}
          <strong className={culture.state === 'sound' ? '' : 'red'}>
            {SAYS_STATE[culture.state]}
          </strong>
          .
        </span>
      </p>
      {of.kind === 'beer' && (
        <p>
          <a href={hashOf({ page: 'pitch', brew: of.brew })}>How {of.brew} is pitched and why</a>
        </p>
      )}
      {shown.length > 0 && (
        <div className={`strain-shelf hue-${look?.hue ?? 1}`}>
          <JarList label="Its jars" jars={shown} today={shelf.today} units={units} />
        </div>
      )}
      <News found={found} members={members} />
      <section className="below" aria-labelledby="family">
        <h2 id="family">Its family</h2>
        <Family
          shelf={shelf}
          looks={looks}
          yeast={culture.yeast}
          lit={new Set(members.map((one) => keyOf(one.of)))}
        />
        {family.isError && <ErrorNotice error={family.error} />}
        {family.data && family.data.family.taste.length > 0 && (
          <p className="notice">{family.data.family.says}</p>
        )}
        <Kin title="It came from" members={members.filter(({ kin }) => kin === 'parent')} />
        <Kin title="Came of it" members={members.filter(({ kin }) => kin === 'descendant')} />
        <Kin title="Beside it" members={members.filter(({ kin }) => kin === 'sibling')} />
      </section>
      <p className="quiet">
        {culture.place === 'planned' ? 'Planned for' : of.kind === 'beer' ? 'Brewed' : 'Harvested'}{' '}
        {fullDay(culture.day)}.
      </p>
    </>
  );
}

function titleOf(of: CultureRef, code: string | null): string {
  if (of.kind === 'jar') return `Jar ${of.jar}`;
  if (of.kind === 'beer') return of.brew;
  return code === null ? `The harvest of ${of.brew}` : `Jar ${code}, out of ${of.brew}`;
}

function Kin(props: { title: string; members: readonly FamilyMember[] }) {
  const { title, members } = props;
  if (members.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className="kin">
        {members.map(({ of, says }) => (
          <li key={keyOf(of)}>
            <a href={hashOf({ page: 'shelf', view: of.kind, name: nameOf(of) })}>{says}</a>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What fits what it is and how it stands: a thing that is still to come cannot have gone bad. */
function kindsFor({ culture }: Found): NewsKind[] {
  const { of, place, state } = culture;
  if (place === 'planned') return [];
  const doubt: NewsKind[] =
    state === 'suspect' ? ['sound'] : state === 'watch' ? ['sound', 'suspect'] : ['suspect'];
  if (of.kind === 'beer') return [...doubt, 'passed'];
  if (place !== 'on-shelf') return doubt;
  return [...doubt, of.kind === 'jar' ? 'jar-gone' : 'harvest-lost', 'measured', 'frozen'];
}

const aboutOf = (kind: NewsKind, of: CultureRef): Record<string, unknown> => {
  if (kind === 'jar-gone' && of.kind === 'jar') return { jar: of.jar };
  if (kind === 'harvest-lost' || kind === 'passed')
    return of.kind === 'jar' ? {} : { brew: of.brew };
  return { of };
};

function News(props: { found: Found; members: readonly FamilyMember[] }) {
  const { found, members } = props;
  const { of } = found.culture;
  const kinds = kindsFor(found);
  if (kinds.length === 0) return null;
  return (
    <section className="below no-print" aria-labelledby="tell">
      <h2 id="tell">Tell what happened to it</h2>
      <p className="shelf-acts">
        {kinds.map((kind) => (
          <SomethingElse
            key={kind}
            subject="house"
            says={NEWS_WORDS[kind].title}
            offer={{ kind, fixed: aboutOf(kind, of) }}
            entails={<Entails kind={kind} members={members} />}
          />
        ))}
      </p>
    </section>
  );
}

/** What telling it comes to for the others, each with where it is now. */
function Entails(props: { kind: NewsKind; members: readonly FamilyMember[] }) {
  const { kind, members } = props;
  if (kind !== 'suspect' && kind !== 'sound') return null;
  const own = members.filter(({ kin }) => kin === 'itself' || kin === 'descendant');
  const beside = members.filter(({ kin }) => kin === 'parent' || kin === 'sibling');
  const bad = kind === 'suspect';
  const planned = own.filter(({ of, place }) => of.kind === 'beer' && place === 'planned');
  const pitches = planned.map(({ of }) => nameOf(of));
  return (
    <div className="entails">
      <Held title={bad ? 'Suspect then' : 'Sound again then'} members={own} />
      {beside.length > 0 && (
        <Held title={bad ? 'On watch then' : 'Off watch with it'} members={beside} />
      )}
      {pitches.length > 0 && bad && <p>New yeast is looked for: {pitches.join(', ')}.</p>}
    </div>
  );
}

function Held(props: { title: string; members: readonly FamilyMember[] }) {
  return (
    <>
      <h3>{props.title}</h3>
      <ul>
        {props.members.map(({ of, place, where }) => (
          <li key={keyOf(of)}>
            {of.kind === 'harvest' ? `the harvest of ${of.brew}` : nameOf(of)}:{' '}
            {where === null ? CULTURE_PLACES[place] : `in ${where}`}
          </li>
        ))}
      </ul>
    </>
  );
}
