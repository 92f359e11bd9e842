// Brings rows in: files that are dropped or chosen, or rows pasted from a spreadsheet; looked at before they are taken.
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import {
  Button,
  Disclosure,
  DisclosurePanel,
  DropZone,
  FileTrigger,
  Label,
  Text,
  TextArea,
  TextField,
} from 'react-aria-components';
import '../../../styles/bring-in.css';
import type { House } from '../../../../planner/index.ts';
import { type ImportAnswer, type Reading, readFiles } from '../../../queries/import.ts';
import { ErrorNotice } from '../../failed.tsx';
import { Choices } from '../../units-choice.tsx';
import { count } from '../../words.ts';
import { type Book, bringRows, documentOf, headOf, LISTS, type Written } from '../book.ts';
import { problemWords } from '../check.ts';
import type { EditedList } from '../fields.ts';
import { write } from '../store.ts';
import { type Brought, broughtFiles, SEASON_FILES, type SeasonFile } from './files.ts';
import { Preview } from './preview.tsx';

type Wish = { columns: Record<string, Record<string, string>>; corrections: Corrections };
type Corrections = NonNullable<Reading['corrections']>;
const NO_WISH: Wish = { columns: {}, corrections: [] };

const FILE_OF: Readonly<Record<EditedList, SeasonFile>> = {
  brews: 'brews.csv',
  tanks: 'tanks.csv',
  yeasts: 'yeasts.csv',
  jars: 'jars.csv',
};

export function BringIn(props: { book: Book; list: EditedList; open?: boolean }) {
  return (
    <Disclosure className="bring-in" defaultExpanded={props.open ?? false}>
      <Button slot="trigger" className="button">
        Bring in a file, or rows of a spreadsheet
      </Button>
      <DisclosurePanel>
        <Bringing {...props} />
      </DisclosurePanel>
    </Disclosure>
  );
}

function Bringing(props: { book: Book; list: EditedList }) {
  const { book } = props;
  const own = FILE_OF[props.list];
  const [files, setFiles] = useState<readonly Brought[]>([]);
  const [wish, setWish] = useState<Wish>(NO_WISH);
  const [pasted, setPasted] = useState('');
  const [tooLarge, setTooLarge] = useState<string[]>([]);
  const [how, setHow] = useState<'add' | 'replace'>('add');
  const read = useMutation(readFiles);
  const look = (of: readonly Brought[], by: Wish) => {
    setFiles(of);
    setWish(by);
    if (of.length === 0) return read.reset();
    return read.mutate({
      files: Object.fromEntries(of.map(({ as, text }) => [as, text])),
      columns: by.columns,
      corrections: by.corrections,
      onto: documentOf(book),
    });
  };
  const bring = async (dropped: readonly File[]) => {
    const { brought, tooLarge: large } = await broughtFiles(dropped, own);
    setTooLarge(large);
    if (brought.length > 0) look(brought, NO_WISH);
  };
  const done = () => {
    look([], NO_WISH);
    setPasted('');
  };
  const answer = files.length > 0 ? read.data : undefined;
  return (
    <div className="bringing">
      <div className="ways-in">
        <DropZone
          className="drop"
          aria-label="Drop files here"
          getDropOperation={() => 'copy'}
          onDrop={async (event) => {
            const dropped = await Promise.all(
              event.items.flatMap((item) => (item.kind === 'file' ? [item.getFile()] : [])),
            );
            await bring(dropped);
          }}
        >
          <Text slot="label">Drop the season's files here: brews.csv, tanks.csv …</Text>
          <FileTrigger
            allowsMultiple
            onSelect={(chosen) => {
              if (chosen) void bring([...chosen]);
            }}
          >
            <Button className="button">Choose files</Button>
          </FileTrigger>
        </DropZone>
        <TextField className="field" value={pasted} onChange={setPasted}>
          <Label>Or paste rows of a spreadsheet here, with their first line</Label>
          <TextArea className="input paste" rows={5} spellCheck={false} />
          <Button
            className="button"
            isDisabled={pasted.trim() === ''}
            onPress={() => look([{ name: 'what was pasted', as: own, text: pasted }], NO_WISH)}
          >
            Look at it
          </Button>
        </TextField>
      </div>
      {tooLarge.length > 0 && (
        <p className="says-wrong">
          {tooLarge.join(', ')}: larger than 6 MB, which is no season. Bring the rows of one season.
        </p>
      )}
      {files.map((file) => (
        <label key={file.name} className="strange-column">
          <span className="strange-name">{file.name}</span>
          <select
            className="cell boxed"
            aria-label={file.name}
            value={file.as}
            onChange={(event) => {
              const as = SEASON_FILES.find((one) => one === event.target.value) ?? file.as;
              look(
                files.map((one) => (one === file ? { ...one, as } : one)),
                NO_WISH,
              );
            }}
          >
            {SEASON_FILES.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
      ))}
      {read.isError && <ErrorNotice error={read.error} />}
      <div aria-live="polite">
        {read.isPending && <p className="quiet">Reading …</p>}
        {answer && (
          <Read
            answer={answer}
            files={files}
            how={how}
            setHow={setHow}
            busy={read.isPending}
            put={(by) => look(files, by)}
            wish={wish}
            take={(house, take) => {
              write((now) => broughtIn(now, house, take, how), 'what was brought in');
              done();
            }}
            leave={done}
          />
        )}
      </div>
    </div>
  );
}

/** The book with the rows of these files, and with the house's own fields if its file was among them. */
function broughtIn(
  book: Book,
  house: House,
  files: readonly SeasonFile[],
  how: 'add' | 'replace',
): Book {
  let next = book;
  for (const list of LISTS) {
    if (files.includes(`${list}.csv`)) {
      next = bringRows(next, list, house[list] as readonly Written[], how);
    }
  }
  return files.includes('house.json') ? { ...next, head: headOf(house) } : next;
}

function Read(props: {
  answer: ImportAnswer;
  files: readonly Brought[];
  how: 'add' | 'replace';
  setHow: (how: 'add' | 'replace') => void;
  busy: boolean;
  wish: Wish;
  put: (wish: Wish) => void;
  take: (house: House, files: SeasonFile[]) => void;
  leave: () => void;
}) {
  const { answer, files, wish, put, how } = props;
  const { house, tables, problems } = answer;
  const soundOf = (list: string) => {
    const known = LISTS.find((one) => one === list);
    return known && house ? house[known].length : 0;
  };
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0);
  const sound = tables.reduce((sum, { list }) => sum + soundOf(list), 0);
  const left = rows - sound;
  const elsewhere = problems.filter(
    ({ path }) => !tables.some(({ file }) => path === file || path.startsWith(`${file}:`)),
  );
  return (
    <>
      <h2>What was read</h2>
      {elsewhere.map((problem) => (
        <p
          key={`${problem.code} ${problem.path}`}
          className={problem.level === 'error' ? 'says-wrong' : 'says-note'}
        >
          {problemWords(problem)}
        </p>
      ))}
      {tables.map((table) => (
        <Preview
          key={table.file}
          table={table}
          problems={problems}
          sound={soundOf(table.list)}
          name={(cell, column) =>
            put({
              ...wish,
              columns: {
                ...wish.columns,
                [table.file]: { ...wish.columns[table.file], [cell]: column },
              },
            })
          }
          correct={(line, column, text) =>
            put({
              ...wish,
              corrections: [...wish.corrections, { file: table.file, line, column, text }],
            })
          }
        />
      ))}
      <div className="merge-acts">
        <Choices
          label="What becomes of the rows that are there"
          value={how}
          options={[
            { value: 'add', says: 'beside what is there' },
            { value: 'replace', says: 'in its place' },
          ]}
          choose={props.setHow}
        />
        <Button
          className="button first"
          isDisabled={house === null || props.busy || (rows > 0 && sound === 0)}
          onPress={() => {
            if (house)
              props.take(
                house,
                files.map(({ as }) => as),
              );
          }}
        >
          {left > 0
            ? `Take the ${count(sound, 'sound row')}, leave ${left} out`
            : `Take ${count(sound, 'row')}`}
        </Button>
        <Button className="button plain" onPress={props.leave}>
          Take nothing
        </Button>
      </div>
      <p className="quiet">What is taken stands in pencil first: nothing is saved yet.</p>
    </>
  );
}
