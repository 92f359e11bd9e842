// What a further address is to hold: kinds of task, alarms, days or clock times, units.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import {
  Button,
  Checkbox,
  CheckboxGroup,
  Disclosure,
  DisclosurePanel,
  Input,
  Label,
  NumberField,
  TextField,
} from 'react-aria-components';
import type { Alarm } from '../../../api/routes/feed-shapes.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { useUnits } from '../../parts/units.ts';
import { Choices } from '../../parts/units-choice.tsx';
import { makeFeed } from '../../queries/feeds.ts';
import { KIND_WORDS } from './kinds.ts';
import { PLAIN_ALARM } from './looks.ts';

export function NewFeed() {
  const make = useMutation(makeFeed(useQueryClient()));
  const [units] = useUnits();
  const [kinds, setKinds] = useState<string[]>([]);
  const [allDay, setAllDay] = useState(false);
  const [volume, setVolume] = useState(units.volume);
  const [gravity, setGravity] = useState(units.gravity);
  const [alarm, setAlarm] = useState<Alarm | null>(null);
  const wanted = KIND_WORDS.filter(([kind]) => kinds.includes(kind)).map(([kind]) => kind);
  return (
    <Disclosure className="new-feed">
      <Button slot="trigger" className="button">
        Make another address
      </Button>
      <DisclosurePanel>
        <CheckboxGroup className="kinds" value={kinds} onChange={setKinds}>
          <Label>Only these tasks; none chosen: all</Label>
          {KIND_WORDS.map(([kind, says]) => (
            <Checkbox key={kind} value={kind} className="checkbox">
              <span className="box" aria-hidden="true" />
              {says}
            </Checkbox>
          ))}
        </CheckboxGroup>
        <div className="feed-look">
          <span className="field-name">Tasks with a clock time</span>
          <Choices
            label="Tasks with a clock time"
            value={allDay ? 'days' : 'times'}
            options={[
              { value: 'times', says: 'at their time' },
              { value: 'days', says: 'as whole days' },
            ]}
            choose={(chosen) => setAllDay(chosen === 'days')}
          />
          <span className="field-name">Units in this calendar</span>
          <Choices
            label="Volumes and temperatures in this calendar"
            value={volume}
            options={[
              { value: 'metric', says: 'litres, °C' },
              { value: 'us', says: 'gallons, °F' },
            ]}
            choose={setVolume}
          />
          <Choices
            label="Gravities in this calendar"
            value={gravity}
            options={[
              { value: 'sg', says: 'SG' },
              { value: 'plato', says: '°P' },
            ]}
            choose={setGravity}
          />
          <span className="field-name">Alarms</span>
          <Choices
            label="Alarms"
            value={alarm === null ? 'none' : 'some'}
            options={[
              { value: 'none', says: 'none' },
              { value: 'some', says: 'before each task' },
            ]}
            choose={(chosen) => setAlarm(chosen === 'some' ? (alarm ?? PLAIN_ALARM) : null)}
          />
          {alarm !== null && <AlarmFields alarm={alarm} allDay={allDay} change={setAlarm} />}
        </div>
        <Button
          className="button first"
          isDisabled={make.isPending}
          onPress={() =>
            make.mutate({
              kinds: wanted.length > 0 ? wanted : null,
              alarm,
              look: { allDay, volume, gravity },
            })
          }
        >
          Make it
        </Button>
        {make.isError && <ErrorNotice error={make.error} />}
      </DisclosurePanel>
    </Disclosure>
  );
}

function AlarmFields(props: { alarm: Alarm; allDay: boolean; change: (alarm: Alarm) => void }) {
  const { alarm, change } = props;
  return (
    <div className="alarm-fields">
      <WholeField
        says="Whole days: days before"
        most={14}
        value={alarm.daysBefore}
        change={(daysBefore) => change({ ...alarm, daysBefore })}
      />
      <TextField
        className="field"
        type="time"
        value={alarm.atTime}
        onChange={(atTime) => change({ ...alarm, atTime })}
      >
        <Label className="field-name">Whole days: at</Label>
        <Input className="input" />
      </TextField>
      {!props.allDay && (
        <WholeField
          says="Clock times: minutes before"
          most={20_160}
          value={alarm.minutesBefore}
          change={(minutesBefore) => change({ ...alarm, minutesBefore })}
        />
      )}
    </div>
  );
}

/** A whole number from 0 up; an emptied field counts as 0. */
function WholeField(props: {
  says: string;
  most: number;
  value: number;
  change: (value: number) => void;
}) {
  return (
    <NumberField
      className="field"
      minValue={0}
      maxValue={props.most}
      value={props.value}
      onChange={(value) => props.change(Number.isFinite(value) ? Math.round(value) : 0)}
    >
      <Label className="field-name">{props.says}</Label>
      <Input className="input" />
    </NumberField>
  );
}
