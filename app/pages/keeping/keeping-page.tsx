// Backups: the whole house as one file, the dated copies, and putting either back.
import { useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import {
  backupsQuery,
  copyFile,
  HOUSE_FILE,
  lookAt,
  makeCopy,
  type Source,
} from '../../queries/backups.ts';
import '../../styles/keeping.css';
import { Restore } from './restore.tsx';

const KINDS = {
  daily: 'of the day',
  'by-hand': 'made by hand',
  'before-restore': 'from before a backup was put back',
} as const;

type Look = { from: string; source: Source };

export default function KeepingPage() {
  const { data } = useSuspenseQuery(backupsQuery);
  const make = useMutation(makeCopy(useQueryClient()));
  const look = useMutation(lookAt());
  const [at, setAt] = useState<Look | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const open = (wanted: Look) => {
    setUnread(null);
    setAt(wanted);
    look.mutate(wanted.source);
  };
  const openFile = async (file: File | undefined) => {
    if (file === undefined) return;
    try {
      open({ from: file.name, source: { document: JSON.parse(await file.text()) } });
    } catch {
      setAt(null);
      setUnread(`${file.name} is no JSON. A whole house is a file that this page gave.`);
    }
  };
  return (
    <>
      <h1 className="season-title">Backups</h1>
      <p className="lead-text">
        While the server runs, it keeps a copy a day: the last {data.daily} days, and one a week for{' '}
        {data.weekly} weeks. They lie in {data.folder}. A disk that dies takes them along, so keep a
        file elsewhere, too.
      </p>
      {data.failure !== null && (
        <p className="notice" role="alert">
          {data.failure}
        </p>
      )}
      <p className="keeping-acts">
        <a className="button first" href={HOUSE_FILE} download>
          Download the whole house
        </a>
        <Button className="button" isDisabled={make.isPending} onPress={() => make.mutate()}>
          Make a copy now
        </Button>
        <FileTrigger
          acceptedFileTypes={['application/json', '.json']}
          onSelect={(files) => void openFile(files?.[0])}
        >
          <Button className="button">Put a downloaded house back …</Button>
        </FileTrigger>
      </p>
      {make.isError && <ErrorNotice error={make.error} />}
      {unread !== null && (
        <p className="notice" role="alert">
          {unread}
        </p>
      )}
      {look.isError && <ErrorNotice error={look.error} />}
      {at !== null && look.isSuccess && (
        <Restore
          key={`${at.from} ${look.submittedAt}`}
          {...at}
          seen={look.data}
          close={() => setAt(null)}
        />
      )}
      <section className="below" aria-labelledby="copies">
        <h2 id="copies">Copies</h2>
        {data.copies.length === 0 && (
          <p>There is none yet: the first is made a minute after the server has started.</p>
        )}
        <ul className="copies">
          {data.copies.map(({ name, day, kind, bytes }) => (
            <li key={name}>
              <span>
                {day}{' '}
                <span className="quiet">
                  {KINDS[kind]}, {megabytes(bytes)}
                </span>
              </span>
              <a href={copyFile(name)} download aria-label={`Download ${name}`}>
                Download
              </a>
              <Button
                className="button plain small"
                aria-label={`Look at it, put it back …: ${name}`}
                onPress={() => open({ from: name, source: { copy: name } })}
              >
                Look at it, put it back …
              </Button>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)}\u00a0MB`;
}
