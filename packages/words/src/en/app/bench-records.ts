const number = (value: number): string => String(Number(value.toPrecision(3)));
const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Records that do not count, the check of the chains, and minutes spent. */
export const benchRecords = {
  title: "Records",
  check: {
    title: "Are the records what was written?",
    about:
      "Each device writes a chain of records, linked by hashes. The check reads every record again and finds whatever was changed, dropped or inserted behind the program's back.",
    do: "Check all records",
    busy: "Reading every record …",
    good: (streams: number, records: number) =>
      `${n(records, "record", "records")} of ${n(streams, "device", "devices")} are as they were written.`,
    bad: (count: number) => `${n(count, "place is", "places are")} not as it was written:`,
    asLead: "Whoever leads the work can run the check.",
    stream: "Device",
    seq: "Record",
    what: "What",
    whats: {
      changed: "was changed",
      missing: "is missing",
      inserted: "was put in between",
      head: "the end of the chain is not where it was",
      "look-up": "is not found by what it says",
    },
    advice: "Compare with a back-up or with the device itself before you trust these records.",
  },
  aside: {
    title: "Kept aside",
    about:
      "Records that a device sent and that do not count: they contradict others, or whoever wrote them may not do this. They are kept, and nothing was lost.",
    none: "Every record counts.",
    when: "When",
    who: "By",
    device: "Device",
    record: "Record",
    why: "Why it does not count",
    whys: {
      hash: "Its fingerprint does not match: it was changed after it was written.",
      fork: "Another record stands at its place: the device wrote two histories, such as after its memory was put back.",
      link: "It is not linked to the one before.",
      gap: "One before it has not come yet. It counts as soon as that one is here.",
      revoked: "Who wrote it may not come in any more.",
      "not-allowed": "Who wrote it may not do this: it takes a lead, in person.",
      "server-only": "Only the server writes this.",
    },
    more: (count: number) => `Show ${count} more`,
  },
  minutes: {
    title: "Minutes: planned and spent",
    about:
      "What the floor measured for each step beside what the plan reckons with. A designer can take the median over as the step's minutes; plan, cost and stations follow.",
    none: "The floor has not recorded minutes of any step yet. They come by themselves as steps are done on a tablet.",
    step: "Step",
    of: "Of",
    planned: "Planned",
    measured: "Measured, median",
    range: "Least to most",
    count: "Times",
    difference: "Difference",
    take: "Take over",
    takeTitle: (step: string, minutes: number) => `Take over: ${number(minutes)} min for “${step}”`,
    taken: "set by somebody",
    few: (count: number) => `only ${n(count, "time", "times")}`,
    minutes: (minutes: number) => `${number(minutes)} min`,
    fromTo: (least: number, most: number) => `${number(least)} to ${number(most)} min`,
    percent: (share: number) => `${share > 0 ? "+" : ""}${Math.round(share * 100)} %`,
    notPlanned: "not planned",
    note: (step: string, minutes: number, count: number) =>
      `Minutes of “${step}” as the floor measured them: ${number(minutes)} (median of ${count})`,
    all: "Also steps that are as planned",
    asPlanned: "Every step takes about what is planned.",
    again: "Read again",
  },
};
