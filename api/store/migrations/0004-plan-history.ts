// When a plan came in force, so that earlier ones can be told from drafts that never were. Released: never to be edited.
export const id = '0004-plan-history';

export const statements = [
  'ALTER TABLE plan ADD COLUMN in_force_at TEXT',
  "UPDATE plan SET in_force_at = made_at WHERE status = 'in-force'",
] as const;
