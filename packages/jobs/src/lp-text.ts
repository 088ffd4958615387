/**
 * Writes a minimisation in the LP format that solvers read (CPLEX LP format): variables of at least 0, some binary, some
 * whole numbers.
 * Lines are kept short, because readers limit them.
 */
export class LpText {
  private readonly objective: string[] = [];
  private readonly rows: string[] = [];
  private readonly fixed: string[] = [];
  private readonly binaries = new Set<string>();
  private readonly wholes = new Set<string>();

  /** Adds to what is minimised. */
  cost(coefficient: number, name: string): void {
    if (coefficient !== 0) this.objective.push(term(coefficient, name));
  }

  /** Adds the row `terms sense right`. Terms of one variable are added up. */
  row(terms: readonly (readonly [number, string])[], sense: "<=" | "=" | ">=", right: number): void {
    const sums = new Map<string, number>();
    for (const [coefficient, name] of terms) sums.set(name, (sums.get(name) ?? 0) + coefficient);
    const written = [...sums].filter(([, c]) => c !== 0).map(([name, c]) => term(c, name));
    if (written.length > 0) this.rows.push(` r${this.rows.length}: ${folded(written)} ${sense} ${right}`);
  }

  binary(name: string): void {
    this.binaries.add(name);
  }

  /** Lets a variable be 0, 1, 2 and so on. */
  whole(name: string): void {
    this.wholes.add(name);
  }

  /** Holds a variable at 0. */
  zero(name: string): void {
    this.fixed.push(` ${name} = 0`);
  }

  toString(): string {
    return [
      "Minimize",
      ` obj: ${folded(this.objective)}`,
      "Subject To",
      ...this.rows,
      "Bounds",
      ...this.fixed,
      "Binaries",
      ...[...this.binaries].map((name) => ` ${name}`),
      "Generals",
      ...[...this.wholes].map((name) => ` ${name}`),
      "End",
      "",
    ].join("\n");
  }
}

const term = (coefficient: number, name: string): string =>
  `${coefficient < 0 ? "-" : "+"} ${Math.abs(coefficient)} ${name}`;

const TERMS_A_LINE = 8;

const folded = (terms: readonly string[]): string =>
  terms.map((t, i) => (i > 0 && i % TERMS_A_LINE === 0 ? `\n  ${t}` : t)).join(" ");
