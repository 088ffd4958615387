import { z } from "zod";

/** Format of the book that this program writes; older ones are brought forward before they are validated. */
export const FORMAT = 1;

/** `machine.json`: what a book says of itself. */
export const machineSchema = z.object({
  format: z.number().int().min(1),
  id: z.string().regex(/^[a-z0-9]+(?:[.-][a-z0-9]+)*$/),
  label: z.string().min(1).max(200),
  label_zh: z.string().max(200).default(""),
  revision: z.string().min(1).max(40),
  date: z.iso.date(),
  owner: z.string().max(200).default(""),
  approved: z.string().max(200).default(""),
  languages: z
    .array(z.enum(["en", "zh"]))
    .min(1)
    .default(["en"]),
  /** Slope of the playfield in play. */
  slope_deg: z.number().min(0).max(30).default(6.5),
  ball_mm: z.number().min(5).max(100).default(27),
});

export type Machine = z.infer<typeof machineSchema>;
