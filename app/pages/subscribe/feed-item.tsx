// One address: to copy, to open, to scan, to revoke.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, Disclosure, DisclosurePanel } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type Feed, revokeFeed } from '../../queries/feeds.ts';
import { kindsWords } from './kinds.ts';
import { lookWords } from './looks.ts';
import ScanCode from './scan-code.tsx';

/** @param props.loopback only this machine can reach the address: a code for a phone would lead nowhere */
export function FeedItem(props: { feed: Feed; loopback: boolean }) {
  const { feed, loopback } = props;
  const what = kindsWords(feed.kinds);
  return (
    <li>
      <h3>{what}</h3>
      <p className="quiet">{lookWords(feed)}</p>
      {feed.address === null ? (
        <p>
          The key of this address is lost, so it cannot be shown. Make a new one and revoke this.
        </p>
      ) : (
        <CopyLine address={feed.address} what={what} />
      )}
      <p className="feed-acts">
        {feed.webcal && <a href={feed.webcal}>Open in the calendar program of this device</a>}
        <Revoke feed={feed} what={what} />
      </p>
      {feed.webcal && !loopback && (
        <Disclosure className="scan">
          <Button slot="trigger" className="button plain small" aria-label={`Scan it: ${what}`}>
            Scan it with a phone
          </Button>
          <DisclosurePanel>
            <ScanCode text={feed.webcal} label={`Code of the address: ${what}`} />
            <p className="quiet">
              Point the phone's camera at it and open the link in the calendar. Where the phone does
              not know such links, send yourself the address and paste it.
            </p>
          </DisclosurePanel>
        </Disclosure>
      )}
    </li>
  );
}

function Revoke(props: { feed: Feed; what: string }) {
  const revoke = useMutation(revokeFeed(useQueryClient()));
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <Button
        className="button plain small"
        aria-label={`Revoke: ${props.what}`}
        onPress={() => setSure(true)}
      >
        Revoke
      </Button>
    );
  }
  return (
    <>
      <Button
        className="button small"
        isDisabled={revoke.isPending}
        onPress={() => revoke.mutate(props.feed.id)}
      >
        Yes, revoke it: calendars lose these tasks
      </Button>
      <Button className="button plain small" onPress={() => setSure(false)}>
        Keep it
      </Button>
      {revoke.isError && <ErrorNotice error={revoke.error} />}
    </>
  );
}

function CopyLine(props: { address: string; what: string }) {
  const [copied, setCopied] = useState<'' | 'yes' | 'no'>('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(props.address);
      setCopied('yes');
    } catch {
      // Without https a browser lets no page write to the clipboard: the address is then selected.
      setCopied('no');
    }
  };
  return (
    <div className="copy-line">
      <input
        className="input address"
        readOnly
        aria-label={`Address: ${props.what}`}
        value={props.address}
        onFocus={(event) => event.target.select()}
      />
      <Button className="button first" onPress={copy}>
        Copy
      </Button>
      <span role="status">
        {copied === 'yes' && 'Copied.'}
        {copied === 'no' &&
          'This browser does not let the page copy: select the address and copy it.'}
      </span>
    </div>
  );
}
