import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { Hono } from "hono";
import { Accounts } from "./accounts/accounts.ts";
import { LOCAL_PERSON } from "./accounts/caller.ts";
import { Secrets } from "./accounts/secrets.ts";
import { Sessions, sameText } from "./accounts/sessions.ts";
import { firstStart } from "./books/examples.ts";
import { Files } from "./books/files.ts";
import { Shelf } from "./books/shelf.ts";
import type { ServerDeps } from "./deps.ts";
import { Audit } from "./handlers/audit.ts";
import { benchHandlers } from "./handlers/bench.ts";
import { bookHandlers } from "./handlers/books.ts";
import { changeHandlers } from "./handlers/changes.ts";
import { faultPageHandlers } from "./handlers/fault-pages.ts";
import { fileHandlers } from "./handlers/files.ts";
import { floorHandlers } from "./handlers/floor.ts";
import { inPersonHandlers } from "./handlers/in-person.ts";
import { instrumentHandlers } from "./handlers/instruments.ts";
import { jobHandlers } from "./handlers/jobs.ts";
import { liveHandlers } from "./handlers/live.ts";
import type { ServerParts } from "./handlers/parts.ts";
import { peopleHandlers } from "./handlers/people.ts";
import { pictureHandlers } from "./handlers/pictures.ts";
import { printChangeHandlers } from "./handlers/print-changes.ts";
import { problemHandlers } from "./handlers/problems.ts";
import { recordSheetHandlers } from "./handlers/record-sheets.ts";
import { recordHandlers } from "./handlers/records.ts";
import { releaseHandlers } from "./handlers/releases.ts";
import { serviceBookHandlers } from "./handlers/service-books.ts";
import { sessionHandlers } from "./handlers/sessions.ts";
import { unitHandlers } from "./handlers/units.ts";
import { type AppEnv, bindRoutes, type FindCaller } from "./http/bind.ts";
import { guard } from "./http/guard.ts";
import { isLoopback } from "./http/place.ts";
import { problemResponse, Refused } from "./http/problem.ts";
import { secure } from "./http/security-headers.ts";
import { InstrumentDesk } from "./instruments/index.ts";
import { SheetJobs } from "./jobs/sheet-jobs.ts";
import { Announcer } from "./live/announcer.ts";
import { Hub } from "./live/hub.ts";
import { Others } from "./live/others.ts";
import { Standing } from "./records/standing.ts";
import { ReleaseJobs } from "./releases/release-jobs.ts";
import { ServiceBooks } from "./service-book/service-books.ts";
import { StaticFiles } from "./static/static-files.ts";
import { Lane } from "./threads/lane.ts";
import { GateFacts } from "./units/gate-facts.ts";
import { Gates } from "./units/gates.ts";

/** A server without its sockets. */
export interface PinwrightServer {
  /** Answers requests; `app.request(path, init, { place })` does without a port. */
  readonly app: Hono<AppEnv>;
  /** Whether accounts exist, so that the network may be served. */
  readonly hasAccounts: () => Promise<boolean>;
  /** Ends what runs in the background; the store stays open. */
  readonly close: () => Promise<void>;
}

/** Puts the parts of a server together. */
async function partsOf(
  deps: ServerDeps,
  lanes: { readonly files: Lane; readonly sheets: Lane; readonly gates: Lane },
): Promise<ServerParts> {
  const { store, paths, now, random, newId, log } = deps;
  await rm(paths.temp, { recursive: true, force: true });
  await mkdir(paths.temp, { recursive: true, mode: 0o700 });
  const shelf = new Shelf(store);
  const hub = new Hub(newId().replace(/\W/g, ""), now);
  const gateFacts = new GateFacts(store, shelf);
  const audit = new Audit(store);
  return {
    deps,
    accounts: new Accounts(store, new Secrets(random), now),
    sessions: new Sessions(store, now, random),
    shelf,
    hub,
    announcer: new Announcer(shelf, hub),
    files: new Files({ lane: lanes.files, folder: paths.temp, newId }),
    jobs: new SheetJobs({
      lane: lanes.sheets,
      folder: join(paths.temp, "sheets"),
      now,
      newId,
      tell: (event) => hub.push(event),
      log,
    }),
    releaseJobs: new ReleaseJobs({
      ...{ store, shelf, now, newId, log, version: deps.version },
      lane: lanes.sheets,
      folder: join(paths.temp, "releases"),
      tell: (job) => hub.push({ type: "release", job }),
      address: () => deps.reach.addresses()[0] ?? "",
      written: ({ book, name, hash }, { actor, place }) =>
        audit.write("book-released", actor.personName, `${book} ${name} ${hash}`, place),
    }),
    serviceBooks: new ServiceBooks({
      ...{ store, log, folder: join(paths.temp, "service-books") },
      run: (task, call) => lanes.gates.run<"service-book">(task, call),
      tell: (job) => hub.push({ type: "service-book", job }),
    }),
    audit,
    standing: new Standing(store.records),
    gateFacts,
    gates: new Gates(store, gateFacts, lanes.gates),
    localToken: Buffer.from(random(32)).toString("base64url"),
  };
}

/** Who sends a request: whoever has a session, or whoever is at this computer while there are no accounts. */
const callerFinder =
  ({ accounts, sessions, localToken }: ServerParts): FindCaller =>
  async (request, place) => {
    if (await accounts.exist()) return sessions.find(request, place);
    if (!isLoopback(place.address)) return null;
    return { person: LOCAL_PERSON, sessionHash: null, token: localToken, expiresAt: null };
  };

/** Makes a server. A store without books gets the examples first. */
export async function createServer(deps: ServerDeps): Promise<PinwrightServer> {
  const lanes = { files: new Lane(), sheets: new Lane(), gates: new Lane() };
  const parts = await partsOf(deps, lanes);
  const { shelf, hub, announcer, accounts } = parts;
  await firstStart(deps.store, parts.files, deps.paths.examples);
  for (const book of await deps.store.books.list()) if (!book.archived) await shelf.warm(book.id);
  const web = deps.paths.web === null ? null : await StaticFiles.read(deps.paths.web);
  const desk = new InstrumentDesk();
  const others = deps.shared ? new Others(deps.store, announcer, deps.log) : null;

  const app = new Hono<AppEnv>();
  app.use(async (c, next) => {
    guard(c.req.raw, c.req.path, deps.reach.hosts());
    await next();
    secure(c.res.headers);
  });
  app.route(
    "/",
    bindRoutes(
      {
        ...peopleHandlers(parts),
        ...bookHandlers(parts),
        ...changeHandlers(parts),
        ...fileHandlers(parts),
        ...jobHandlers(parts),
        ...liveHandlers(parts),
        ...recordHandlers(parts),
        ...floorHandlers(parts),
        ...sessionHandlers(parts),
        ...unitHandlers(parts),
        ...pictureHandlers(parts),
        ...instrumentHandlers(parts, desk),
        ...benchHandlers(parts),
        ...inPersonHandlers(parts),
        ...problemHandlers(parts),
        ...recordSheetHandlers(parts, lanes.gates),
        ...printChangeHandlers(parts, lanes.gates),
        ...releaseHandlers(parts),
        ...serviceBookHandlers(parts),
        ...faultPageHandlers(parts, lanes.gates),
      },
      {
        findCaller: callerFinder(parts),
        isToken: (caller, token) => sameText(caller.token, token),
        checkAnswers: deps.checkAnswers ?? false,
      },
    ),
  );
  app.get("*", (c) => {
    const answer = web?.answer(c.req.raw);
    if (answer === null || answer === undefined)
      throw new Refused("not-found", "There is nothing at this address.");
    return answer;
  });
  app.notFound(() => problemResponse({ code: "not-found", message: "There is nothing at this address." }));
  app.onError((error) => {
    const response = answerOf(error, deps.log);
    secure(response.headers);
    return response;
  });
  return {
    app,
    hasAccounts: () => accounts.exist(),
    close: async () => {
      others?.close();
      hub.close();
      desk.close();
      await Promise.all([lanes.files.close(), lanes.sheets.close(), lanes.gates.close()]);
      await rm(deps.paths.temp, { recursive: true, force: true });
    },
  };
}

/** What went wrong inside is written down here; whoever asked learns only that it did. */
function answerOf(error: unknown, log: (line: string) => void): Response {
  if (error instanceof Refused) return problemResponse(error.problem, error.headers);
  log(error instanceof Error ? (error.stack ?? error.message) : String(error));
  return problemResponse({
    code: "internal",
    message:
      "Something went wrong in the server. Nothing was changed that was not acknowledged. Its log says more.",
  });
}
