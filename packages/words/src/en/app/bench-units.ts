const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** The list of units, and giving out serial numbers. */
export const benchUnits = {
  about:
    "Every machine, board, harness and mechanism with a serial number: where it stands, what holds it, and whether it may ship.",
  empty:
    "No unit has a serial number yet. Here belong the machines, boards, harnesses and mechanisms that are being built, each with everything that was recorded of it.",
  emptyHow: "Give out serial numbers above, print their labels, and the floor finds them when it scans.",
  emptyAsk: "Whoever leads the work gives out serial numbers here.",
  none: "No unit is like that.",
  showAll: "Show all",
  count: (shown: number, all: number) =>
    shown === all ? n(all, "unit", "units") : `${shown} of ${n(all, "unit", "units")}`,
  search: "Serial number",
  kind: "Kind",
  kinds: { machine: "Machines", board: "Boards", harness: "Harnesses", mechanism: "Mechanisms" },
  oneKind: { machine: "Machine", board: "Board", harness: "Harness", mechanism: "Mechanism" },
  type: "Type",
  run: "Run",
  state: "State",
  site: "Site",
  all: "all",
  noRun: "without a run",
  noSite: "not said",
  states: { "in-work": "In work", "on-hold": "On hold", released: "Released" },
  unit: "Unit",
  stage: "Stage",
  within: "Is in",
  last: "Last record",
  holds: {
    defects: (count: number) => n(count, "open defect", "open defects"),
    test: (name: string) => `failed: ${name}`,
    tests: (count: number) => `${count} tests failed`,
    recall: "called back",
  },
  onTheWay: (site: string) => `on the way to ${site}`,
  list: "Units",

  give: {
    open: "Give out serial numbers",
    title: "Serial numbers",
    what: "For",
    count: "How many",
    options: "Options",
    usual: "usual",
    noRun: "no run",
    noType: "The book has nothing of that kind.",
    do: (count: number) => (count === 1 ? "Give out 1 number" : `Give out ${count} numbers`),
    given: (first: string, last: string, count: number) =>
      count === 1 ? `Given out: ${first}.` : `Given out: ${first} to ${last}.`,
    onceOnly: "A number that is given out stays given out; one that is not built is simply left.",
    close: "Close",
  },
};
