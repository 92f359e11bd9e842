// 'Slipped to …': the brew days to which a brew can move, and any other day.
import { useState } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  Form,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  Radio,
  RadioGroup,
  TextField,
} from 'react-aria-components';
import type { House } from '../../../planner/index.ts';
import { distance, longDay } from '../../parts/days.ts';
import type { TaskRow } from '../../queries/tasks.ts';
import type { Teller } from './figures-dialog.tsx';
import { slipDays } from './telling.ts';

const OTHER = 'other';

export function SlipDialog(props: { task: TaskRow; today: string; house: House; tell: Teller }) {
  const { task } = props;
  return (
    <DialogTrigger>
      <Button className="button" aria-label={`Slipped to …: ${task.title}`}>
        Slipped to …
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="slip">
          <Dialog>{({ close }) => <SlipForm {...props} close={close} />}</Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

function SlipForm(props: {
  task: TaskRow;
  today: string;
  house: House;
  tell: Teller;
  close: () => void;
}) {
  const { task, today, house, tell, close } = props;
  const days = slipDays(task, house, today);
  const [chosen, setChosen] = useState(days[0] ?? OTHER);
  const [other, setOther] = useState('');
  const to = chosen === OTHER ? other : chosen;
  return (
    <Form
      className="slip-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (task.brew === null || to === '') return;
        tell.mutate({ kind: 'slipped', brew: task.brew, to });
        close();
      }}
    >
      <Heading slot="title">{task.brew} slipped</Heading>
      <RadioGroup className="radios" value={chosen} onChange={setChosen}>
        <Label>The earliest day on which it can be brewed now</Label>
        {days.map((day) => (
          <Radio key={day} value={day} className="radio">
            {longDay(day)}
            <span className="quiet">&nbsp;· {distance(today, day)}</span>
          </Radio>
        ))}
        <Radio value={OTHER} className="radio">
          Another day
        </Radio>
      </RadioGroup>
      {chosen === OTHER && (
        <TextField className="field" type="date" value={other} onChange={setOther} isRequired>
          <Label>Day</Label>
          <Input className="input" min={today} />
        </TextField>
      )}
      <p className="quiet">
        The rest of the season is planned anew around it. Nothing changes until you have seen what
        differs and adopted it.
      </p>
      <div className="slip-acts">
        <Button type="submit" className="button first" isDisabled={to === ''}>
          Plan around it
        </Button>
        <Button className="button plain" onPress={close}>
          Not now
        </Button>
      </div>
    </Form>
  );
}
