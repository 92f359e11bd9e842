// 'Done with these figures': what was measured, and on which day.
import type { UseMutationResult } from '@tanstack/react-query';
import { useState } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  FieldError,
  Form,
  Group,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  NumberField,
  Text,
  TextField,
} from 'react-aria-components';
import type { Plan } from '../../../planner/index.ts';
import { longDay } from '../../parts/days.ts';
import type { NewsGiven } from '../../queries/news.ts';
import type { TaskRow } from '../../queries/tasks.ts';
import { dayDone, expectedMl, figureOf, measuredNews } from './telling.ts';

/** Anything that takes a piece of news. */
export type Teller = Pick<UseMutationResult<unknown, Error, NewsGiven>, 'mutate' | 'isPending'>;

/** Largest amount that the record takes, mL. */
const MOST_ML = 10_000_000;

export function FiguresDialog(props: { task: TaskRow; today: string; plan: Plan; tell: Teller }) {
  const { task } = props;
  return (
    <DialogTrigger>
      <Button className="button" aria-label={`Done with these figures: ${task.title}`}>
        Done with these figures
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="slip">
          <Dialog>{({ close }) => <FiguresForm {...props} close={close} />}</Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

function FiguresForm(props: {
  task: TaskRow;
  today: string;
  plan: Plan;
  tell: Teller;
  close: () => void;
}) {
  const { task, today, plan, tell, close } = props;
  const expected = expectedMl(task, plan);
  const [ml, setMl] = useState(expected ?? Number.NaN);
  const [day, setDay] = useState(dayDone(task, today));
  const settled = figureOf(task) === 'settled';
  const news = Number.isFinite(ml) && day !== '' ? measuredNews(task, day, ml) : null;
  return (
    <Form
      className="slip-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (news === null) return;
        tell.mutate(news);
        close();
      }}
    >
      <Heading slot="title">
        {settled ? `What ${task.brew} gave` : `What went into ${task.brew}`}
      </Heading>
      <NumberField
        className="field"
        value={ml}
        onChange={setMl}
        minValue={0}
        maxValue={MOST_ML}
        step={1}
        isRequired
        formatOptions={{ maximumFractionDigits: 0, useGrouping: false }}
      >
        <Label>{settled ? 'Settled slurry, mL' : 'Slurry pitched, mL'}</Label>
        <Group className="field-row">
          <Button slot="decrement" className="button">
            −
          </Button>
          <Input className="input" inputMode="numeric" />
          <Button slot="increment" className="button">
            +
          </Button>
        </Group>
        {expected !== null && (
          <Text slot="description" className="quiet">
            The plan expects {expected} mL.{settled ? ' 0: nothing usable came.' : ''}
          </Text>
        )}
        <FieldError className="red" />
      </NumberField>
      <TextField className="field" type="date" value={day} onChange={setDay} isRequired>
        <Label>On</Label>
        <Input className="input" />
        <FieldError className="red" />
      </TextField>
      <div className="slip-acts">
        <Button type="submit" className="button first" isDisabled={news === null}>
          {day === '' ? 'Done' : `Done on ${longDay(day)}`}
        </Button>
        <Button className="button plain" onPress={close}>
          Not now
        </Button>
      </div>
    </Form>
  );
}
