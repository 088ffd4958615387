import type { Role } from "@pinwright/contract";

/** Four digits must not open more than a builder may do; the server refuses it too. */
export const mayHaveCode = (role: Role): boolean => role === "builder" || role === "viewer";
