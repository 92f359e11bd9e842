// While the demo house is open: a line that says so, and the way to one's own.
import { useQuery } from '@tanstack/react-query';
import { houseQuery } from '../queries/house.ts';
import { hashOf } from '../router.ts';

export function DemoNotice() {
  const answer = useQuery(houseQuery).data;
  if (!answer || (answer.house && !answer.demo)) return null;
  return (
    <p className="demo-notice no-print">
      {answer.house
        ? `${answer.house.name} is a demo house, to look around in.`
        : 'There is no house yet.'}{' '}
      <a href={hashOf({ page: 'start', step: '' })}>Start my own</a>
    </p>
  );
}
