/** Service: finding faults, the service book, problems, and everything of one thing. */
export const service = {
  tabs: { faults: "Fault finding", thing: "One thing", problems: "Problems", book: "Service book" },
};
