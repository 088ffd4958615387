import type { AppWords } from "@pinwright/words/app";
import { loadAppWords } from "@pinwright/words/app";
import type { BrowserContext, Locator, Page } from "playwright-core";
import type { Look, LookOptions } from "./browser.ts";
import { scan } from "./floor-hand.ts";

type Name = string | RegExp;

/** Whoever stands at a tablet: taps and scans what is on the screen, and counts how often. */
export interface Walk {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: readonly string[];
  /** What the floor says, in the language of the tablet. */
  readonly says: AppWords["floor"];
  readonly words: AppWords;
  /** How often a finger came down and a label was scanned up to now. */
  readonly hand: () => { readonly taps: number; readonly scans: number };
  /** Taps what has this name: a button or a link. */
  readonly tap: (name: Name) => Promise<void>;
  readonly tapOn: (place: Locator) => Promise<void>;
  readonly scan: (code: string) => Promise<void>;
  /** Taps a number and keeps it. */
  readonly measure: (value: number) => Promise<void>;
  /** Waits for a heading that begins so. */
  readonly see: (title: string) => Promise<void>;
  /** Does something that ends what is on the screen, and waits until another thing is there. */
  readonly on: (work: () => Promise<void>) => Promise<void>;
  readonly button: (name: Name) => Locator;
  /** How many of how many things are done, as the head says. */
  readonly done: () => Promise<{ readonly done: number; readonly of: number }>;
  /** Waits until the server has everything. */
  readonly sent: () => Promise<void>;
}

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/gu, "\\$&");
/** A text that begins so. */
export const begins = (text: string): RegExp => new RegExp(`^${escaped(text)}`, "u");

/** A text with anything where `NaN` stands in what a wording makes of it. */
export const like = (text: string): RegExp => new RegExp(escaped(text).replaceAll("NaN", ".+"), "u");

/** Says once where the tablet stands: which machine is built, and at which station. */
export async function stand({ page, says, see, tap }: Walk, book: string, station: string): Promise<void> {
  await page.goto("/floor");
  await see(says.place.title);
  await tap(book);
  await tap(begins(station));
  await see(says.pick.title);
}

/** Takes a tablet in hand. */
export async function walk(
  look: (options?: LookOptions) => Promise<Look>,
  language: "en" | "zh",
): Promise<Walk> {
  const { page, context, complaints } = await look({ screen: "tablet", language });
  const words = await loadAppWords(language);
  const { floor: says } = words;
  const hand = { taps: 0, scans: 0 };
  const exact = (name: Name): boolean => typeof name === "string";
  const button = (name: Name): Locator => page.getByRole("button", { name, exact: exact(name) });
  const tapOn = async (place: Locator): Promise<void> => {
    await place.tap();
    hand.taps += 1;
  };
  const tap = (name: Name): Promise<void> =>
    tapOn(button(name).or(page.getByRole("link", { name, exact: exact(name) })));
  const head = page.locator(".floor-head");
  const keys: Readonly<Record<string, string>> = { ".": says.test.point, "-": says.test.sign };
  return {
    page,
    context,
    complaints,
    says,
    words,
    button,
    tap,
    tapOn,
    hand: () => ({ ...hand }),
    scan: async (code) => {
      await scan(page, code);
      hand.scans += 1;
    },
    measure: async (value) => {
      for (const key of String(value)) await tap(keys[key] ?? key);
      await tap(says.test.take);
    },
    see: (title) =>
      page
        .getByRole("heading", { name: begins(title) })
        .first()
        .waitFor(),
    on: async (work) => {
      const before = page.url();
      await work();
      await page.waitForURL((url) => url.href !== before);
    },
    done: async () => {
      const [done = "", of = ""] =
        ((await head.textContent()) ?? "").match(/\d+ ?(?=\/)|(?<=\/ ?)\d+/gu) ?? [];
      return { done: Number(done), of: Number(of) };
    },
    sent: () => head.getByText(says.net.sent).waitFor(),
  };
}
