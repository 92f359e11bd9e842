// Builds a problem that lies in a file; every part but the level has to be said.
import type { Problem } from '../../planner/index.ts';

type Parts = {
  code: string;
  path: string;
  value?: string | null;
  bound?: string | null;
  message: string;
  remedy: string;
  level?: Problem['level'];
};

export const fileProblem = ({
  value = null,
  bound = null,
  level = 'error',
  ...rest
}: Parts): Problem => ({ ...rest, value, bound, level });
