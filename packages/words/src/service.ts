import { serviceFaults as en } from "./en/app/service-faults.ts";
import { colours as coloursEn } from "./en/colours.ts";
import { cautions as cautionsEn } from "./en/sheet-cautions.ts";
import type { Language, Translated } from "./language.ts";
import { serviceFaults as zh } from "./zh/app/service-faults.ts";
import { colours as coloursZh } from "./zh/colours.ts";
import { cautions as cautionsZh } from "./zh/sheet-cautions.ts";

/** Words of fault finding in one language, without those of the rest of the app. */
export interface FaultWords {
  readonly faults: Translated<typeof en>;
  readonly colours: Translated<typeof coloursEn>;
  readonly cautions: Translated<typeof cautionsEn>;
}

/** Words of fault finding: the page that is shipped with a machine carries both languages. */
export const FAULT_WORDS: Readonly<Record<Language, FaultWords>> = {
  en: { faults: en, colours: coloursEn, cautions: cautionsEn },
  zh: { faults: zh, colours: coloursZh, cautions: cautionsZh },
};
