import { rowRule } from "./rule.ts";

export const testsScope = rowRule(
  {
    table: "tests",
    about:
      "A test of a board, harness or mechanism names its board type, harness or mechanism type, and no other.",
    reads: ["scope", "board_type", "harness", "mechanism_type"],
  },
  () => (row) => {
    const subjects = [
      ["board_type", row.board_type, "board"],
      ["harness", row.harness, "harness"],
      ["mechanism_type", row.mechanism_type, "mechanism"],
    ] as const;
    for (const [column, value, scope] of subjects) {
      if (row.scope === scope && value === null)
        return { column, expected: `a value, because the scope is \`${scope}\`` };
      if (row.scope !== scope && value !== null) {
        return { column, expected: `blank, because the scope is \`${row.scope}\``, nearest: "" };
      }
    }
    return null;
  },
);

export const testStepsSequence = rowRule(
  {
    table: "test_steps",
    about: "Only a test of the kind `sequence` has steps.",
    reads: ["test"],
  },
  ({ tests }) => {
    const kinds = new Map(tests.map(({ id, kind }) => [id, kind]));
    return (row) => {
      const kind = kinds.get(row.test);
      return kind === undefined || kind === "sequence"
        ? null
        : { column: "test", expected: `a test of the kind \`sequence\`; this one is \`${kind}\`` };
    };
  },
);

/** What a whole machine is tried for before anything in it is switched on. */
const COLD: ReadonlySet<string> = new Set(["bond", "insulation"]);

export const testsRisk = rowRule(
  {
    table: "tests",
    about: "In the tests of a machine bond and insulation come before anything that is switched on.",
    reads: ["scope", "order", "purpose"],
  },
  ({ tests }) => {
    const cold = tests.filter(({ scope, purpose }) => scope === "machine" && COLD.has(purpose));
    const last = Math.max(...cold.map(({ order }) => order));
    return ({ scope, order, purpose }) =>
      scope !== "machine" || COLD.has(purpose) || purpose === "other" || order > last
        ? null
        : {
            column: "order",
            expected: `more than ${last}, so that bond and insulation come before anything that is switched on`,
          };
  },
);
