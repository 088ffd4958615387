import { createHash } from "node:crypto";
import { canonicalJson, type Release, type ServiceBookRequest, SHOP_ID } from "@pinwright/contract";
import { byArrival, foldUnits } from "@pinwright/engine";
import { serviceBookName } from "@pinwright/sheets";
import type { ServiceBookKey, Store } from "@pinwright/store";
import { draftAfter } from "@pinwright/words";
import type { Shelf } from "../books/shelf.ts";
import { done, Refused } from "../http/problem.ts";
import type { Task } from "../threads/messages.ts";
import { pastTables, releasedTables } from "./past-book.ts";

type ServiceBookTask = Extract<Task, { kind: "service-book" }>;
type Given = NonNullable<ServiceBookTask["given"]>;
type Unit = NonNullable<Given["unit"]>;

/** A service book that is asked for, found out as far as its name; the rest is asked when it is made. */
export interface BookCase {
  /** Another one whenever the book would be another. */
  readonly id: string;
  readonly revision: string;
  readonly isReleased: boolean;
  readonly unit: string | null;
  /** Where it is kept once it was made; null: it is a draft, or a release holds it itself. */
  readonly kept: ServiceBookKey | null;
  /** What it was made for, for whoever looks at what is kept. */
  readonly about: string;
  /** Name of the book in its release; null: no release holds it. */
  readonly released: { readonly book: string; readonly release: string; readonly sheet: string } | null;
  readonly given: () => Promise<Given>;
}

export interface Asker {
  readonly store: Store;
  readonly shelf: Shelf;
  /** Address of this server on the network; blank: none. */
  readonly address: string;
  readonly creator: string;
  readonly today: string;
}

const hashOf = (value: unknown): string => createHash("sha256").update(canonicalJson(value)).digest("hex");

/** Finds out which book is meant. */
export function bookCase(asker: Asker, book: string, asked: ServiceBookRequest): Promise<BookCase> {
  return asked.unit === undefined
    ? revisionCase(asker, book, asked)
    : unitCase(asker, book, asked.unit, asked.language);
}

async function releaseNamed(store: Store, book: string, name: string): Promise<Release> {
  return done(await store.releases.get(book, name), `release ${name} of ${book}`);
}

async function revisionCase(
  asker: Asker,
  book: string,
  { language, release: name }: ServiceBookRequest,
): Promise<BookCase> {
  const { store, shelf } = asker;
  if (name === undefined) return draftCase(asker, book, language);
  const release = await releaseNamed(store, book, name);
  const sheet = serviceBookName("", language);
  const frames = done(await store.releases.items(book, name, "frame"), `release ${name} of ${book}`);
  const isHeld = frames.some(({ id }) => id === sheet);
  const key = hashOf({ language });
  return {
    ...{ id: hashOf([book, release.hash, key]).slice(0, ID_DIGITS), revision: name, isReleased: true },
    unit: null,
    kept: isHeld ? null : { book, release: name, key },
    about: canonicalJson({ language }),
    released: isHeld ? { book, release: name, sheet } : null,
    given: () => releasedGiven(asker, shelf, book, release, language, [], null),
  };
}

/** Digits of the name of a book that is being made. */
const ID_DIGITS = 32;

async function draftCase(asker: Asker, book: string, language: Given["language"]): Promise<BookCase> {
  const { store, shelf, address, creator, today } = asker;
  const held = await shelf.now(book);
  if (held.info.kind === "shop")
    throw new Refused("bad-request", "The shop has no service book. Choose the book of a machine.");
  const shop = await shelf.now(SHOP_ID);
  const [newest] = done(await store.releases.list(book), `book ${book}`);
  const revision = draftAfter(newest?.name ?? "");
  const { changeNo } = held.info;
  return {
    id: hashOf([book, changeNo, shop.info.changeNo, language, today, address, revision]).slice(0, ID_DIGITS),
    ...{ revision: `@${changeNo}`, isReleased: false, unit: null, kept: null, about: "", released: null },
    given: async () => ({
      key: hashOf([book, changeNo, shop.info.changeNo]),
      tables: [...shelf.jsonOf(held.tables)],
      shop: [...shelf.jsonOf(shop.tables)],
      ...{ options: [], language, revision, state: "draft", date: today, creator, address, unit: null },
    }),
  };
}

/** A released book with the shop that it was released with. */
async function releasedGiven(
  { store, address, creator, today }: Asker,
  shelf: Shelf,
  book: string,
  release: Release,
  language: Given["language"],
  options: readonly string[],
  unit: Unit | null,
): Promise<Given> {
  const [tables, shop] = await Promise.all([
    releasedTables(store, book, release.name, "book"),
    releasedTables(store, book, release.name, "shop"),
  ]);
  return {
    key: hashOf([book, release.hash, options]),
    tables: [...shelf.jsonOf(tables)],
    shop: [...shelf.jsonOf(shop)],
    ...{ options: [...options], language, revision: release.name, state: "released", address, unit },
    ...{ creator: unit === null ? release.personName : creator },
    date: unit === null ? release.at.slice(0, 10) : today,
  };
}

async function unitCase(
  asker: Asker,
  book: string,
  serial: string,
  language: Given["language"],
): Promise<BookCase> {
  const { store, shelf, address } = asker;
  const state = foldUnits(byArrival(await store.records.ofUnit(serial))).get(serial);
  const begun = state?.begun ?? null;
  if (state === undefined || begun === null || begun.book !== book)
    throw new Refused("not-found", `There is no machine ${serial} of ${book}.`);
  if (begun.what !== "machine")
    throw new Refused("bad-request", `${serial} is no machine: only a machine has a service book.`);
  const unit: Unit = {
    serial,
    address: address === "" ? "" : `${address}/b/${book}/bench/units/${encodeURIComponent(serial)}`,
    alternates: state.alternates.map(({ part, instead, allowed, why }) => ({ part, instead, allowed, why })),
  };
  const options = [...begun.options].sort();
  const about = { language, options, serial, alternates: unit.alternates };
  const key = hashOf(about);
  const outcome = await store.releases.get(book, begun.revision);
  if (!("refused" in outcome)) {
    const release = outcome.done;
    return {
      ...{ id: hashOf([book, release.hash, key]).slice(0, ID_DIGITS), revision: release.name },
      ...{ isReleased: true, unit: serial, released: null },
      kept: { book, release: release.name, key },
      about: canonicalJson(about),
      given: () => releasedGiven(asker, shelf, book, release, language, options, unit),
    };
  }
  return changeCase(asker, book, begun.revision, key, { language, options, unit });
}

/** The book of a machine that was begun before anything was released: of the book after that change. */
async function changeCase(
  { store, shelf, address, creator, today }: Asker,
  book: string,
  revision: string,
  key: string,
  made: { readonly language: Given["language"]; readonly options: readonly string[]; readonly unit: Unit },
): Promise<BookCase> {
  const no = Number(/^@(\d+)$/u.exec(revision)?.[1]);
  const held = await shelf.now(book);
  if (!Number.isInteger(no) || no > held.info.changeNo)
    throw new Refused(
      "not-found",
      `${made.unit.serial} was built to ${revision}, which is no revision of ${book} here.`,
    );
  const shop = await shelf.now(SHOP_ID);
  return {
    id: hashOf([book, no, shop.info.changeNo, key, today, address]).slice(0, ID_DIGITS),
    ...{ revision, isReleased: false, unit: made.unit.serial, kept: null, about: "", released: null },
    given: async () => ({
      key: hashOf([book, no, shop.info.changeNo, made.options]),
      tables: [...shelf.jsonOf(await pastTables(store, book, no, held))],
      shop: [...shelf.jsonOf(shop.tables)],
      ...{ ...made, options: [...made.options], revision, state: "draft" as const },
      ...{ date: today, creator, address },
    }),
  };
}
