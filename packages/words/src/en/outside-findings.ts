import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what is made outside: drawings, marked dimensions and samples. */
export const outsideFindings: Readonly<Record<string, RuleWords>> = {
  "drawing-missing": {
    title: "The file of a drawing is not there",
    says: "{0} revision {revision}: {file} is in the table of drawings, but not in the folder `drawings`.",
    why: "Nobody can make the part, and no pack can be sent out.",
    todo: "Upload the file, or take the row out.",
  },
  "drawing-hash": {
    title: "A drawing is not the file that was meant",
    says: "{0} revision {revision}: {file} has the hash {found}…, {meant}… was meant.",
    why: "Somebody changed the file after it was attached: a shop would make something else.",
    todo: "Put the right file back; or attach the changed one as a new revision under a new name.",
  },
  "drawing-old": {
    title: "Only another revision is drawn",
    says: "{0} is at revision {revision}; its drawings are of {revisions}.",
    why: "A shop would get no drawing, or the wrong one.",
    todo: "Attach the drawing of the present revision, or correct the part's revision.",
  },
  "drawing-no-revision": {
    title: "A drawn part has no revision",
    says: "{0} has drawings of {revisions}, and no revision of its own.",
    why: "Nobody can say which drawing is right.",
    todo: "Give the part the revision that is made now.",
  },
  "drawing-none": {
    title: "A part with marked dimensions has no drawing",
    says: "{0} revision {revision} has marked dimensions and no drawing.",
    why: "Balloons stand on a drawing: without it nobody knows what to measure.",
    todo: "Attach its drawing in Parts, Outside work.",
  },
  "drawing-shared": {
    title: "One file stands for two revisions",
    says: "{0}: {file} is named for the revisions {revisions}.",
    why: "When the file changes, the earlier revision changes with it.",
    todo: "Give each revision a file of its own under its own name.",
  },
  "drawing-stray": {
    title: "A file belongs to no part",
    says: "{0} lies in the folder `drawings`; no row says what it is.",
    why: "It is kept and sent along with the book, and nobody uses it.",
    todo: "Attach it to a part, or delete it.",
  },
  "made-unsaid": {
    title: "A shop is not told what a part is made of",
    says: "{0} is made by somebody else, and no material is given.",
    why: "The order sheet would leave it open, and the shop would choose.",
    todo: "Fill in the material at the part.",
  },
  "dimension-odd": {
    title: "A marked dimension cannot be judged",
    says: "{0}, balloon {mark}: {why}.",
    values: {
      why: {
        "no-tolerance": "it has a nominal value and no tolerance",
        "no-nominal": "it has a tolerance and no nominal value",
      },
    },
    why: "Without a tolerance every real reading fails; without a nominal value none can be judged.",
    todo: "Give the tolerance that the fit needs, or leave both blank: then it is only looked at.",
  },
  "sample-fails": {
    title: "A sample is approved although it is out of tolerance",
    says: "{0}: sample {1} is approved, and balloons {marks} fail.",
    why: "The lot would be made like the sample.",
    todo: "Send the sample back, correct the reading, or widen the tolerance on purpose in a new revision.",
  },
  "sample-open": {
    title: "A sample is approved before all of it was measured",
    says: "{0}: sample {1} is approved; balloons {marks} have no reading.",
    why: "What the designer marked was not checked.",
    todo: "Measure the rest and enter the readings.",
  },
  "sample-stray": {
    title: "A reading belongs to no dimension",
    says: "{0}: sample {1} has readings for balloons {marks}, which the part does not have.",
    why: "The reading judges nothing.",
    todo: "Correct the balloon's number, or mark the dimension at the part.",
  },
  "sample-old": {
    title: "Only another revision was approved",
    says: "{0} is at revision {revision}; samples of {revisions} were approved.",
    why: "What was approved is not what would be ordered now.",
    todo: "Ask for a sample of the present revision before the lot is ordered.",
  },
};
