import { z } from "zod";
import { plainText } from "./text.ts";

const name = plainText(120).min(1);
const words = plainText(2000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits");

/** What a problem can be about. */
export const PROBLEM_SUBJECTS = [
  "part",
  "board",
  "harness",
  "mechanism",
  "item",
  "sheet",
  "step",
  "machine",
] as const;
export type ProblemSubject = (typeof PROBLEM_SUBJECTS)[number];

/** Where a problem came up: in the defects of units, on the bench of a mechanism, in an owner's letter, while building. */
export const PROBLEM_SOURCES = ["defects", "bench", "letter", "build"] as const;
export type ProblemSource = (typeof PROBLEM_SOURCES)[number];

export const PROBLEM_DEEDS = ["seen", "tried", "measured", "decided"] as const;
export type ProblemDeed = (typeof PROBLEM_DEEDS)[number];

/** Most things that one problem is about. */
const MOST_SUBJECTS = 20;

export const problemAboutSchema = z.strictObject({ kind: z.enum(PROBLEM_SUBJECTS), id: name });
export type ProblemAbout = z.infer<typeof problemAboutSchema>;

/** Records of what is wrong with the design, or may be: not with one unit, that is a defect. */
export const PROBLEM_FACTS = [
  z.strictObject({
    kind: z.literal("problem"),
    /** Made up where it was written down. */
    problem: name,
    book: name,
    /** Part, board (item), harness, mechanism, item, sheet or step of the book, or the machine as a whole. */
    about: z.array(problemAboutSchema).min(1).max(MOST_SUBJECTS),
    from: z.enum(PROBLEM_SOURCES),
    says: words.min(1),
    /** Serial number of a unit that it was seen on. */
    seenOn: name.optional(),
    run: name.optional(),
    /** Hash of a picture that is kept as a file. */
    picture: sha256.optional(),
  }),
  z.strictObject({
    kind: z.literal("problem-note"),
    problem: name,
    did: z.enum(PROBLEM_DEEDS),
    /** Blank only where somebody has seen it too and has nothing to add. */
    says: words.default(""),
    seenOn: name.optional(),
    picture: sha256.optional(),
  }),
  z.strictObject({
    kind: z.literal("problem-ended"),
    problem: name,
    how: z.enum(["changed", "no-change"]),
    /** Number of the set of changes that ends it, where it was changed. */
    changeNo: z.number().int().min(1).optional(),
    why: words.min(1),
  }),
] as const;
