// 'Something else happened': first what, out of what fits here, then its few figures; refusals stand beside their fields.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button, Heading } from 'react-aria-components';
import { type House, NEWS_WORDS, type Plan, type Problem } from '../../../../planner/index.ts';
import { Refused } from '../../../client.ts';
import { ErrorNotice } from '../../../parts/failed.tsx';
import { useUnits } from '../../../parts/units.ts';
import { houseQuery } from '../../../queries/house.ts';
import { tellNews } from '../../../queries/news.ts';
import { planQuery } from '../../../queries/plan.ts';
import { recordQuery } from '../../../queries/record.ts';
import { NewsEntry } from './news-entry.tsx';
import { fieldsOf, type NewsField, newsFrom, rowStart, type Wrong, written } from './news-form.ts';
import {
  choicesOf,
  type Happened,
  happenedBy,
  type Offer,
  offersFor,
  type Subject,
  startOf,
} from './offers.ts';

type Ground = { plan: Plan; house: House; today: string; happened: Happened };

/** The whole of the slip; it is brought in when it is opened. */
export default function TellSheet(props: {
  subject: Subject;
  close: () => void;
  /** Known already: only its figures are asked for. */
  offer?: Offer;
  /** What telling it comes to, shown before it is told. */
  entails?: ReactNode;
}) {
  const { subject, close, offer, entails } = props;
  const plan = useQuery(planQuery).data;
  const house = useQuery(houseQuery).data;
  const entries = useQuery(recordQuery).data?.entries ?? [];
  const [chosen, setChosen] = useState<Offer | null>(null);
  const now = house?.now ?? house?.house ?? null;
  if (!plan?.plan || now === null) return <p className="quiet">There is no plan yet.</p>;
  const happened = happenedBy(plan.plan, entries);
  const ground = { plan: plan.plan, house: now, today: plan.today, happened };
  if (offer !== undefined) {
    return <NewsForm {...ground} offer={offer} back={null} close={close} entails={entails} />;
  }
  if (chosen !== null) {
    return <NewsForm {...ground} offer={chosen} back={() => setChosen(null)} close={close} />;
  }
  return <Kinds {...ground} subject={subject} choose={setChosen} close={close} />;
}

function Kinds(
  props: Ground & { subject: Subject; choose: (offer: Offer) => void; close: () => void },
) {
  const { subject, plan, happened, choose, close } = props;
  return (
    <div className="slip-form">
      <Heading slot="title">
        What happened{subject === 'house' ? '' : ` with ${subject.brew}`}?
      </Heading>
      {offersFor(subject, plan, happened).map(({ title, offers }) => (
        <section key={title} className="news-kinds" aria-label={title}>
          <h3 className="field-name">{title}</h3>
          <ul>
            {offers.map((offer) => {
              const words = NEWS_WORDS[offer.kind];
              return (
                <li key={offer.kind}>
                  <Button className="news-kind" onPress={() => choose(offer)}>
                    {words.title}
                    <span className="quiet">{words.says}</span>
                  </Button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
      <div className="slip-acts">
        <Button className="button plain" onPress={close}>
          Nothing
        </Button>
      </div>
    </div>
  );
}

/** What each field starts with. */
function started(fields: readonly NewsField[], offer: Offer, ground: Ground, units: Units) {
  const { plan, house, today } = ground;
  const row = rowStart(offer.kind, house.yeasts[0]?.yeast ?? '', today);
  const value = (field: NewsField): unknown => {
    if (!field.path.startsWith('row.')) return startOf(field.path, offer, plan, house, today);
    const own = row[field.spec.field];
    return field.spec.kind === 'strains' && Array.isArray(own) ? own[0] : own;
  };
  return Object.fromEntries(
    fields.map((field) => [field.path, written(field, value(field), units)]),
  );
}

type Units = ReturnType<typeof useUnits>[0];

/** Whether what was refused is about this field. */
const isAbout = (path: string, field: NewsField): boolean =>
  path === field.path || path.startsWith(`${field.path}.`) || path.startsWith(`${field.path}[`);

function NewsForm(
  props: Ground & {
    offer: Offer;
    back: (() => void) | null;
    close: () => void;
    entails?: ReactNode;
  },
) {
  const { offer, plan, house, today, happened, back, close } = props;
  const { kind, fixed } = offer;
  const [units] = useUnits();
  const fields = fieldsOf(kind).filter((field) => !(field.path in fixed));
  const [filled, setFilled] = useState(() =>
    started(fields, offer, { plan, house, today, happened }, units),
  );
  const [wrong, setWrong] = useState<readonly Wrong[]>([]);
  const tell = useMutation(tellNews(useQueryClient()));
  const refused: readonly Problem[] = tell.error instanceof Refused ? tell.error.problems : [];
  const beside = (field: NewsField): string[] => [
    ...wrong.filter(({ path }) => isAbout(path, field)).map(({ says }) => says),
    ...refused
      .filter(({ path }) => isAbout(path, field))
      .map(({ message, remedy }) => `${message} ${remedy}`),
  ];
  const elsewhere =
    tell.error !== null &&
    (refused.length === 0 ||
      refused.some(({ path }) => !fields.some((field) => isAbout(path, field))));
  const words = NEWS_WORDS[kind];
  return (
    <form
      className="slip-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const read = newsFrom(kind, filled, fixed, units);
        setWrong('wrong' in read ? read.wrong : []);
        tell.reset();
        if ('news' in read) tell.mutate(read.news, { onSuccess: close });
      }}
    >
      <Heading slot="title">
        {[words.title, aboutWords(fixed)].filter((word) => word !== '').join(': ')}
      </Heading>
      <p className="quiet">{words.says}</p>
      {props.entails}
      {fields.map((field) => (
        <NewsEntry
          key={field.path}
          field={field}
          text={filled[field.path] ?? ''}
          choices={choicesOf(field, kind, plan, house, happened)}
          units={units}
          wrong={beside(field)}
          write={(text) => setFilled({ ...filled, [field.path]: text })}
        />
      ))}
      {elsewhere && <ErrorNotice error={tell.error} />}
      <div className="slip-acts">
        <Button type="submit" className="button first" isDisabled={tell.isPending}>
          Tell it
        </Button>
        {back !== null && (
          <Button className="button plain" onPress={back}>
            Something else
          </Button>
        )}
        <Button className="button plain" onPress={close}>
          Not now
        </Button>
      </div>
    </form>
  );
}

/** What the news is about, where that is known already. */
function aboutWords(fixed: Offer['fixed']): string {
  const of = fixed.of;
  if (typeof of === 'object' && of !== null) {
    if ('jar' in of) return `jar ${of.jar}`;
    if ('kind' in of && 'brew' in of)
      return of.kind === 'beer' ? String(of.brew) : `harvest of ${of.brew}`;
  }
  return [fixed.brew, fixed.jar, fixed.tank, fixed.yeast].filter(Boolean).join(', ');
}
