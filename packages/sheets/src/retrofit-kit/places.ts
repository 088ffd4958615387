import type { EndFact, MachineFacts } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import type { Labels } from "../change-note/about.ts";

/** Both languages of a text that is made from words or labels. */
export const both = (of: (language: "en" | "zh") => string): Labels => ({ en: of("en"), zh: of("zh") });

/** A label in a language; its id where it has none. */
export const named = (labels: Labels | undefined, id: string, language: "en" | "zh"): string => {
  const english = labels === undefined || labels.en === "" ? id : labels.en;
  return language === "zh" && labels !== undefined && labels.zh !== "" ? labels.zh : english;
};

/** Several names in a sentence. */
export const listed = (names: readonly string[], language: "en" | "zh"): string =>
  [...new Set(names)].join(language === "zh" ? "、" : ", ");

/** An item by its label and id, as people look for it. */
export function itemName(facts: MachineFacts, id: string, language: "en" | "zh"): string {
  const labels = facts.items[id]?.labels;
  const name = named(labels, id, language);
  return name === id ? id : `${name} (${id})`;
}

/** `Node 3 j1-5`: where a wire ends. */
export function endName(facts: MachineFacts, { item, pin, point }: EndFact, language: "en" | "zh"): string {
  if (item === "") return point;
  return `${named(facts.items[item]?.labels, item, language)} ${pin.replace(".", "-")}`.trim();
}

/** The plug that a wire ends in, by item and connector; null: it is screwed, soldered or spliced. */
export function plugOf({ item, pin }: EndFact): { readonly item: string; readonly connector: string } | null {
  const [connector = "", way = ""] = pin.split(".");
  return item === "" || way === "" ? null : { item, connector };
}

/** Label of a panel. */
export function panelName(facts: MachineFacts, id: string, language: "en" | "zh"): string {
  const row = facts.rows.panels?.[id];
  return named({ en: row?.label ?? "", zh: row?.label_zh ?? "" }, id, language);
}

/** `brown, white stripe`: the names of a colour's codes. */
export function colourName(colour: string, language: "en" | "zh"): string {
  const names = new Map<string, string>(Object.entries(sheetWords(language).colours));
  const codes = colour.match(/[A-Z]{2}/gu) ?? [colour];
  return `${colour} ${codes.map((code) => names.get(code) ?? code).join("/")}`;
}
