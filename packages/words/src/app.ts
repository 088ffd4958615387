import { app as en } from "./en/app/index.ts";
import type { Language, Translated } from "./language.ts";

/** Words of the app in one language. */
export type AppWords = Translated<typeof en>;

/** English is there at once; other languages come when they are asked for. */
export const ENGLISH: AppWords = en;

/** Words of the app in a language. */
export const loadAppWords = async (language: Language): Promise<AppWords> =>
  language === "en" ? en : (await import("./zh/app/index.ts")).app;
