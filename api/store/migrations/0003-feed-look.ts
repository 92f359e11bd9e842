// How a feed shows its tasks (all-day or timed, units), as JSON; NULL: as before. Released: never to be edited.
export const id = '0003-feed-look';

export const statements = ['ALTER TABLE feed ADD COLUMN look TEXT'] as const;
