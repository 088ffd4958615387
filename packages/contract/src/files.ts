import { z } from "zod";
import { plainText, utcTime } from "./text.ts";

/** A file of a book: a drawing, an outline or a model that a part is made from. */
export const bookFileSchema = z.object({
  /** Name without a path: letters a to z, digits, dots and hyphens. */
  name: z.string(),
  bytes: z.number().int(),
  /** SHA-256 of its bytes, in hexadecimal. */
  sha256: z.string(),
  /** Who put it there, and when. */
  personName: z.string(),
  at: utcTime,
});
export type BookFile = z.infer<typeof bookFileSchema>;

const day = z.iso.date();

/** What is sent out to be made. */
export const sendOutSchema = z.strictObject({
  parts: z
    .array(z.strictObject({ part: z.string().min(1).max(80), quantity: z.number().positive().max(1e9) }))
    .min(1)
    .max(200),
  /** Day of issue, and day on which the parts are wanted; blank: as agreed. */
  date: day,
  due: z.union([day, z.literal("")]).default(""),
  /** Who it goes to: a supplier of the shop, or blank. */
  supplier: z.string().max(80).default(""),
  /** First articles only, to be approved before the lot. */
  sample: z.boolean().default(false),
  remark: plainText(500).default(""),
  language: z.enum(["en", "zh", "both"]),
});
/** Which first-article check is printed. */
export const checkSheetSchema = z.strictObject({
  part: z.string().min(1).max(80),
  /** Sample whose readings stand on it; absent: a blank sheet. */
  sample: z.string().min(1).max(80).optional(),
  date: day,
  language: z.enum(["en", "zh", "both"]),
});
export type CheckSheet = z.infer<typeof checkSheetSchema>;

export type SendOut = z.infer<typeof sendOutSchema>;
