import { z } from "zod";
import { plainText, utcTime } from "./text.ts";

/**
 * What people may do, each more than the next: an owner also keeps accounts and back-ups; a designer edits books;
 * a lead decides what choices leave open and accepts findings; a builder makes sheets; a viewer looks.
 */
export const ROLES = ["owner", "designer", "lead", "builder", "viewer"] as const;
export type Role = (typeof ROLES)[number];

/** Whether a role may do what another may. */
export const atLeast = (role: Role, needed: Role): boolean => ROLES.indexOf(role) <= ROLES.indexOf(needed);

const personName = plainText(80).trim().min(1);
const password = z.string().min(10).max(200);
/** Short code for the floor. */
const floorCode = z.string().regex(/^\d{4,8}$/, "4 to 8 digits");

export const personSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(ROLES),
  active: z.boolean(),
  hasPassword: z.boolean(),
  hasCode: z.boolean(),
});
export type Person = z.infer<typeof personSchema>;

/** The first account: makes the server ask for names from then on. */
export const setUpSchema = z.strictObject({ name: personName, password });

export const signInSchema = z.strictObject({
  name: personName,
  secret: z.string().min(1).max(200),
});

/** Floor codes are for builders and viewers only: four digits must not open more. */
export const newPersonSchema = z.strictObject({
  name: personName,
  role: z.enum(ROLES),
  password: password.optional(),
  code: floorCode.optional(),
});
export type NewPerson = z.infer<typeof newPersonSchema>;

export const personPatchSchema = z.strictObject({
  name: personName.optional(),
  role: z.enum(ROLES).optional(),
  active: z.boolean().optional(),
  password: password.optional(),
  code: floorCode.nullable().optional(),
});
export type PersonPatch = z.infer<typeof personPatchSchema>;

/** What the app needs to know before anything else. */
export const statusSchema = z.object({
  version: z.string(),
  /** Whether accounts exist. Until then only this computer is served, and everyone at it is the owner. */
  accounts: z.boolean(),
  person: personSchema.nullable(),
  /** To be sent back with every change, in the header `x-pinwright-token`; null when not signed in. */
  token: z.string().nullable(),
  /** Addresses under which other devices reach this server; empty while it serves only this computer. */
  addresses: z.array(z.string()),
});
export type Status = z.infer<typeof statusSchema>;

export const auditEntrySchema = z.object({
  no: z.number().int(),
  at: utcTime,
  personName: z.string(),
  action: z.string(),
  detail: z.string(),
  from: z.string(),
});
export type AuditEntry = z.infer<typeof auditEntrySchema>;
