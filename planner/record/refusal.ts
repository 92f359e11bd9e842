// How news is refused: the field, what stands there, the conflict in a sentence and the ways out.
import type { Problem } from '../model/index.ts';

export type Refusal = {
  /** Permanent id of the kind of problem, after `news.` */
  code: string;
  /** The field of the news that it is about. */
  field: string;
  value: string | null;
  /** What it may be. */
  bound?: string | null;
  message: string;
  /** The ways out, as sentences. */
  remedy: string;
};

export function asProblem(refusal: Refusal): Problem {
  return {
    code: `news.${refusal.code}`,
    path: refusal.field,
    value: refusal.value,
    bound: refusal.bound ?? null,
    message: refusal.message,
    remedy: refusal.remedy,
    level: 'error',
  };
}
