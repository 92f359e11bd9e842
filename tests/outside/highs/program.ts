// A mixed-integer program as rows and columns, written out in the LP text format that `highs` reads.
import loadHighs from 'highs';

export type Term = readonly [factor: number, variable: string];

const highs = await loadHighs();

export class Program {
  private readonly rows: string[] = [];
  private readonly known = new Set<string>();
  private readonly kinds = new Map<string, 'binary' | 'free'>();
  private count = 0;

  /** `seconds`: longest that one solve may take. Without more it throws; with `orBest` it hands back the best it has. */
  constructor(
    private readonly seconds = 60,
    private readonly orBest = false,
  ) {}

  /** A choice of 0 or 1; `free`: anything from 0 on, where the rows make it whole by themselves. */
  variable(kind: 'binary' | 'free' = 'binary'): string {
    const name = `x${this.count++}`;
    this.kinds.set(name, kind);
    return name;
  }

  row(terms: readonly Term[], relation: '<=' | '>=' | '=', right: number): void {
    const left = expression(terms);
    if (left === '') {
      const holds = relation === '<=' ? right >= 0 : relation === '>=' ? right <= 0 : right === 0;
      if (!holds)
        throw new RangeError(`a row without variables cannot hold: 0 ${relation} ${right}`);
      return;
    }
    const text = `${left} ${relation} ${right}`;
    if (this.known.has(text)) return;
    this.known.add(text);
    this.rows.push(`r${this.rows.length}: ${text}`);
  }

  /** The least value of an objective, proven, and what stands at 1; null if nothing meets all rows. */
  minimise(
    objective: readonly Term[],
    also?: readonly [terms: readonly Term[], relation: '<=', right: number],
  ): { value: number; chosen: ReadonlySet<string>; proven: boolean } | null {
    const used = [...this.kinds.keys()];
    const of = (kind: 'binary' | 'free') => used.filter((name) => this.kinds.get(name) === kind);
    const text = [
      'Minimize',
      `obj: ${expression(objective) || `0 ${used[0] ?? 'x0'}`}`,
      'Subject To',
      ...this.rows,
      ...(also ? [`also: ${expression(also[0])} ${also[1]} ${also[2]}`] : []),
      'Binary',
      folded(of('binary')),
      'End',
    ].join('\n');
    const result = highs.solve(text, {
      output_flag: false,
      // its presolve once called a program infeasible whose optimum it had found (version 1.15.1)
      presolve: 'off',
      mip_rel_gap: 0,
      mip_abs_gap: 0.4,
      mip_feasibility_tolerance: 1e-7,
      time_limit: this.seconds,
    });
    if (result.Status === 'Infeasible') return null;
    const proven = result.Status === 'Optimal';
    const late = this.orBest && result.Status === 'Time limit reached';
    if (!proven && !late) throw new Error(`the program ended ${result.Status}`);
    const chosen = new Set<string>();
    for (const [name, column] of Object.entries(result.Columns)) {
      if ('Primal' in column && typeof column.Primal === 'number' && column.Primal > 0.5) {
        chosen.add(name);
      }
    }
    // out of time before it had any plan
    if (!proven && (chosen.size === 0 || !Number.isFinite(result.ObjectiveValue))) return null;
    return { value: result.ObjectiveValue, chosen, proven };
  }
}

function expression(terms: readonly Term[]): string {
  const sums = new Map<string, number>();
  for (const [factor, name] of terms) sums.set(name, (sums.get(name) ?? 0) + factor);
  const parts = [...sums].filter(([, factor]) => factor !== 0);
  return folded(
    parts.map(([name, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`),
  );
}

/** The format knows lines of a limited length only. */
function folded(parts: readonly string[]): string {
  const lines: string[] = [];
  for (let i = 0; i < parts.length; i += 12) lines.push(parts.slice(i, i + 12).join(' '));
  return lines.join('\n ');
}
