const number = (value: number): string => String(Number(value.toPrecision(5)));
const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** The page of a unit. */
export const benchUnit = {
  all: "All units",
  noSuch: (unit: string) => `Nothing was recorded of ${unit}. Look at the number on its label.`,
  notBegun: (unit: string) =>
    `${unit} has records, but no serial number was given out for it: somebody wrote a number that does not exist.`,
  otherBook: (book: string) => `It is of another machine: ${book}.`,
  openThere: "Open it there",

  facts: {
    type: "Is",
    revision: "Built to",
    run: "Run",
    options: "Options",
    stage: "Stage",
    site: "Site",
    within: "Is in",
    begun: "Begun",
    minutes: "Minutes in total",
    released: "Released",
  },
  change: (no: string) => `change ${no} of the book`,
  release: (name: string) => `release ${name}`,
  usualOptions: "the usual ones",
  notSaid: "not said",
  none: "none",
  at: (place: string) => `at ${place}`,
  byOn: (who: string, when: string) => `${who}, ${when}`,
  onTheWay: (site: string, transport: string) => `on the way to ${site} (transport ${transport})`,
  minutes: (minutes: number) => `${number(minutes)} min`,

  gate: {
    title: "Hold and release",
    shippable: "Nothing holds it, and it is released: it may ship.",
    free: "Nothing holds it. It can be released.",
    held: (count: number) => `${n(count, "thing holds", "things hold")} it.`,
    heldAgain: (when: string) => `It was released on ${when}; what came since holds it again.`,
    lifted: (count: number) => n(count, "is lifted", "are lifted"),
    groups: {
      test: "Tests",
      step: "Steps",
      defect: "Defects",
      fit: "What must be in it",
      recall: "Recalls",
    },
    why: {
      missing: "is missing",
      failed: "failed",
      open: "is not mended",
      "not-retested": "has to be repeated: the unit changed since",
      recalled: "is called back",
      unknown: "is not known to the book, or never got a serial number",
      wrong: "is of another type than belongs there",
    },
    wrongPart: "was replaced by something that the book does not allow instead",
    on: (unit: string) => `on ${unit}`,
    firm: "Nobody can lift this.",
    lift: "Lift …",
    liftTitle: (what: string) => `Lift “${what}”`,
    liftWhy: "Why may it ship without?",
    liftBy: (who: string) => `It is recorded in the name of ${who}.`,
    liftDo: "Lift it",
    cancel: "Cancel",
    isLifted: "lifted",
    release: "Release",
    releaseHint: "Whoever leads the work releases units.",
    all: (count: number) => `Show all ${count}`,
    unheard: "What holds it is not known: ",
    asking:
      "The server works out what holds it. The first time after a change of the book, that takes a while.",
  },

  tree: {
    title: "What is in it",
    none: "Nothing with a number of its own is in it.",
    all: (count: number) => `Show all ${count}`,
    history: "What was in it before",
    fitted: (who: string, when: string) => `fitted ${when} by ${who}`,
    removed: (who: string, when: string) => `taken out ${when} by ${who}`,
    swapped: (other: string, who: string, when: string) => `swapped for ${other} ${when} by ${who}`,
    was: "Where it was before",
    wasIn: (unit: string, place: string) => `${unit}, ${place}`,
  },

  steps: {
    title: "Steps done",
    none: "No step was done yet.",
    step: "Step",
    minutes: "Minutes",
    count: "Counted",
    who: "By",
    when: "When",
  },

  readings: {
    title: "Readings",
    none: "Nothing was tested yet.",
    all: (count: number) => `Show all ${count} tests`,
    test: "Test",
    limits: "Limits",
    tries: "Tries",
    good: "good",
    bad: "not good",
    outside: "outside the limits",
    corrected: "corrected",
    between: (min: string, max: string, unit: string) => `${min} to ${max} ${unit}`,
    atMost: (max: string, unit: string) => `at most ${max} ${unit}`,
    atLeast: (min: string, unit: string) => `at least ${min} ${unit}`,
    value: (value: number, unit: string) => `${number(value)} ${unit}`.trim(),
  },

  defects: {
    title: "Defects",
    none: "No defect was found.",
    open: "open",
    mended: (cause: string, who: string, when: string) => `mended ${when} by ${who}, cause: ${cause}`,
    found: (who: string, when: string) => `found ${when} by ${who}`,
    where: "Show the place",
    picture: (what: string) => `Photo: ${what}`,
    noPicture: "The photo has not come from the tablet yet.",
  },

  made: {
    title: "What it was made from",
    none: "No lots, alternates or concessions were recorded.",
    lot: (part: string, lot: string) => `${part}: lot ${lot}`,
    quantity: (quantity: number) => `${number(quantity)} of it`,
    alternate: (instead: string, part: string) => `${instead} instead of ${part}`,
    allowed: { book: "allowed by the book", concession: "concession" },
  },

  overrides: {
    title: "Lifted",
    none: "Nobody lifted anything.",
  },

  notes: { title: "Notes", none: "Nobody wrote a note." },

  sheets: { title: "Sheets" },

  record: {
    title: "The whole record",
    about:
      "Everything in the order of time. Nothing here can be changed: a correction is a record of its own.",
    within: "With what is in it",
    all: (count: number) => `Show all ${count} records`,
    here: "on this device, not at the server yet",
    corrected: (who: string, when: string, why: string) => `Corrected ${when} by ${who}: ${why}`,
    correct: "Correct …",
    correctTitle: (what: string) => `Correct: ${what}`,
    correctAbout:
      "The record stays; from now on it does not count. What is right goes into a record of its own.",
    why: "What was wrong?",
    right: "What is right?",
    nothing: "Nothing takes its place",
    instead: "This takes its place:",
    do: "Correct it",
    cancel: "Cancel",
    value: "Value",
    good: "Result",
    minutes: "Minutes",
    count: "Counted",
    part: "Part",
    lot: "Lot",
    quantity: "Quantity",
    text: "Text",
    stage: "Stage",
    place: "Place",
    cause: "Cause",
    what: "What",
  },

  /** What a record says, in words. */
  says: {
    begun: (revision: string) => `begun, to ${revision}`,
    fitted: (unit: string, into: string, place: string) => `${unit} into ${into}, ${place}`,
    removed: (unit: string, from: string, place: string, why: string) =>
      `${unit} out of ${from}, ${place}${why === "" ? "" : `: ${why}`}`,
    step: (step: string, minutes: number | null, count: number | null) =>
      [step, minutes === null ? "" : `${number(minutes)} min`, count === null ? "" : `${count} counted`]
        .filter(Boolean)
        .join(" · "),
    handed: (stage: string, site: string) => (site === "" ? stage : `${stage}, ${site}`),
    sent: (to: string, transport: string) => `to ${to}, transport ${transport}`,
    arrived: (site: string, transport: string) => `at ${site}, transport ${transport}`,
    correction: (what: string, why: string) => `of ${what}: ${why}`,
    unknownRecord: "a record that is not here",
  },
};
