import {
  type ArrivedFact,
  arrivedFactSchema,
  type KeptUnit,
  keptUnitSchema,
  ROUTES,
  statusSchema,
  TOKEN_HEADER,
} from "@pinwright/contract";
import type { Page } from "playwright-core";

/** Whoever leads the work, at a server without accounts: gives out numbers, and looks at what was recorded. */
export interface Lead {
  readonly units: (body: {
    readonly book: string;
    readonly what: KeptUnit["what"];
    readonly type: string;
    readonly count: number;
  }) => Promise<readonly string[]>;
  /** Everything that came from devices, in the order of arrival. */
  readonly facts: () => Promise<readonly ArrivedFact[]>;
}

const listOf = (answer: unknown): readonly unknown[] => (Array.isArray(answer) ? answer : []);

/** Asks a server without accounts, as one who may do all. */
export async function asking(address: string): Promise<(path: string, body?: unknown) => Promise<unknown>> {
  const status = await fetch(new URL(ROUTES.status.path, address));
  const cookie = status.headers.get("set-cookie")?.split(";")[0] ?? "";
  const { token } = statusSchema.parse(await status.json());
  return async (path, body) => {
    const response = await fetch(new URL(path, address), {
      method: body === undefined ? "GET" : "POST",
      headers: { "content-type": "application/json", cookie, [TOKEN_HEADER]: token ?? "" },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (!response.ok) throw new Error(await response.text());
    return response.json();
  };
}

export async function lead(address: string): Promise<Lead> {
  const ask = await asking(address);
  return {
    units: async (body) =>
      listOf(await ask("/api/units", body)).map((unit) => keptUnitSchema.parse(unit).unit),
    facts: async () =>
      listOf(await ask("/api/facts?after=0&limit=2000"))
        .map((fact) => arrivedFactSchema.parse(fact))
        .filter(({ fact }) => fact.stream !== "server"),
  };
}

/** Lets a tablet stand at all stations of a book, before its page is opened. */
export async function standAt(page: Page, book: string): Promise<void> {
  const place = JSON.stringify({ book, station: "" });
  await page.addInitScript(`localStorage.setItem("pinwright.floor.place", ${JSON.stringify(place)})`);
}

/** A scanner that acts as a keyboard: its keys come within a moment. */
export const scan = (page: Page, code: string): Promise<void> =>
  page.evaluate(
    `for (const key of [...${JSON.stringify(code)}, "Enter"])
      document.body.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }))`,
  );

const LOOK_EVERY_MS = 200;

/** Waits until the device keeps what it needs to go on without the network. */
export async function keptFor(page: Page, paths: readonly string[]): Promise<void> {
  const isKept = `(async () => {
    for (const path of ${JSON.stringify(["/floor.html", ...paths])})
      if ((await caches.match(path)) === undefined) return false;
    return navigator.serviceWorker.controller !== null;
  })()`;
  while ((await page.evaluate(isKept)) !== true) await page.waitForTimeout(LOOK_EVERY_MS);
}

/** What is told of a device's stream: its links, each once and in order, none kept aside. */
export function wholeStream(facts: readonly ArrivedFact[]): {
  readonly kinds: readonly string[];
  readonly faults: readonly string[];
} {
  const faults = facts.flatMap(({ fact, aside }, i) => {
    const before = facts[i - 1]?.fact;
    return [
      ...(aside === null ? [] : [`${fact.seq} aside: ${aside}`]),
      ...(fact.seq === i + 1 ? [] : [`${fact.seq} at place ${i + 1}`]),
      ...(before === undefined || fact.before === before.hash ? [] : [`${fact.seq} is not linked`]),
    ];
  });
  return { kinds: facts.map(({ fact }) => fact.body.kind), faults };
}
