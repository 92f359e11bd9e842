// The calendar: its addresses to subscribe to, how to add one, how slow it may be, and who can reach it.
import { useSuspenseQueries } from '@tanstack/react-query';
import '../../styles/subscribe.css';
import { feedsQuery } from '../../queries/feeds.ts';
import { settingsQuery } from '../../queries/settings.ts';
import { FeedItem } from './feed-item.tsx';
import { NewFeed } from './new-feed.tsx';

export default function SubscribePage() {
  const [feeds, settings] = useSuspenseQueries({ queries: [feedsQuery, settingsQuery] });
  const { loopback, says } = settings.data;
  return (
    <>
      <h1 className="season-title">The tasks in your calendar</h1>
      <p className="lead-text">
        Every task of the season stands in a calendar of its own that your calendar program can
        subscribe to. When the plan changes, the same entries change with it.
      </p>
      {loopback && (
        <p className="notice">
          {says} Until then there is no code for a phone to scan: it would lead the phone to itself.
        </p>
      )}
      <section className="below" aria-labelledby="addresses">
        <h2 id="addresses">Addresses</h2>
        {feeds.data.feeds.length === 0 && <p>There is no address yet.</p>}
        <ul className="feeds">
          {feeds.data.feeds.map((feed) => (
            <FeedItem key={feed.id} feed={feed} loopback={loopback} />
          ))}
        </ul>
        <NewFeed />
      </section>
      <section className="below" aria-labelledby="how">
        <h2 id="how">How to add it</h2>
        <ol className="how">
          <li>
            {loopback ? 'Copy the address.' : 'Copy the address, or scan its code with the phone.'}
          </li>
          <li>
            In the calendar program, look for adding a calendar by address: it is called
            'subscribe', 'from the web', 'from URL' or 'other calendars'. Do not import the file: an
            import is a copy that never changes.
          </li>
          <li>
            Paste the address, and choose the shortest interval for refreshing that is offered.
          </li>
          <li>
            On a phone whose calendar cannot subscribe, add it to the account's calendar on the web:
            the phone then shows it, too.
          </li>
          <li>A lost phone, or an address that others saw: revoke it here and make a new one.</li>
        </ol>
        {!loopback && <p>{says}</p>}
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
