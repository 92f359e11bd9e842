// Labels to print before the harvest: which jars, on which paper, and the sheets as they come out of the printer.
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, Checkbox, CheckboxGroup, Input, Label, TextField } from 'react-aria-components';
import type { Shelf, StandingJar } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import { Scroller } from '../../parts/scroller.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { Choices } from '../../parts/units-choice.tsx';
import { count } from '../../parts/words.ts';
import { settingsQuery } from '../../queries/settings.ts';
import { hashOf } from '../../router.ts';
import '../../styles/labels.css';
import { LabelOf } from './label.tsx';
import { PAPERS, type PaperId, sheetsOf } from './paper.ts';

/** Harvests that are chosen before anybody chooses. */
const FIRST = 3;

type Batch = { key: string; says: string; jars: StandingJar[] };

/** What may be labelled: each harvest to come, then what stands in the cold already. */
export function batchesOf(shelf: Shelf): Batch[] {
  const harvests = [...new Set(shelf.toCome.map(({ from }) => from ?? ''))];
  const coming = harvests.map((brew): Batch => {
    const jars = shelf.toCome.filter(({ from }) => from === brew);
    const day = jars[0]?.filledOn ?? shelf.today;
    return {
      key: `harvest ${brew}`,
      says: `${brew}, ${shortDay(day)}: ${count(jars.length, 'jar')}`,
      jars,
    };
  });
  const standing = shelf.jars.filter(({ state }) => state !== 'suspect');
  if (standing.length === 0) return coming;
  const says = `In the cold already: ${count(standing.length, 'jar')}`;
  return [...coming, { key: 'standing', says, jars: standing }];
}

export function LabelsPage(props: { shelf: Shelf; looks: ReadonlyMap<string, StrainLook> }) {
  const { shelf, looks } = props;
  const batches = batchesOf(shelf);
  const [chosen, setChosen] = useState(() =>
    batches
      .filter(({ key }) => key !== 'standing')
      .slice(0, FIRST)
      .map(({ key }) => key),
  );
  const [paperId, setPaper] = useState<PaperId>('a4');
  const [usedUp, setUsedUp] = useState('0');
  const settings = useQuery(settingsQuery).data;
  const base = settings === undefined || settings.loopback ? null : settings.base;
  const paper = PAPERS.find(({ id }) => id === paperId) ?? PAPERS[0];
  if (paper === undefined) return null;
  const jars = batches.filter(({ key }) => chosen.includes(key)).flatMap((batch) => batch.jars);
  const sheets = sheetsOf(jars, paper, Number(usedUp));
  const most = paper.across * paper.down - 1;
  const bad = !/^\d+$/.test(usedUp.trim()) || Number(usedUp) > most;
  return (
    <>
      <div className="no-print">
        <p className="back">
          <a href={hashOf({ page: 'shelf', view: 'all', name: '' })}>The shelf</a>
        </p>
        <h1 className="season-title">Labels</h1>
        <p className="lead-text">
          Print them before the harvest. The first three signs of a code stay the beer's; the last
          follows the order in which its jars leave, so print anew where a new plan changes that.
          Write the code on the lid as well, for paper comes off in the wet.
        </p>
        {settings?.loopback && (
          <p className="notice">
            The labels have no code for a phone: only this machine reaches the server, and a code
            would lead the phone to itself. How to let phones in stands with{' '}
            <a href={hashOf({ page: 'subscribe' })}>the calendar</a>.
          </p>
        )}
        <CheckboxGroup className="kinds" value={chosen} onChange={setChosen}>
          <Label>Jars of</Label>
          {batches.map(({ key, says }) => (
            <Checkbox key={key} value={key} className="checkbox">
              <span className="box" aria-hidden="true" />
              {says}
            </Checkbox>
          ))}
        </CheckboxGroup>
        <div className="label-acts">
          <Choices
            label="Paper"
            value={paperId}
            options={PAPERS.map(({ id, says }) => ({ value: id, says }))}
            choose={setPaper}
          />
          <TextField className="field" value={usedUp} onChange={setUsedUp} isInvalid={bad}>
            <Label>Labels of the first sheet that are used up</Label>
            <Input className="input" inputMode="numeric" />
            {bad && <span className="red">A whole number from 0 to {most}.</span>}
          </TextField>
          <Button
            className="button first"
            isDisabled={jars.length === 0}
            onPress={() => window.print()}
          >
            Print {count(jars.length, 'label')}
          </Button>
        </div>
        <p className="quiet">
          In the print dialogue: the same paper, no margins, no scaling ("100 %" or "actual size").
        </p>
      </div>
      <Scroller label="The sheets as they are printed" className={`label-sheets on-${paperId}`}>
        {sheets.map((sheet) => (
          <div key={`${paperId} ${sheet[0]?.place}`} className="label-sheet">
            {sheet.map(({ place, label }) =>
              label === null ? (
                <div key={place} className="label blank-label" />
              ) : (
                <LabelOf
                  key={place}
                  jar={label}
                  letter={looks.get(label.yeast)?.letter ?? ''}
                  base={base}
                />
              ),
            )}
          </div>
        ))}
      </Scroller>
    </>
  );
}
