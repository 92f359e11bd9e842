// Takes the house out as the files of a season folder, each by its own link.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { exportQuery } from '../../queries/house.ts';

type Link = { file: string; address: string };

export function TakeOut(props: { pencil: boolean }) {
  const cache = useQueryClient();
  const [links, setLinks] = useState<Link[]>([]);
  useEffect(
    () => () => {
      for (const { address } of links) URL.revokeObjectURL(address);
    },
    [links],
  );
  const take = useMutation({
    mutationFn: () => cache.fetchQuery(exportQuery),
    onSuccess: ({ files }) =>
      setLinks(
        Object.entries(files).map(([file, text]) => ({
          file,
          address: URL.createObjectURL(new Blob([text ?? ''], { type: typeOf(file) })),
        })),
      ),
  });
  return (
    <div className="take-out">
      <Button className="button" isDisabled={take.isPending} onPress={() => take.mutate()}>
        Take the season out as files
      </Button>
      {take.isError && <ErrorNotice error={take.error} />}
      {links.length > 0 && (
        <>
          <p role="status">
            {props.pencil && 'What is in pencil is not in them. '}
            One file for each list; together they are a season folder that can be brought in again.
          </p>
          <ul className="take-out-files">
            {links.map(({ file, address }) => (
              <li key={file}>
                <a href={address} download={file}>
                  {file}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

const typeOf = (file: string): string =>
  file.endsWith('.json') ? 'application/json' : 'text/csv;charset=utf-8';
