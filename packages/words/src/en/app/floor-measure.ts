const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Measuring at the bench: instruments, sequences, the walk of the end test, tugs, the tester and two probes. */
export const floorMeasure = {
  read: {
    button: (name: string) => `Read ${name}`,
    again: (name: string) => `Read ${name} again`,
    reading: (name: string) => `${name} measures …`,
    from: (name: string) => `from ${name}`,
    typed: "typed",
    orType: "or type what it shows",
    overdue: (name: string, day: string) =>
      `The calibration of ${name} ended on ${day}. The reading counts, and this is noted on the unit.`,
    overdueNote: (name: string, day: string, test: string) =>
      `${test}: measured with ${name}, whose calibration ended on ${day}.`,
    troubles: {
      "not-reached": (name: string) => `Nobody answers at ${name}. Is it on, and is its cable in?`,
      "time-out": (name: string) => `${name} did not answer in time.`,
      ended: (name: string) => `${name} ended the connection. Try again.`,
      "too-long": (name: string) => `What ${name} sends has no end. Look at how it is set.`,
      "not-understood": (name: string) => `${name} answered something else than was asked.`,
      refused: (name: string) => `${name} says itself that something is wrong.`,
      overload: (name: string) => `It is more than ${name} can measure. Check the probes and the range.`,
      "not-a-number": (name: string) => `${name} has no value yet. Put the probes on, then read again.`,
      "not-measured": (name: string) => `${name} does not measure this.`,
      busy: (name: string) => `Others wait for ${name} already. Try again in a moment.`,
    },
    away: "The server does not answer, and only it reaches the instruments.",
    notAllowed: "Whoever is signed in may only look.",
    gone: "The shop no longer has this instrument, or the book this test.",
    says: (text: string) => `It says: ${text}`,
    system: (text: string) => `For whoever set it up: ${text}`,
    instead: "Read again, or type the value.",
  },

  sequence: {
    step: (at: number, of: number) => `Step ${at} of ${of}`,
    before: "Step before",
  },

  walk: {
    how: {
      switch: "Close each once by hand, in this order, and watch its answer.",
      lamp: "Light each once, in this order.",
      coil: "One at a time, in this order. Hands and tools off what moves.",
      motor: "Run each once, in this order. Hands and tools off what moves.",
      other: "Each once, in this order.",
    },
    stretch: (at: number, of: number) => `Stretch ${at} of ${of}`,
    allGood: (count: number) => `All ${count} good`,
    next: "Next stretch",
    before: "Stretch before",
    bad: (count: number) => n(count, "does not answer", "do not answer"),
    badOne: "Does not answer",
    record: (count: number) => `Record ${n(count, "defect", "defects")}`,
    tap: "Tap one that does not answer.",
    drawing: (panel: string) => `${panel}: where they are`,
    careful:
      "Mains, stored charge and moving coils can hurt. What local codes ask for comes first; a licensed electrician decides.",
  },

  tug: {
    how: "Pull each contact of a housing with a short, firm tug. Tap the housing when all of them held.",
    contacts: (count: number) => n(count, "contact", "contacts"),
    ends: (count: number) => n(count, "end", "ends"),
    told: (count: number, of: number) => `${count} of ${of} housings`,
    bad: (housing: string) => `Not all of ${housing} held`,
    tap: "Tap what did not hold, until it says what you saw.",
    back: "To the housings",
    left: (count: number) => `${n(count, "housing", "housings")} left`,
  },

  ways: {
    scan: (name: string) => `Scan with ${name}`,
    scanning: (name: string) => `${name} tries every point …`,
    probes: "Two probes, guided",
    probesHint: "One pair after the other, with a beeping meter",
    file: "File of a tester",
    fileHint: "As docs/tester-protocol.md has it",
    again: "Test again",
    good: (places: number) => `${n(places, "place", "places")} tried, all as they should be`,
    look: "Where to look",
    chosen: "This one is recorded",
    choose: "It is this one",
    record: (count: number) => `Record ${n(count, "defect", "defects")}`,
    unnamed: (places: string) => `Something is wrong at ${places}`,
    housing: (name: string) => `${name}, seen from the wires`,
  },

  tester: {
    tooFew: (points: number, places: number) =>
      `The tester has ${points} points, the harness ${places} places. Use two probes, or a tester with more points.`,
    adapter: "List of the adapter",
    adapterUsual: (places: number) => `Points 1 to ${places}, in the order of the list`,
    adapterOwn: (name: string) => `Own list: ${name}`,
    adapterSave: "Save the usual list",
    adapterTake: "Use another list",
    adapterBack: "Use the usual list",
    strays: (points: string) =>
      `Points ${points} belong to no place and yet read joined: the adapter is not as its list says, or something conducts beside it.`,
    oneSided: (pairs: string) =>
      `A contact comes and goes between points ${pairs}. Move the wires and test again.`,
    otherUnit: (unit: string, here: string) => `The file is of ${unit}, on the bench is ${here}.`,
    choose: "Choose the file",
    paste: "or paste its lines",
    read: "Read it",
    wrong: "It cannot be read:",
    line: (line: number, text: string) => (line === 0 ? text : `Line ${line}: ${text}`),
    more: (count: number) => `and ${count} more`,
    faults: {
      empty: () => "it is empty",
      "too-long": (found: string) => `it is too long (${found} characters)`,
      "not-plain": (found: string) => `it has the sign ${found}, which is no plain ASCII`,
      "no-check": () => "it has no check (# and four hexadecimal digits) at its end",
      "wrong-check": (found: string, expected: string) =>
        `its check is ${found}, by its text it must be ${expected}: it was changed or spoilt`,
      "unknown-word": (found: string, expected: string) => `“${found}” stands where ${expected} belongs`,
      "too-few-words": (_found: string, expected: string) => `${expected} is missing at its end`,
      "too-many-words": (found: string, expected: string) =>
        `it has ${found} words, ${expected} belong there`,
      "not-a-number": (found: string) => `“${found}” is no number`,
      "out-of-range": (found: string, expected: string) => `${found} is not within ${expected}`,
      "not-ascending": (found: string, expected: string) =>
        `${found} is out of order, ${expected} belongs there`,
      "point-twice": (found: string) => `point ${found} comes twice`,
      "bad-name": (found: string) => `“${found}” is no name`,
      "missing-line": (_found: string, expected: string) => `the line “${expected}” is missing`,
      "line-twice": (found: string) => `the line “${found}” comes twice`,
    },
    answer: (text: string) => `Its answer: ${text}`,
    errors: {
      check: "It did not understand the question three times: the line to it is bad.",
      word: "It does not know this question: its program is another one.",
      point: "It does not have this point.",
      long: "The question is too long for it.",
      broken: "Its own test failed. Nothing that it measures may be used.",
    },
    adapterFaults: {
      heading: () => "the first line must be point,place",
      cells: (of: string) => `“${of}” is not a point and a place`,
      "not-a-point": (of: string) => `${of} is no point of the tester`,
      "point-twice": (of: string) => `point ${of} comes twice`,
      "unknown-place": (of: string) => `the harness has no place ${of}`,
      "place-twice": (of: string) => `place ${of} comes twice`,
      "place-missing": (of: string) => `place ${of} has no point`,
    },
  },

  probes: {
    asks: "Does it beep?",
    yes: "Yes, it beeps",
    no: "No, silent",
    stays: "stays here",
    moves: "moves here",
    of: (at: number, of: number) => `Pair ${at} of ${of}`,
    besides: (count: number) => `${n(count, "pair", "pairs")} besides, to tell what is wrong`,
    before: "Pair before",
    keys: "Keys: Y yes, N no, ⌫ pair before",
    start: "Begin again",
    done: "What is wrong?",
    limit:
      "Two probes try the wires and their neighbours. A short between places far apart is only found on a tester.",
    wire: (wires: string) => `wire ${wires}`,
    empty: "empty cavity",
    loose: "free end",
  },
};
