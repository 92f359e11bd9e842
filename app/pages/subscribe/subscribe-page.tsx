// The calendar: its address to subscribe to, how to add it, how slow it may be, and who can reach it.
import { useMutation, useQueryClient, useSuspenseQueries } from '@tanstack/react-query';
import { useState } from 'react';
import {
  Button,
  Checkbox,
  CheckboxGroup,
  Disclosure,
  DisclosurePanel,
  Label,
} from 'react-aria-components';
import type { TaskKind } from '../../../planner/index.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type Feed, feedsQuery, makeFeed, revokeFeed } from '../../queries/feeds.ts';
import { settingsQuery } from '../../queries/settings.ts';
import { KIND_WORDS, kindsWords } from './kinds.ts';

export function SubscribePage() {
  const [feeds, settings] = useSuspenseQueries({ queries: [feedsQuery, settingsQuery] });
  return (
    <>
      <h1 className="season-title">The tasks in your calendar</h1>
      <p className="lead-text">
        Every task of the season stands in a calendar of its own that your calendar program can
        subscribe to. When the plan changes, the same entries change with it.
      </p>
      {settings.data.loopback && <p className="notice">{settings.data.says}</p>}
      <section className="below" aria-labelledby="addresses">
        <h2 id="addresses">Addresses</h2>
        {feeds.data.feeds.length === 0 && <p>There is no address yet.</p>}
        <ul className="feeds">
          {feeds.data.feeds.map((feed) => (
            <FeedItem key={feed.id} feed={feed} />
          ))}
        </ul>
        <NewFeed />
      </section>
      <section className="below" aria-labelledby="how">
        <h2 id="how">How to add it</h2>
        <ol className="how">
          <li>Copy the address.</li>
          <li>
            In the calendar program, look for adding a calendar by address: it is called
            'subscribe', 'from the web', 'from URL' or 'other calendars'. Do not import the file: an
            import is a copy that never changes.
          </li>
          <li>
            Paste the address, and choose the shortest interval for refreshing that is offered.
          </li>
        </ol>
        {!settings.data.loopback && <p>{settings.data.says}</p>}
      </section>
      <section className="below" aria-labelledby="slow">
        <h2 id="slow">How slow it may be</h2>
        <ul className="how">
          {feeds.data.advice.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

function FeedItem(props: { feed: Feed }) {
  const { feed } = props;
  const revoke = useMutation(revokeFeed(useQueryClient()));
  const [sure, setSure] = useState(false);
  const what = kindsWords(feed.kinds);
  return (
    <li>
      <h3>{what}</h3>
      {feed.address === null ? (
        <p>
          The key of this address is lost, so it cannot be shown. Make a new one and revoke this.
        </p>
      ) : (
        <CopyLine address={feed.address} what={what} />
      )}
      <p className="feed-acts">
        {feed.webcal && <a href={feed.webcal}>Open in the calendar program of this device</a>}
        {sure ? (
          <>
            <Button
              className="button small"
              isDisabled={revoke.isPending}
              onPress={() => revoke.mutate(feed.id)}
            >
              Yes, revoke it: calendars lose these tasks
            </Button>
            <Button className="button plain small" onPress={() => setSure(false)}>
              Keep it
            </Button>
          </>
        ) : (
          <Button
            className="button plain small"
            aria-label={`Revoke: ${what}`}
            onPress={() => setSure(true)}
          >
            Revoke
          </Button>
        )}
      </p>
      {revoke.isError && <ErrorNotice error={revoke.error} />}
    </li>
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

function NewFeed() {
  const make = useMutation(makeFeed(useQueryClient()));
  const [kinds, setKinds] = useState<string[]>([]);
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
        <Button
          className="button first"
          isDisabled={make.isPending}
          onPress={() =>
            make.mutate({ kinds: wanted.length > 0 ? (wanted satisfies TaskKind[]) : null })
          }
        >
          Make it
        </Button>
        {make.isError && <ErrorNotice error={make.error} />}
      </DisclosurePanel>
    </Disclosure>
  );
}
