import type { RuleWords } from "../finding.ts";

/** Wording of the rules of runs. */
export const runsFindings: Readonly<Record<string, RuleWords>> = {
  "run-late": {
    title: "A run cannot be ready on its ship day",
    says: "Run {0} ships on {ship}; at the earliest it is ready on {ready}, {late_days} days late. Held by: {rest}.",
    why: "Some part would have had to be ordered, or some work begun, before today.",
    todo: "Move the ship day, find a quicker supplier for what holds it, add people, or build fewer machines.",
  },
  "run-past": {
    title: "The ship day of a run has passed",
    says: "Run {0} was to leave on {ship}; today is {today}.",
    why: "Its orders and days are planned from today on, as soon as can be.",
    todo: "Give it a new ship day, or set it to done.",
  },
  "run-mix": {
    title: "The mix of a run is larger than the run",
    says: "Run {0} has {machines} machines; its mix asks for {asked}.",
    why: "What is beyond the run is not planned, and the rows that come last get too few machines.",
    todo: "Correct the counts of the mix or the machines of the run.",
  },
  "run-options": {
    title: "The mix of a run asks for options that cannot be",
    says: "Run {0}: {rest}. {kind}",
    why: "The book does not have the option, or two of one kind exclude each other; the machines are planned without it.",
    todo: "Name options of the book, one of each kind.",
    values: { kind: { unknown: "The book has no such option.", twice: "They are of one kind." } },
  },
  "run-other-book": {
    title: "A run builds another machine",
    says: "Run {0} builds {1}, which is another book.",
    why: "It is not planned here: its needs, and its work on the same benches, are not counted.",
    todo: "Open that book to plan it, and mind that both use the same benches.",
  },
  "run-not-approved": {
    title: "A part's sample is not approved",
    says: "{0} revision {revision}: ask for a sample by {day}; the lot is ordered when it is approved.",
    why: "A lot made from a wrong drawing or on a wrong tool is money lost.",
    todo: "Ask for a sample, measure its marked dimensions, and approve it or send it back.",
  },
  "stage-capacity": {
    title: "Nobody can do the work of a stage",
    says: "{0}: {people} people at its benches, and work for a run.",
    why: "The schedule counts as if it took no time, or finds no day for it at all.",
    todo: "Give the stage benches with people and hours, raise its machines a day, or say that it takes no minutes.",
  },
  "stage-circle": {
    title: "Stages wait for each other in a circle",
    says: "{0}, {rest}.",
    why: "No machine could ever begin with any of them; the schedule lets one go first.",
    todo: "Take one of the stages that they wait for out.",
  },
  "calendar-site": {
    title: "A stage is done at several sites with different days off",
    says: "{0} has benches at {rest}.",
    why: "Each bench keeps the days off of its site; when parts are due follows the first one.",
    todo: "Make it a stage for each site if the difference matters.",
  },
  "order-least": {
    title: "An order is below its supplier's least value",
    says: "{1} of {day}: {value} {currency}; {0} takes orders from {least} {currency}.",
    why: "The supplier may refuse it or charge the difference.",
    todo: "Add what is needed later, buy from another supplier, or agree on it.",
  },
  "stock-negative": {
    title: "More left the stock than was there",
    says: "{0}: movement {1} of {day} leaves {balance}.",
    why: "A count is wrong, and what a run needs is computed from it.",
    todo: "Count the part and enter the count, or give the movement a reason.",
  },
  "need-unsourced": {
    title: "A run needs a part that nobody can get",
    says: "{0}: {quantity} needed for {rest}; there is no price, no way and no contents.",
    why: "It is in no order, and the cost of the machine lacks it.",
    todo: "Add a price, a way of making it, or what it contains.",
  },
};
