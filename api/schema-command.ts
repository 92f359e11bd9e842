// `npm run schema`: prints the JSON Schema of the house and of the plan.
import { z } from 'zod';
import { House, Plan } from '../planner/index.ts';

/** JSON Schema (draft 2020-12) of a house as it is given and of a plan as it is handed out. */
export function schemas() {
  return {
    house: z.toJSONSchema(House, { io: 'input', unrepresentable: 'any' }),
    plan: z.toJSONSchema(Plan, { io: 'output', unrepresentable: 'any' }),
  };
}

/** Prints both schemas as one JSON object, or one of them by name. Returns the exit code. */
export async function run(args: readonly string[]): Promise<number> {
  const all = schemas();
  const [name] = args;
  if (name === undefined) {
    process.stdout.write(`${JSON.stringify(all, null, 2)}\n`);
    return 0;
  }
  if (args.length === 1 && (name === 'house' || name === 'plan')) {
    process.stdout.write(`${JSON.stringify(all[name], null, 2)}\n`);
    return 0;
  }
  process.stderr.write(
    `There is no schema “${args.join(' ')}”: say house, plan, or nothing for both.\n`,
  );
  return 2;
}
